"""Rounding of exact numbers to a step, and the side on which a number stays safe."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from dotleader.handbook.amounts.roots import Number, floor_of, plus, times

_HALF = Fraction(1, 2)


class Side(StrEnum):
    """Towards which side a number may move: `UP` to the greater, `DOWN` to the lesser, also below zero."""

    UP = "up"
    DOWN = "down"
    NEAREST = "nearest"


def round_to(number: Number, step: Fraction, side: Side) -> Fraction:
    """The multiple of a positive step on that side of a number, which is the number itself where it is a
    multiple.

    To the nearest, a half goes away from zero. ISO 80000-1:2009, annex B, allows that (rule B) besides
    halves to even (rule A); a pilot who checks the sum by hand was taught the former. A limit is never
    rounded to the nearest.
    """
    steps = times(number, 1 / step)
    match side:
        case Side.DOWN:
            return floor_of(steps) * step
        case Side.UP:
            return -floor_of(times(steps, Fraction(-1))) * step
        case Side.NEAREST:
            if floor_of(steps) >= 0:
                return floor_of(plus(steps, _HALF)) * step
            return -floor_of(plus(times(steps, Fraction(-1)), _HALF)) * step


def places_of(number: Fraction) -> int | None:
    """How many decimals a number needs to stand exactly; `None` when no number of decimals is enough."""
    twos = fives = 0
    rest = number.denominator
    while rest % 2 == 0:
        rest //= 2
        twos += 1
    while rest % 5 == 0:
        rest //= 5
        fives += 1
    return max(twos, fives) if rest == 1 else None
