"""How quantities and shapes print: on a face, and in the language's own writing for messages."""

from __future__ import annotations

from fractions import Fraction
from typing import assert_never

from dotleader.handbook.amounts.numerals import MINUS, Written, number_text
from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Exact, Operand, Quantity, Range, Shape, Tolerance
from dotleader.handbook.amounts.rounding import Side, round_to
from dotleader.handbook.amounts.trouble import Kind, Trouble
from dotleader.handbook.amounts.units import shown_unit

_LONGEST = 24  # digits of a number in a message


def shown(shape: Shape) -> str | Trouble:
    """A shape as it stands on a face: `82 KIAS`, `55 to 95 psi`, `62 ± 2 mm`, `at least 5 US qt`."""
    match shape:
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


def shown_quantity(quantity: Quantity) -> str | Trouble:
    """A quantity as it stands on a face: `82 KIAS`, `10°`, `2.10 mm`. A literal keeps its decimals."""
    written = quantity.written
    if written is None:
        written = Written(grouped=quantity.unit is None or quantity.unit.grouped)
    digits = number_text(quantity.number, written)
    return Trouble(Kind.UNEVEN, plain(quantity)) if digits is None else digits + shown_unit(quantity.unit)


def plain(operand: Operand) -> str:
    """An operand in the language's own writing, for messages. A long or endless number is cut short."""
    written = operand.written if isinstance(operand, Quantity) else None
    digits = number_text(operand.number, written) if isinstance(operand.number, Fraction) else None
    if digits is None:
        digits = f"about {number_text(round_to(operand.number, Fraction(1, 1000), Side.NEAREST))}"
    if len(digits) > _LONGEST:
        digits = digits[:_LONGEST] + "..."
    unit = f" {operand.unit.symbol}" if operand.unit else ""
    return digits.replace(MINUS, "-") + unit


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


def plain_shape(shape: Shape) -> str:
    """A shape in the language's own writing, for messages."""
    match shape:
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
