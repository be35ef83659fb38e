"""Conversion into another unit, rounded to the side on which a limit stays safe.

A value is rounded to the step of the unit it is converted into (a knot, a tenth of a litre), but never to
fewer than two figures: 4 kt are 4.6 mph, and 42 mm are not 0 m. A finer step never makes a limit less safe.
"""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.amounts.arithmetic import exactly_in, rounded
from dotleader.handbook.amounts.quantity import Quantity
from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.trouble import Trouble
from dotleader.handbook.amounts.units import Unit


def convert(quantity: Quantity, unit: Unit, side: Side, step: Fraction | None = None) -> Quantity | Trouble:
    """A quantity in another unit, rounded to `step` in that unit, or to the unit's own step.

    A quantity that is in the unit already stays as it was declared, not rounded.
    """
    exact = exactly_in(quantity, unit)
    if isinstance(exact, Trouble) or quantity.unit == unit:
        return exact
    return rounded(exact, Quantity(step or step_for(exact.number, unit), unit), side)


def step_for(number: Fraction, unit: Unit) -> Fraction:
    """What a number in a unit is rounded to: the unit's step, divided by ten until two figures remain."""
    step = unit.step
    while abs(number) < 10 * step and number % step:
        step /= 10
    return step
