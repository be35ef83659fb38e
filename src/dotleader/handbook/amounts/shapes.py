"""Shapes of values: whether one is sound, and how it converts so that no limit becomes less safe."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import TypeAlias, assert_never

from dotleader.handbook.amounts.arithmetic import compare, exactly_in, is_temperature, rounded
from dotleader.handbook.amounts.conversion import convert, step_for
from dotleader.handbook.amounts.printing import plain, plain_shape
from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Exact, Quantity, Range, Shape, Tolerance
from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.trouble import Kind, Trouble
from dotleader.handbook.amounts.units import Unit

_Narrow: TypeAlias = Callable[[Fraction, Fraction, Unit, Fraction], Range | Tolerance | None]

_FINEST = 6  # how often a step may be divided by ten before a range is given up


def range_of(low: Quantity, high: Quantity) -> Range | Trouble:
    """A range. A bare end takes the unit of the other: `55 to 95 psi`."""
    low, high = _of_one_unit(low, high)
    order = compare(low, high)
    if isinstance(order, Trouble):
        return order
    return Trouble(Kind.BACKWARDS, plain(low), plain(high)) if order > 0 else Range(low, high)


def tolerance_of(mid: Quantity, plus_minus: Quantity) -> Tolerance | Trouble:
    """A tolerance. A bare part takes the unit of the other: `62 +/- 2 mm`."""
    mid, plus_minus = _of_one_unit(mid, plus_minus)
    order = compare(mid, plus_minus)
    if isinstance(order, Trouble):
        return order
    below = plus_minus.number < 0
    return Trouble(Kind.BELOW_ZERO, plain(plus_minus)) if below else Tolerance(mid, plus_minus)


def quantity_of(shape: Shape) -> Quantity | Trouble:
    """The one number of an exact shape, which arithmetic needs."""
    return shape.quantity if isinstance(shape, Exact) else Trouble(Kind.NOT_EXACT, plain_shape(shape))


def convert_shape(shape: Shape, unit: Unit, side: Side = Side.NEAREST, step: Fraction | None = None) -> Shape | Trouble:
    """A shape in another unit. `side` is for one number; the others know theirs.

    A least goes up and a most goes down. Both ends of a range go inwards, and so does a tolerance: what is
    inside the converted limits is inside the declared ones.
    """
    match shape:
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
            return _narrowed(shape, unit, step)
        case _ as never:
            assert_never(never)


def _narrowed(shape: Range | Tolerance, unit: Unit, step: Fraction | None) -> Shape | Trouble:
    match shape:
        case Range(first, second):
            narrow: _Narrow = _inwards
            one, other = exactly_in(first, unit), exactly_in(second, unit)
        case Tolerance(first, second):
            narrow = _around
            one, other = exactly_in(first, unit), _width_in(second, unit)
        case _ as never:
            assert_never(never)
    if first.unit == second.unit == unit:
        return shape
    if isinstance(one, Trouble):
        return one
    if isinstance(other, Trouble):
        return other
    tried = step or min(step_for(one.number, unit), step_for(other.number, unit))
    for _ in range(1 if step else _FINEST):
        if result := narrow(one.number, other.number, unit, tried):
            return result
        tried /= 10
    return Trouble(Kind.TOO_COARSE, plain_shape(shape), unit.symbol)


def _inwards(low: Fraction, high: Fraction, unit: Unit, step: Fraction) -> Range | None:
    """The range on steps inside some limits; `None` where a range of some width would lose it."""
    least, most = _on_step(low, unit, step, Side.UP), _on_step(high, unit, step, Side.DOWN)
    if least.number > most.number or (least.number == most.number and low != high):
        return None
    return Range(least, most)


def _around(mid: Fraction, width: Fraction, unit: Unit, step: Fraction) -> Tolerance | None:
    """A middle to the nearest step, and as much room as that leaves on both sides inside some limits."""
    middle = _on_step(mid, unit, step, Side.NEAREST)
    room = _on_step(width - abs(middle.number - mid), unit, step, Side.DOWN)
    return Tolerance(middle, room) if room.number > 0 or (width == 0 and room.number == 0) else None


def _on_step(number: Fraction, unit: Unit, step: Fraction, side: Side) -> Quantity:
    result = rounded(Quantity(number, unit), Quantity(step, unit), side)
    assert isinstance(result, Quantity)  # one unit, and a step above zero
    return result


def _width_in(width: Quantity, unit: Unit) -> Quantity | Trouble:
    """A width in another unit. Without a temperature's offset: 2 degC of play are 3.6 degF, not 35.6."""
    if width.unit is None or not is_temperature(width.unit):
        return exactly_in(width, unit)
    if not is_temperature(unit):
        return Trouble(Kind.UNLIKE, plain(width), unit.symbol)
    return Quantity(width.number * width.unit.factor / unit.factor, unit)


def _of_one_unit(one: Quantity, other: Quantity) -> tuple[Quantity, Quantity]:
    if one.unit is None:
        return Quantity(one.number, other.unit, one.written), other
    if other.unit is None:
        return one, Quantity(other.number, one.unit, other.written)
    return one, other
