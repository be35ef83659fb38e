"""A text as words to be set: what must not be parted is one word, speed symbols carry their subscripts.

Widths are in thousandths of the em, which add up exactly and hold for every size.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple, TypeAlias

from dotleader.handbook.amounts.units import UNITS
from dotleader.handbook.cards import Phrase
from dotleader.page.drawn import Font
from dotleader.page.type.metrics import ems

LOWERED = 800
"""Size of a subscript in thousandths of the text's."""

_MINUS = re.compile(r"-\d")  # what is typed for a minus; the font has one
_TIE = "\u00a0"
_UNITS = frozenset(name for unit in UNITS.values() for name in (unit.shown, unit.symbol))
_AFTER = ".,;:)!?"


class Word(NamedTuple):
    """What stays on one line: strings, each with whether it is a subscript.

    `width` is its own, `space` that of a space before it, both in thousandths of the em.
    """

    pieces: tuple[tuple[str, bool], ...]
    font: Font
    width: int
    space: int

    @property
    def text(self) -> str:
        return "".join(string for string, _ in self.pieces)


Words: TypeAlias = tuple[Word, ...]


def words_of(phrase: Phrase, font: Font, symbols: frozenset[str]) -> Words:
    """A phrase's words; what a reference prints (`55 to 95 psi`) stays together."""
    if len(phrase.runs) == 1 and isinstance(phrase.runs[0], str):
        return plain_words(phrase.runs[0], font, symbols)
    text = "".join(run if isinstance(run, str) else _TIE.join(run.shown.split()) for run in phrase.runs)
    return plain_words(text, font, symbols)


def joined_words(phrases: Iterable[Phrase], font: Font, symbols: frozenset[str]) -> Words:
    """The challenges of one item, with a plus between them."""
    words: list[Word] = []
    for phrase in phrases:
        if words:
            words.append(word("+", font))
        words.extend(words_of(phrase, font, symbols))
    return tuple(words)


def plain_words(text: str, font: Font, symbols: frozenset[str] = frozenset()) -> Words:
    """The words of a string; a no-break space ties, and so does the space between a number and its unit."""
    signs = _pattern(symbols)
    return tuple(
        word(token, font) if signs is None else _with_subscripts(token, font, signs) for token in _tokens(text)
    )


def word(string: str, font: Font) -> Word:
    return _bold_word(string) if font is Font.BOLD else _regular_word(string)


def followed(words: Words, sign: str) -> Words:
    """The words with a sign at the end of the last."""
    return (*words[:-1], _made((*words[-1].pieces, (sign, False)), words[-1].font)) if words else words


def parted(long: Word, room: int) -> Words:
    """A word that is wider than the line: at its spaces, then after hyphens and slashes, then anywhere.

    No two parts that were one word fit on a line together, so no space comes between them.
    """
    parts: list[Word] = []
    for plain in _at_spaces(long):
        if plain.width <= room:
            parts.append(plain)
            continue
        pieces = [
            cut
            for string, lowered in plain.pieces
            for part in re.findall(r"[^-/\u2011]*[-/\u2011]|[^-/\u2011]+", string)
            for cut in _cut(part, lowered, plain.font, room)
        ]
        parts.extend(_filled(pieces, room))
    return tuple(parts)


def _tokens(text: str) -> Iterator[str]:
    tokens = [token for token in re.split(r"[^\S\u00a0]+", text) if token]
    at = 0
    while at < len(tokens):
        token = tokens[at]
        at += 1
        if token[-1].isdigit() and at < len(tokens):
            for length in (2, 1):
                unit = " ".join(tokens[at : at + length])
                if unit.rstrip(_AFTER) in _UNITS:
                    token, at = f"{token} {unit}", at + length
                    break
        if _MINUS.match(token):
            token = "−" + token[1:]
        yield token.replace(_TIE, " ")


@lru_cache(maxsize=1 << 13)  # a cache each, for a font is slow to look up by
def _regular_word(string: str) -> Word:
    return _made(((string, False),), Font.REGULAR)


@lru_cache(maxsize=1 << 13)
def _bold_word(string: str) -> Word:
    return _made(((string, False),), Font.BOLD)


@lru_cache(maxsize=8)
def _pattern(symbols: frozenset[str]) -> re.Pattern[str] | None:
    long = sorted((re.escape(s) for s in symbols if len(s) > 1), key=lambda s: (-len(s), s))
    return re.compile(rf"(?<!\w)(?:{'|'.join(long)})(?!\w)") if long else None


def _with_subscripts(token: str, font: Font, signs: re.Pattern[str]) -> Word:
    pieces: list[tuple[str, bool]] = []
    at = 0
    for found in signs.finditer(token):
        pieces.append((token[at : found.start() + 1], False))
        pieces.append((token[found.start() + 1 : found.end()], True))
        at = found.end()
    if not pieces:
        return word(token, font)
    if at < len(token):
        pieces.append((token[at:], False))
    return _made(tuple(pieces), font)


def width_of(string: str, lowered: bool, font: Font) -> int:
    """In thousandths of the text's em, also where the string is a subscript."""
    return -(-ems(string, font) * LOWERED // 1000) if lowered else ems(string, font)


def _at_spaces(long: Word) -> Iterator[Word]:
    pieces: list[tuple[str, bool]] = []
    for string, lowered in long.pieces:
        first, *others = string.split(" ")
        pieces.append((first, lowered))
        for other in others:
            yield _made(tuple(pieces), long.font)
            pieces = [(other, lowered)]
    yield _made(tuple(pieces), long.font)


def _made(pieces: tuple[tuple[str, bool], ...], font: Font) -> Word:
    width = sum(width_of(string, lowered, font) for string, lowered in pieces)
    return Word(pieces, font, width, ems(" ", font))


def _cut(string: str, lowered: bool, font: Font, room: int) -> Iterator[Word]:
    start, width = 0, 0
    for at, sign in enumerate(string):
        step = width_of(sign, lowered, font)
        if width + step > room and at > start:
            yield _made(((string[start:at], lowered),), font)
            start, width = at, 0
        width += step
    yield _made(((string[start:], lowered),), font)


def _filled(parts: list[Word], room: int) -> Iterator[Word]:
    """Neighbouring parts joined again as far as they fit."""
    held: Word | None = None
    for part in parts:
        if held is not None and held.width + part.width <= room:
            held = _made(held.pieces + part.pieces, held.font)
        else:
            if held is not None:
                yield held
            held = part
    if held is not None:
        yield held
