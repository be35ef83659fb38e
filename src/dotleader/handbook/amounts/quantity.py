"""What a value is: a number with its unit, and the shapes that a declared value can have.

Numbers are rational, never binary floating point. Arithmetic over them is in `arithmetic`, printing in
`printing`.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

from dotleader.handbook.amounts.numerals import Written
from dotleader.handbook.amounts.roots import Roots
from dotleader.handbook.amounts.units import Unit
from dotleader.source.record import record


@record(uncompared=("written",))
class Quantity:
    """`unit` is `None` for a bare number. `written`, how a literal was written, is no part of the value."""

    number: Fraction
    unit: Unit | None = None
    written: Written | None = None


@record
class Unrounded:
    """A number with a root in it, to be rounded before it can be a value."""

    number: Roots
    unit: Unit | None = None


Operand: TypeAlias = Quantity | Unrounded


@record
class Exact:
    quantity: Quantity


@record
class Range:
    low: Quantity
    high: Quantity


@record
class Tolerance:
    """`plus_minus` is a width: that of a temperature is a number of degrees and has no offset."""

    mid: Quantity
    plus_minus: Quantity


@record
class AtLeast:
    quantity: Quantity


@record
class AtMost:
    quantity: Quantity


Shape: TypeAlias = Exact | Range | Tolerance | AtLeast | AtMost
