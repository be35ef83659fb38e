"""Numbers with a unit that are typed on cards, held against what is declared.

A number is only told to be a declared one where the line speaks of the same thing: two things of one aircraft may well
weigh the same. Times, bare numbers and positions of controls are no numbers typed again.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING, TypeAlias

from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Exact, Quantity, Range, Tolerance
from dotleader.handbook.amounts.speed_symbols import speed_symbol
from dotleader.handbook.amounts.units import Basis, Unit
from dotleader.handbook.cards import Phrase
from dotleader.handbook.model import Declared, Gauge, Handbook
from dotleader.rules.numbers.telling import GENERAL, is_airspeed, same_speed, words_of
from dotleader.rules.numbers.typed_lines import TypedLine, amounts_in, typed_in, typed_lines
from dotleader.rules.wording.unit_words import comparable
from dotleader.source.record import record
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded

if TYPE_CHECKING:
    from dotleader.rules.lines import Lines

_Amount: TypeAlias = tuple[Fraction, Fraction, Fraction]  # number, and factor and offset of its unit


@record
class Again:
    """A typed number that equals a declared one. `values`, or the range of a gauge, `reference` as it is written."""

    spot: Spot
    values: tuple[Declared, ...]
    gauge: Gauge | None
    reference: str  # "" where there are several
    prints: str


@record
class Otherwise:
    """A typed number on a line that names a declared value, which is another."""

    spot: Spot
    value: Declared


_ALL_WORDS = re.compile(r"\w+")
_BETWEEN = frozenset(
    """
    above add added below faster higher less lower minus more over plus slower subtract than twice under within half
    """.split()  # noqa: SIM905
)
_SIGNS = re.compile(r"[+*/\u00d7\u2212]|\s-\s?\d")


def typed_numbers(handbook: Handbook, lines: Lines) -> tuple[Again | Otherwise, ...]:
    """What is said of each typed number, in the order in which the cards have them by kind of line."""
    if not handbook.values and not handbook.gauges:
        return ()
    known = _Known(handbook)
    return tuple(said for line in typed_lines(handbook, lines) for said in known.judged(line))


def values_of(found: Again | Otherwise) -> tuple[Declared, ...]:
    """The declared values that a finding speaks of."""
    return found.values if isinstance(found, Again) else (found.value,)


def _figures(number: Fraction) -> int:
    """How many figures a number has that are not only zeros at its end: of 1,650 three, of 1,500 two."""
    while number.denominator != 1:
        number *= 10
    return len(str(abs(number.numerator)).rstrip("0"))


class _Known:
    """What is declared, to be looked up by number and by name."""

    def __init__(self, handbook: Handbook) -> None:
        self.handbook = handbook
        self.values: dict[_Amount, list[Declared]] = {}
        self.bands: dict[_Amount, list[tuple[Gauge, str, str]]] = {}
        self.names: dict[str, list[tuple[tuple[str, ...], Declared]]] = {}
        self.positions = {
            (number, unit.factor, unit.offset)
            for control in handbook.controls.values()
            for position in control.positions
            for _, _, number, unit in amounts_in(position)
        }
        symbols = [symbol.symbol for value in handbook.values.values() if (symbol := speed_symbol(value.name))]
        for value in handbook.values.values():
            quantity = _quantity(value)
            if quantity is not None and quantity.unit is not None:
                self.values.setdefault(_key(quantity.number, quantity.unit), []).append(value)
            for name in _names(value, symbols):
                words = tuple(_ALL_WORDS.findall(folded(name)))
                if words:
                    self.names.setdefault(words[0], []).append((words, value))
        for gauge in handbook.gauges.values():
            self._add_bands(gauge)

    def _add_bands(self, gauge: Gauge) -> None:
        unit = gauge.unit
        if unit is None:
            return
        colours = [folded(band.colour) for band in gauge.bands]
        for at, band in enumerate(gauge.bands):
            colour = colours[at]
            which = f"{colour} {colours[: at + 1].count(colour)}" if colours.count(colour) > 1 else colour
            for end, number in (("low", band.low), ("high", band.high)):
                if number:
                    reference = f"{gauge.name} {which} {end}"
                    self.bands.setdefault(_key(number, unit), []).append((gauge, reference, band.shown))

    def judged(self, line: TypedLine) -> Iterator[Again | Otherwise]:
        amounts = list(typed_in(line.phrase))
        if not amounts:
            return
        named = self._named(line)
        if named is not None:
            wrong = _differing(line.phrase, named, amounts)
            if wrong is not None:
                yield Otherwise(wrong, named)
                return
        for spot, number, unit in amounts:
            if unit.dimension.name != "time" and number and _key(number, unit) not in self.positions:
                again = self._again(line, spot, number, unit)
                if again is not None:
                    yield again
                    return

    def _again(self, line: TypedLine, spot: Spot, number: Fraction, unit: Unit) -> Again | None:
        key = _key(number, unit)
        values = tuple(value for value in self.values.get(key, ()) if self._same_thing(line, value, number, unit))
        if values:
            only = values[0].name if len(values) == 1 else ""
            return Again(_whole_range(line.phrase.spot, spot, values[0]), values, None, only, values[0].shown)
        bands = [band for band in self.bands.get(key, ()) if _speaks_of(line, band[0])]
        if not bands:
            return None
        gauge, reference, shown = bands[0]
        return Again(spot, (), gauge, reference if len({name for _, name, _ in bands}) == 1 else "", shown)

    def _same_thing(self, line: TypedLine, value: Declared, number: Fraction, unit: Unit) -> bool:
        """Whether the line speaks of what is declared."""
        own = _quantity(value)
        assert own is not None
        assert own.unit is not None
        if own.unit.dimension != unit.dimension and not comparable(own.unit, unit):
            return False
        if isinstance(value.shape, Range) and folded(value.shown) not in line.about:
            return False
        words = words_of(line.about)
        if value.speed and (unit.basis is not Basis.NONE or (line.item is not None and is_airspeed(line.item))):
            return same_speed(line, value, number, words)
        told = words_of(folded(value.name.partition("(")[0]))
        for challenge in line.item.challenges if line.item is not None else ():
            words |= words_of(f"{challenge.control} {challenge.gauge}")
        telling = told - GENERAL - {folded(unit.symbol), folded(own.unit.symbol)}
        if _figures(number) >= 3:
            return bool((told - {folded(unit.symbol)}) & words)
        if telling & words:
            return True
        return bool(telling) and telling <= words | words_of(folded(line.card.title))

    def _named(self, line: TypedLine) -> Declared | None:
        """The one value that the line names in words, and does not refer to."""
        words = _ALL_WORDS.findall(line.about)
        found: dict[str, Declared] = {}
        for at, word in enumerate(words):
            for name, value in self.names.get(word, ()):
                if tuple(words[at : at + len(name)]) == name and _whole(name, value, line):
                    found[value.key] = value
        longest = max((len(value.name) for value in found.values()), default=0)
        best = [value for value in found.values() if len(value.name) == longest]
        return best[0] if len(best) == 1 and len({value.speed for value in found.values()}) == 1 else None


def _whole_range(phrase: Spot, spot: Spot, value: Declared) -> Spot:
    """Where all of a range stands, of which the second number was found."""
    at = phrase.text.casefold().find(value.shown.casefold()) if isinstance(value.shape, Range) else -1
    return spot if at < 0 else Spot(phrase.source, phrase.start + at, phrase.start + at + len(value.shown))


def _whole(name: tuple[str, ...], value: Declared, line: TypedLine) -> bool:
    """A symbol or several words are a name anywhere; one word is only where it is all that is challenged."""
    if len(name) > 1 or (value.speed and speed_symbol(value.name) is not None):
        return True
    return line.item is not None and folded(line.item.challenge) == name[0]


def _names(value: Declared, symbols: list[str]) -> Iterator[str]:
    yield value.name
    symbol = speed_symbol(value.name) if value.speed else None
    if symbol is not None and symbols.count(symbol.symbol) == 1:
        yield symbol.symbol
        for meaning in {symbol.meaning, value.meaning}:
            if len(meaning.split()) > 1 and "," not in meaning and symbol.symbol != "VNE":
                yield meaning  # other things are never to be exceeded, too


def _differing(phrase: Phrase, value: Declared, amounts: list[tuple[Spot, Fraction, Unit]]) -> Spot | None:
    """The typed number that contradicts the named value; None where one agrees, or something is added to it."""
    if any(use.key == value.key for use in phrase.uses):
        return None
    words = set(_ALL_WORDS.findall(folded(phrase.text)))
    if words & _BETWEEN or _SIGNS.search(phrase.text):
        return None
    wrong = None
    for spot, number, unit in amounts:
        verdict = _agrees(value, number, unit)
        if verdict:
            return None
        if verdict is False:
            wrong = wrong or spot
    return wrong


def _agrees(value: Declared, number: Fraction, unit: Unit) -> bool | None:
    """None where it measures something else."""
    low: Quantity | None
    high: Quantity | None
    match value.shape:
        case Exact(quantity):
            low = high = quantity
        case AtLeast(quantity):
            low, high = quantity, None
        case AtMost(quantity):
            low, high = None, quantity
        case Range(low, high):
            pass
        case Tolerance(mid, plus_minus):
            low = Quantity(mid.number - plus_minus.number, mid.unit)
            high = Quantity(mid.number + plus_minus.number, mid.unit)
        case _:
            return None
    own = (low or high or Quantity(Fraction(0))).unit
    if own is None or not comparable(own, unit) or own.dimension.name == "time":
        return None
    slack = Fraction(0) if (own.factor, own.offset) == (unit.factor, unit.offset) else unit.factor
    amount = (number + unit.offset) * unit.factor
    above = low is None or (low.number + own.offset) * own.factor - slack <= amount
    below = high is None or amount <= (high.number + own.offset) * own.factor + slack
    return above and below


def _speaks_of(line: TypedLine, gauge: Gauge) -> bool:
    if line.item is not None and any(challenge.gauge == gauge.key for challenge in line.item.challenges):
        return True
    return gauge.key in line.about


def _quantity(value: Declared) -> Quantity | None:
    match value.shape:
        case Exact(quantity) | AtLeast(quantity) | AtMost(quantity) | Range(_, quantity):
            return quantity  # the unit stands behind the second number of a range
        case _:
            return None


def _key(number: Fraction, unit: Unit) -> _Amount:
    return number, unit.factor, unit.offset
