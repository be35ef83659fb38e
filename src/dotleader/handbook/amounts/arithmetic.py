"""Exact arithmetic over numbers with units.

A result is a `Quantity`, or `Unrounded` while a root is in it, or a `Trouble`. Numbers are rational, never
binary floating point.

Temperatures are points on a scale. A bare number added to one or taken from it moves it by so many of its own
degrees; the difference of two is a bare number of degrees of the left one's scale. Nothing else is defined:
twice 20 degC is neither 40 degC nor 313 degC to everybody.
"""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.amounts.composing import composed, rooted
from dotleader.handbook.amounts.numerals import Written
from dotleader.handbook.amounts.printing import plain
from dotleader.handbook.amounts.quantity import Operand, Quantity, Unrounded
from dotleader.handbook.amounts.roots import Number, inverse, plus, root_of, times, too_large
from dotleader.handbook.amounts.rounding import Side, places_of, round_to
from dotleader.handbook.amounts.trouble import Kind, Trouble
from dotleader.handbook.amounts.units import Basis, Unit, like

_MINUS_ONE = Fraction(-1)


def add(left: Operand, right: Operand) -> Operand | Trouble:
    """The sum, in the unit of the left; both must be like, or a temperature and a bare number of degrees."""
    if is_temperature(left.unit) and is_temperature(right.unit):
        return Trouble(Kind.TEMPERATURE, plain(left), plain(right))
    if is_temperature(right.unit):
        left, right = right, left
    if is_temperature(left.unit) and right.unit is None:
        return _made(plus(left.number, right.number), left.unit)
    return _unlike(left, right) or _made(plus(left.number, _in_unit_of(left, right)), left.unit)


def subtract(left: Operand, right: Operand) -> Operand | Trouble:
    """The difference, in the unit of the left; that of two temperatures is a bare number of degrees."""
    if is_temperature(left.unit) and right.unit is None:
        return add(left, negate(right))
    if trouble := _unlike(left, right):
        return trouble
    difference = plus(left.number, times(_in_unit_of(left, right), _MINUS_ONE))
    return _made(difference, None if is_temperature(left.unit) else left.unit)


def multiply(left: Operand, right: Operand) -> Operand | Trouble:
    """The product. A bare number leaves unit and basis of the other as they are."""
    return _hot(left) or _hot(right) or _product(left.number, left.unit, right.number, right.unit, 1)


def divide(left: Operand, right: Operand) -> Operand | Trouble:
    """The quotient. Two like values give a bare number."""
    if trouble := _hot(left) or _hot(right):
        return trouble
    if right.number == 0:
        return Trouble(Kind.DIVISION_BY_ZERO, plain(left), plain(right))
    turned = inverse(right.number)
    if turned is None:
        return Trouble(Kind.NESTED_ROOT, plain(right))
    return _product(left.number, left.unit, turned, right.unit, -1)


def negate(operand: Operand) -> Operand:
    """The value with its sign changed. A literal keeps the way it was written; `-20 degC` is one."""
    if isinstance(operand, Quantity):
        return Quantity(-operand.number, operand.unit, operand.written)
    number = times(operand.number, _MINUS_ONE)
    return Quantity(number, operand.unit) if isinstance(number, Fraction) else Unrounded(number, operand.unit)


def root(operand: Operand) -> Operand | Trouble:
    """The square root, of a bare number or of a square such as `{VS1} * {VS1}`."""
    if trouble := _hot(operand):
        return trouble
    if not isinstance(operand.number, Fraction):
        return Trouble(Kind.NESTED_ROOT, plain(operand))
    if operand.number < 0:
        return Trouble(Kind.NEGATIVE_ROOT, plain(operand))
    halved = rooted(operand.unit)
    if halved is None:
        return Trouble(Kind.NO_UNIT, f"root of {operand.unit.symbol}" if operand.unit else "")
    unit, scale = halved
    return _made(root_of(operand.number * scale), unit)


