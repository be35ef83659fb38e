"""The lines of cards in which a number is typed, and the numbers in them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from dotleader.handbook.amounts.numerals import NumberTrouble, read_number
from dotleader.handbook.amounts.units import Unit
from dotleader.handbook.cards import Card, Explained, Item, Phrase
from dotleader.handbook.model import Handbook
from dotleader.rules.wording.unit_words import typed_amounts
from dotleader.source.record import record
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded

if TYPE_CHECKING:
    from dotleader.rules.lines import Lines


@record
class TypedLine:
    """A text with digits in it. `about` is all that its line says, folded, `item` the item that it belongs to."""

    card: Card
    item: Item | None
    phrase: Phrase
    about: str


_DIGIT = re.compile(r"\d")


def typed_lines(handbook: Handbook, lines: Lines) -> Iterator[TypedLine]:
    for card, item in lines.items:
        texts = [text for text in (item.response, *item.detail) if text is not None]
        if any(map(_has_digit, texts)):
            about = folded(" ".join((item.challenge, *(text.text for text in texts))))
            yield from (TypedLine(card, item, text, about) for text in texts if _has_digit(text))
    loose = [(card, notice.phrase) for card, notice in lines.notices]
    loose += [(card, arm.condition) for card, arm in lines.arms if arm.condition is not None]
    loose += [(card, repeat.until) for card, repeat in lines.repeats]
    for card in handbook.cards:
        loose += [(card, card.when)] if card.when is not None else []
        for part in card.amplified:
            loose += [(card, text) for text in (part.paragraphs if isinstance(part, Explained) else (part,))]
    for card, text in loose:
        if _has_digit(text):
            yield TypedLine(card, None, text, folded(text.text))


def _has_digit(phrase: Phrase) -> bool:
    return any(isinstance(run, str) and _DIGIT.search(run) for run in phrase.runs)


def typed_in(phrase: Phrase) -> Iterator[tuple[Spot, Fraction, Unit]]:
    """The typed numbers with a unit, where they stand. What a reference prints is none."""
    text, start = phrase.spot.text, phrase.spot.start
    for use in phrase.uses:
        low, high = use.spot.start - start, use.spot.end - start
        text = text[:low] + " " * (high - low) + text[high:]
    for low, high, number, unit in amounts_in(text):
        yield Spot(phrase.spot.source, start + low, start + high), number, unit


def amounts_in(text: str) -> Iterator[tuple[int, int, Fraction, Unit]]:
    for typed in typed_amounts(text):
        number = read_number(typed.number)
        if not isinstance(number, NumberTrouble):
            yield typed.start, typed.end, number.value, typed.unit
