"""One or two numbers and the words around them as a shape; what a shape is in, and what it prints as."""

from __future__ import annotations

from dotleader.handbook.amounts.printing import shown
from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Exact, Quantity, Range, Shape, Tolerance
from dotleader.handbook.amounts.shapes import range_of, tolerance_of
from dotleader.handbook.amounts.trouble import Trouble
from dotleader.handbook.amounts.units import Unit


def shaped(shape: str, first: Quantity, second: Quantity | None) -> Shape | Trouble:
    """`shape` is that of a `Value` of the tree; `second` is the other number of a range or a tolerance."""
    if second is not None:
        return range_of(first, second) if shape == "range" else tolerance_of(first, second)
    if shape == "at least":
        return AtLeast(first)
    return AtMost(first) if shape == "at most" else Exact(first)


def unit_of(shape: Shape) -> Unit | None:
    match shape:
        case Exact(quantity) | AtLeast(quantity) | AtMost(quantity):
            return quantity.unit
        case Range(low, _):
            return low.unit
        case Tolerance(mid, _):
            return mid.unit


def shape_text(shape: Shape) -> str:
    """What a shape prints as; empty where it cannot be printed (said when it was worked out)."""
    text = shown(shape)
    return "" if isinstance(text, Trouble) else text