def rounded(operand: Operand, step: Quantity, side: Side) -> Quantity | Trouble:
    """The value rounded to a multiple of a step, exactly, in the step's unit if it has one."""
    if step.number <= 0:
        return Trouble(Kind.STEP, plain(step))
    number, unit = operand.number, operand.unit
    if step.unit is not None:
        if trouble := _unlike(operand, step):
            return trouble
        number, unit = _in_unit_of(step, operand), step.unit
    places = step.written.places if step.written else places_of(step.number) or 0
    result = round_to(number, step.number, side)
    return Quantity(result, unit, Written(places, grouped=unit is None or unit.grouped))


def root_rounded(operand: Quantity, step: Quantity, side: Side) -> Quantity | Trouble:
    """The square root rounded to a step, exactly."""
    result = root(operand)
    return result if isinstance(result, Trouble) else rounded(result, step, side)


def finished(operand: Operand) -> Quantity | Trouble:
    """A result as a value that can be printed: no root left, a unit that the language has, decimals that end."""
    if isinstance(operand, Unrounded):
        return Trouble(Kind.NOT_ROUNDED, plain(operand))
    if operand.unit is not None and not operand.unit.listed:
        return Trouble(Kind.NO_UNIT, operand.unit.symbol)
    return Trouble(Kind.UNEVEN, plain(operand)) if places_of(operand.number) is None else operand


def compare(left: Quantity, right: Quantity) -> int | Trouble:
    """-1, 0 or 1 as the left is less than, equal to or greater than the right, across units."""
    if trouble := _unlike(left, right):
        return trouble
    other = _in_unit_of(left, right)
    assert isinstance(other, Fraction)  # a Quantity has no roots in it
    return (left.number > other) - (left.number < other)


def exactly_in(quantity: Quantity, unit: Unit) -> Quantity | Trouble:
    """The same value in another unit, not rounded."""
    if quantity.unit == unit:
        return quantity
    target = Quantity(Fraction(0), unit)
    return _unlike(quantity, target) or Quantity(_rational(_in_unit_of(target, quantity)), unit)


def is_temperature(unit: Unit | None) -> bool:
    return unit is not None and unit.dimension.name == "temperature"


def _rational(number: Number) -> Fraction:
    assert isinstance(number, Fraction)  # a Quantity has no roots in it
    return number


def _made(number: Number, unit: Unit | None) -> Operand | Trouble:
    if too_large(number):
        return Trouble(Kind.TOO_LARGE)
    return Quantity(number, unit) if isinstance(number, Fraction) else Unrounded(number, unit)


def _product(
    left: Number, left_unit: Unit | None, right: Number, right_unit: Unit | None, power: int
) -> Operand | Trouble:
    unit, scale = composed(left_unit, right_unit, power)
    return _made(times(times(left, right), scale), unit)


def _hot(operand: Operand) -> Trouble | None:
    return Trouble(Kind.TEMPERATURE, plain(operand)) if is_temperature(operand.unit) else None


def _unlike(left: Operand, right: Operand) -> Trouble | None:
    one, other = left.unit, right.unit
    if one is None and other is None:
        return None
    if one is None or other is None:
        return Trouble(Kind.BARE, plain(left), plain(right))
    if like(one, other):
        return None
    kind = Kind.BASIS if _speed(one) and _speed(other) else Kind.UNLIKE
    return Trouble(kind, plain(left), plain(right))


def _speed(unit: Unit) -> bool:
    return unit.basis is not Basis.NONE or unit.dimension.name == "speed"


def _in_unit_of(target: Operand, operand: Operand) -> Number:
    """The number of a like operand in the unit of another, offsets included."""
    own, wanted = operand.unit, target.unit
    if own is None or wanted is None or own == wanted:
        return operand.number
    scaled = times(plus(operand.number, own.offset), own.factor / wanted.factor)
    return plus(scaled, -wanted.offset)
