"""The rows of a control that speak of its electric circuit, read."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from fractions import Fraction

from dotleader.handbook.amounts.arithmetic import exactly_in
from dotleader.handbook.amounts.quantity import Quantity, Range, Tolerance
from dotleader.handbook.amounts.shapes import range_of, tolerance_of
from dotleader.handbook.amounts.trouble import Trouble
from dotleader.handbook.amounts.units import UNITS, Unit
from dotleader.handbook.facts import origin_of
from dotleader.handbook.gather import At
from dotleader.handbook.numbers import Numbers, UnworkableError
from dotleader.handbook.wiring import Draw, Protector, Wire, Wiring
from dotleader.source.text import Span, Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Row, Value, Words

SAMPLES = {
    "wire": "wire .... AWG 18, 2.4 m",
    "draws": "draws .... 4.5 A",
    "breaker": "breaker .... 7.5 A",
    "fuse": "fuse .... 5 A",
}
CIRCUIT = tuple(SAMPLES)
WHILE_MOVING = "draws while moving"
_WIRE = re.compile(
    r"AWG\s+([1-4]/0|\d{1,2}|0{3,4})(?:\s*,\s*(\d+(?:\.\d+)?)\s*(m|ft|in|cm|mm))?(?:\s*,\s*(\d+)\s*(?:degC|°C))?$",
    re.IGNORECASE,
)


def amount_in(units: tuple[str, ...], value: Value, at: At, numbers: Numbers) -> tuple[Fraction, Unit] | None:
    """The largest number that a value stands for, in the first of these units that it can be told in.

    None where it is in none of them, or below zero. Raises UnworkableError where it cannot be worked out (said).
    """
    told = [numbers.finished(value.first, at)]
    if value.second is not None:
        second = numbers.finished(value.second, at)
        shape = (tolerance_of if value.shape == "tolerance" else range_of)(told[0], second)
        match shape:
            case Range(low, high):
                told = [low, high]
            case Tolerance(mid, plus_minus):
                told = [mid, plus_minus]
            case Trouble():
                return None
    for symbol in units:
        found = [exactly_in(one, UNITS[symbol]) for one in told]
        known = [one.number for one in found if isinstance(one, Quantity)]
        if len(known) == len(found):
            most = sum(known, Fraction(0)) if value.shape == "tolerance" else max(known)
            return (most, UNITS[symbol]) if min(known) >= 0 else None
    return None


def measured(value: Value) -> Span:
    """Where the number of a value stands, without what it came from."""
    return Span(value.first.span.start, (value.second or value.first).span.end)


def read_wiring(rows: Iterable[Row], position: Callable[[str, Spot], str], at: At, numbers: Numbers) -> Wiring:
    """The circuit that the rows of a control describe. `position` is its position of a name; said and `""` where it
    has none. What cannot be read is said and left out."""
    draws: list[Draw] = []
    protector: Protector | None = None
    wire: Wire | None = None
    for row in rows:
        key = folded(row.left.text)
        word = key.split(" ")[0]
        if row.right is None:
            continue
        if word == "wire":
            wire = wire_of(row.right.text, at.spot(row.right.span))
            if wire is None:
                _form(word, row.right, at, numbers)
            continue
        found = _amount(word, row.value, row.right, at, numbers)
        if found is None or row.value is None:
            continue
        number, unit = found
        spot = at.spot(measured(row.value))
        if word != "draws":
            protector = Protector(word, number, spot)
            continue
        named = " ".join(row.left.text.split())[len("draws in ") :] if key.startswith("draws in ") else ""
        in_position = position(named, at.spot(row.left.span)) if named else ""
        if in_position or not named:
            draws.append(Draw(number, unit.symbol == "W", in_position, key == WHILE_MOVING, spot))
    return Wiring(tuple(draws), protector, wire)


def _amount(word: str, value: Value | None, right: Words, at: At, numbers: Numbers) -> tuple[Fraction, Unit] | None:
    if value is None:
        return None
    try:
        found = amount_in(("A", "W") if word == "draws" else ("A",), value, at, numbers)
    except UnworkableError:
        return None
    origin_of(value.source, None, at, numbers.sources, numbers.ledger)
    if found is None or (word != "draws" and not found[0]):
        _form(word, right, at, numbers)
        return None
    return found


def _form(word: str, right: Words, at: At, numbers: Numbers) -> None:
    message = f"`{right.text}` cannot be read after `{word}`."
    numbers.ledger.say("unreadable-value", at.spot(right.span), message, f"Write it like `{SAMPLES[word]}`.")


def wire_of(text: str, spot: Spot) -> Wire | None:
    """The wire that a text describes; None where it describes none."""
    found = _WIRE.match(text)
    if found is None:
        return None
    size, length, unit, rated = found.groups()
    gauge = 1 - int(size[0]) if size.endswith("/0") else int(size) or 1 - len(size)
    metres = Fraction(length) * UNITS[unit.lower()].factor if length else None
    return Wire(gauge, metres, Fraction(rated) if rated else None, spot)


def wire_name(gauge: int) -> str:
    """`AWG 18`, `AWG 2/0`."""
    return f"AWG {gauge}" if gauge >= 0 else f"AWG {1 - gauge}/0"
