"""What a value can be: one number, a range, a tolerance, a least or a most. How each prints and converts."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias, assert_never

from dotleader.handbook.conversion import convert, step_for
from dotleader.handbook.quantity import (
    Quantity,
    compare,
    exactly_in,
    is_temperature,
    plain,
    rounded,
    shown_quantity,
)
from dotleader.handbook.rounding import Side
from dotleader.handbook.trouble import Kind, Trouble
from dotleader.handbook.units import Unit, shown_unit

_FINEST = 6  # how often a step may be divided by ten before a range is given up


@dataclass(frozen=True, slots=True)
class Exact:
    quantity: Quantity


@dataclass(frozen=True, slots=True)
class Range:
    low: Quantity
    high: Quantity


@dataclass(frozen=True, slots=True)
class Tolerance:
    """`plus_minus` is a width: that of a temperature is a number of degrees and has no offset."""

    mid: Quantity
    plus_minus: Quantity


@dataclass(frozen=True, slots=True)
class AtLeast:
    quantity: Quantity


@dataclass(frozen=True, slots=True)
class AtMost:
    quantity: Quantity


Amount: TypeAlias = Exact | Range | Tolerance | AtLeast | AtMost


def amiss(amount: Amount) -> Trouble | None:
    """What is wrong with an amount as declared: unlike ends, a range from high to low, a tolerance below zero."""
    match amount:
        case Range(low, high):
            order = compare(low, high)
            if isinstance(order, Trouble):
                return order
            return Trouble(Kind.BACKWARDS, plain(low), plain(high)) if order > 0 else None
        case Tolerance(mid, plus_minus):
            order = compare(mid, plus_minus)
            if isinstance(order, Trouble):
                return order
            return Trouble(Kind.BACKWARDS, "0", plain(plus_minus)) if plus_minus.number < 0 else None
        case Exact() | AtLeast() | AtMost():
            return None
        case _ as never:
            assert_never(never)


def quantity_of(amount: Amount) -> Quantity | Trouble:
    """The one number of an exact amount, which arithmetic needs."""
    return amount.quantity if isinstance(amount, Exact) else Trouble(Kind.NOT_EXACT, _plain_amount(amount))


def shown_amount(amount: Amount) -> str | Trouble:
    """An amount as it stands on a face: `82 KIAS`, `55 to 95 psi`, `10° to 20°`, `62 ± 2 mm`, `at least 5 US qt`."""
    match amount:
        case Exact(quantity):
            return shown_quantity(quantity)
        case Range(low, high):
            return _paired(low, "to", high)
        case Tolerance(mid, plus_minus):
            return _paired(mid, "±", plus_minus)
        case AtLeast(quantity):
            return _worded("at least", quantity)
        case AtMost(quantity):
            return _worded("at most", quantity)
        case _ as never:
            assert_never(never)


def convert_amount(
    amount: Amount, unit: Unit, side: Side = Side.NEAREST, step: Fraction | None = None
) -> Amount | Trouble:
    """An amount in another unit. `side` is for one number; the others know theirs.

    A least goes up and a most goes down. Both ends of a range go inwards, and so does a tolerance: what is
    inside the converted limits is inside the declared ones.
    """
    match amount:
        case Exact(quantity):
            result = convert(quantity, unit, side, step)
            return result if isinstance(result, Trouble) else Exact(result)
        case AtLeast(quantity):
            result = convert(quantity, unit, Side.UP, step)
            return result if isinstance(result, Trouble) else AtLeast(result)
        case AtMost(quantity):
            result = convert(quantity, unit, Side.DOWN, step)
            return result if isinstance(result, Trouble) else AtMost(result)
        case Range() | Tolerance():
            return _narrowed(amount, unit, step)
        case _ as never:
            assert_never(never)


def _narrowed(amount: Range | Tolerance, unit: Unit, step: Fraction | None) -> Amount | Trouble:
    if _units_of(amount) == {unit}:
        return amount
    first, second = (
        (amount.low, amount.high) if isinstance(amount, Range) else (amount.mid, amount.plus_minus)
    )
    one = exactly_in(first, unit)
    other = exactly_in(second, unit) if isinstance(amount, Range) else _width_in(second, first, unit)
    if isinstance(one, Trouble):
        return one
    if isinstance(other, Trouble):
        return other
    tried = step or min(step_for(one.number, unit), step_for(other.number, unit))
    for _ in range(1 if step else _FINEST):
        narrow = _inwards if isinstance(amount, Range) else _around
        if result := narrow(one.number, other.number, unit, tried):
            return result
        tried /= 10
    return Trouble(Kind.TOO_COARSE, _plain_amount(amount), unit.symbol)


def _inwards(low: Fraction, high: Fraction, unit: Unit, step: Fraction) -> Range | None:
    """The range on steps inside some limits; `None` where a range of some width would lose it."""
    least, most = _on_step(low, unit, step, Side.UP), _on_step(high, unit, step, Side.DOWN)
    if least.number > most.number or (least.number == most.number and low != high):
        return None
    return Range(least, most)


def _around(mid: Fraction, width: Fraction, unit: Unit, step: Fraction) -> Tolerance | None:
    """The tolerance on steps inside some limits: the middle to the nearest, and what room that leaves on both sides."""
    middle = _on_step(mid, unit, step, Side.NEAREST)
    room = _on_step(width - abs(middle.number - mid), unit, step, Side.DOWN)
    return Tolerance(middle, room) if room.number > 0 or (width == 0 and room.number == 0) else None


def _on_step(number: Fraction, unit: Unit, step: Fraction, side: Side) -> Quantity:
    result = rounded(Quantity(number, unit), Quantity(step, unit), side)
    assert isinstance(result, Quantity)  # one unit, and a step above zero
    return result


def _width_in(width: Quantity, mid: Quantity, unit: Unit) -> Quantity | Trouble:
    """A width in another unit. Without a temperature's offset: 2 degC of play are 3.6 degF, not 35.6."""
    if width.unit is None or not is_temperature(width.unit):
        return exactly_in(width, unit)
    return Quantity(width.number * width.unit.factor / unit.factor, unit)


def _units_of(amount: Range | Tolerance) -> set[Unit | None]:
    match amount:
        case Range(low, high):
            return {low.unit, high.unit}
        case Tolerance(mid, plus_minus):
            return {mid.unit, plus_minus.unit}
        case _ as never:
            assert_never(never)


def _paired(first: Quantity, between: str, second: Quantity) -> str | Trouble:
    """Two numbers. A unit that stands after a space is written once: `55 to 95 psi`, but `10° to 20°`."""
    one, other = shown_quantity(first), shown_quantity(second)
    if isinstance(one, Trouble):
        return one
    if isinstance(other, Trouble):
        return other
    if first.unit == second.unit and first.unit is not None and not first.unit.glued:
        one = one.removesuffix(shown_unit(first.unit))
    return f"{one} {between} {other}"


def _worded(words: str, quantity: Quantity) -> str | Trouble:
    text = shown_quantity(quantity)
    return text if isinstance(text, Trouble) else f"{words} {text}"


def _plain_amount(amount: Amount) -> str:
    """An amount in the language's own writing, for messages."""
    match amount:
        case Exact(quantity):
            return plain(quantity)
        case Range(low, high):
            return f"{plain(low)} to {plain(high)}"
        case Tolerance(mid, plus_minus):
            return f"{plain(mid)} +/- {plain(plus_minus)}"
        case AtLeast(quantity):
            return f"at least {plain(quantity)}"
        case AtMost(quantity):
            return f"at most {plain(quantity)}"
        case _ as never:
            assert_never(never)
