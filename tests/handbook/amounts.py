"""Short ways to write quantities in the tests of values."""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.amounts.numerals import Numeral, read_number
from dotleader.handbook.amounts.printing import plain
from dotleader.handbook.amounts.quantity import Operand, Quantity, Range, Tolerance
from dotleader.handbook.amounts.trouble import Kind, Trouble
from dotleader.handbook.amounts.units import UNITS, Unit, find_unit


def q(text: str) -> Quantity:
    """`q("82 KIAS")`, `q("1,000")`: a literal of the language."""
    digits, _, symbol = text.partition(" ")
    numeral = read_number(digits)
    assert isinstance(numeral, Numeral), text
    unit = find_unit(symbol) if symbol else None
    assert unit is None or isinstance(unit, Unit), text
    return Quantity(numeral.value, unit, numeral.written)


def worked(result: Operand | Trouble) -> str | Kind:
    """A result in the language's own writing, or what kind of trouble it is."""
    return result.kind if isinstance(result, Trouble) else plain(result)


def of(number: str | int | Fraction, symbol: str) -> Quantity:
    return Quantity(Fraction(number), UNITS[symbol])


def a_range(low: str, high: str) -> Range:
    return Range(q(low), q(high))


def a_tolerance(mid: str, width: str) -> Tolerance:
    return Tolerance(q(mid), q(width))
