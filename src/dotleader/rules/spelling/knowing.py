"""Whether a word is known, and what may be meant by one that is not."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from functools import cache

from dotleader.rules.references.ordinary_words import ORDINARY_WORDS
from dotleader.rules.spelling.lists import BEFORE_A_HYPHEN, English
from dotleader.rules.wording.real_words import REAL_WORDS

_VOWELS = frozenset("AEIOUY")
_USUAL = REAL_WORDS | ORDINARY_WORDS
_ABBREVIATION = 3
"""Letters in capitals that are taken for an abbreviation; one more where none of them is a vowel."""
_SMALL_WORDS = "an and as at by for from if in is it no not of off on or the to up with"
_SMALL = frozenset(_SMALL_WORDS.split())
"""Words of a few letters that are often run together with the next."""
_LETTERS = "abcdefghijklmnopqrstuvwxyz"


class Known:
    """The words of a handbook's language: English, the trade's, its own (both in small letters)."""

    def __init__(self, english: English, trade: frozenset[str], own: frozenset[str]) -> None:
        self._english = english
        self._special = trade | own
        self._knows = cache(self._look_up)

    def unknown_parts(self, token: str) -> Iterator[tuple[int, str]]:
        """The words of a hyphenated one that are not known, each with its offset; of another one itself.

        A possessive ending is none of the word.
        """
        at, parts = 0, token.split("-")
        if len(parts) > 1 and self._is_own(_possessor(token)):
            return
        for number, part in enumerate(parts):
            before_another = number < len(parts) - 1 and part.lower() in BEFORE_A_HYPHEN
            if not before_another and not self._knows(part):
                yield at, _possessor(part)
            at += len(part) + 1

    def _look_up(self, token: str) -> bool:
        word = _possessor(token)
        if len(word) < 2 or self._is_own(word):
            return True
        word = _without_accents(word)
        if not word.isascii():
            return True  # of other scripts there is no list
        stem = word[:-1] if word.endswith("s") and word[:-1].isupper() else word  # `EGTs`
        if stem.isupper():
            if len(stem) <= _ABBREVIATION + _VOWELS.isdisjoint(stem):
                return True
        elif any(letter.isupper() for letter in stem[1:]):
            return True  # `inHg`, a maker's name
        return self._is_own(stem) or self._is_english(stem)

    def _is_own(self, word: str) -> bool:
        return word.lower() in self._special

    def _is_english(self, word: str) -> bool:
        if word.lower() in self._english or word in self._english:
            return True
        return word[0].isupper() and word.capitalize() in self._english

    def meant(self, word: str, used: frozenset[str]) -> list[tuple[int, str]]:
        """Up to three words that may be meant, the likeliest first, each with the number of slips to it.

        `used` are words of the handbook in small letters, which go before others that are as near. A missing space
        counts as one slip.
        """
        from rapidfuzz.distance import OSA  # noqa: PLC0415 (only where a word is unknown)

        small = _without_accents(word).lower()
        most = 1 if len(small) < 5 else 2
        found: dict[str, int] = {}
        for candidate in self._candidates(small, named=word.istitle()):
            slips = OSA.distance(small, candidate.lower(), score_cutoff=most)
            if 0 < slips <= most:
                found[candidate] = slips
        if 1 not in found.values():
            found.update(dict.fromkeys(self._parted(small), 1))
        nearest = min(found.values(), default=0)

        def rank(candidate: str) -> tuple[object, ...]:
            key = candidate.lower()
            return (
                found[candidate],
                key not in used and key not in _USUAL,
                sorted(key) != sorted(small),
                key not in self._special,
                key[0] != small[0],
                key[-1] != small[-1],
                abs(len(key) - len(small)),
                candidate,
            )

        best = sorted((each for each in found if found[each] == nearest or nearest == most), key=rank)[:3]
        return [(found[each], _as_written(each, word)) for each in best]

    def _candidates(self, small: str, *, named: bool) -> Iterator[str]:
        """Words that may be near: those that begin like it, like what follows its first letter, or where the first
        letter alone is wrong or missing."""
        for letter in dict.fromkeys(small[:2]):
            yield from self._english.beginning_with(letter)
            if named:
                yield from self._english.beginning_with(letter.upper())
        for letter in _LETTERS:
            yield from (each for each in (letter + small, letter + small[1:]) if each in self._english)
        yield from self._special

    def _parted(self, small: str) -> Iterator[str]:
        """The word as two, where a space is missing."""
        for at in range(2, len(small) - 1):
            left, right = small[:at], small[at:]
            if all(each in _SMALL or (len(each) > 3 and each in self._english) for each in (left, right)):
                yield f"{left} {right}"


def _possessor(word: str) -> str:
    """A word without its possessive ending."""
    return word[:-2] if word[-2:].lower() == "'s" else word


def _without_accents(word: str) -> str:
    if word.isascii():
        return word
    apart = unicodedata.normalize("NFKD", word)
    return "".join(letter for letter in apart if not unicodedata.combining(letter))


def _as_written(candidate: str, word: str) -> str:
    """A word in capitals where the one that it stands for is."""
    if word.isupper():
        return candidate.upper()
    return candidate[0].upper() + candidate[1:] if word[0].isupper() else candidate
