"""What can go wrong when values are worked out. Troubles are values: nothing that a user writes raises."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto
from typing import assert_never

from dotleader.handbook.numerals import NumberFault, NumberTrouble


class Kind(Enum):
    UNLIKE = auto()  # knots and pounds
    BASIS = auto()  # an indicated and a calibrated airspeed
    BARE = auto()  # a number without a unit beside one that has a unit
    TEMPERATURE = auto()  # a sum or a multiple of temperatures
    NO_UNIT = auto()  # a product that no unit of the language can express
    DIVISION_BY_ZERO = auto()
    NEGATIVE_ROOT = auto()
    NOT_ROUNDED = auto()  # a root that was never rounded
    NESTED_ROOT = auto()  # a root of a root, or a division by a sum of roots
    UNEVEN = auto()  # a number with endless decimals that was never rounded
    STEP = auto()  # rounding to zero or to less
    BACKWARDS = auto()  # a range whose low end is above its high end, a tolerance below zero
    TOO_COARSE = auto()  # nothing is left of a range when both its ends are rounded inwards
    TOO_LARGE = auto()
    NOT_EXACT = auto()  # arithmetic with a range


@dataclass(frozen=True, slots=True)
class Trouble:
    """`left` and `right` are what met, in the language's own writing; `right` is empty where there is only one."""

    kind: Kind
    left: str = ""
    right: str = ""


def said(trouble: Trouble) -> tuple[str, str]:
    """A trouble in words: one sentence about what is, and one about what to do."""
    left, right = f"`{trouble.left}`", f"`{trouble.right}`"
    match trouble.kind:
        case Kind.UNLIKE:
            return f"{left} and {right} are unlike.", "Use values that can be measured in the same unit."
        case Kind.BASIS:
            return (
                f"{left} and {right} are speeds of different kinds.",
                "Use the same kind of airspeed on both sides; no factor leads from one to the other.",
            )
        case Kind.BARE:
            return (
                f"{left} and {right} are unlike: only one of them has a unit.",
                "Write the unit of the bare number.",
            )
        case Kind.TEMPERATURE:
            return (
                f"{left} is a point on a scale and cannot be added or multiplied.",
                "Add or subtract a number of degrees as a bare number, such as `15 degC + 10`.",
            )
        case Kind.NO_UNIT:
            return (
                f"The result would be in {left}, which is no unit.",
                "Check what is multiplied and divided here.",
            )
        case Kind.DIVISION_BY_ZERO:
            return f"{left} is divided by zero.", "Check the value below the division."
        case Kind.NEGATIVE_ROOT:
            return f"{left} is below zero and has no square root.", "Check the value under the root."
        case Kind.NOT_ROUNDED:
            return (
                f"The root comes to {left} and is never rounded.",
                "Say `rounded to` a step, such as `rounded to 1`.",
            )
        case Kind.NESTED_ROOT:
            return (
                f"{left} has a root in it that must be rounded first.",
                "Declare that root as a value of its own.",
            )
        case Kind.UNEVEN:
            return (
                f"The result, {left}, does not come out even.",
                "Say `rounded to` a step, such as `rounded to 0.1`.",
            )
        case Kind.STEP:
            return f"{left} is no step to round to.", "Round to a step above zero, such as `1` or `0.5`."
        case Kind.BACKWARDS:
            return f"{left} is above {right}.", "Write the lower number first."
        case Kind.TOO_COARSE:
            return f"{left} is too narrow for the unit {right}.", "Give the value in that unit as well."
        case Kind.TOO_LARGE:
            return "The result goes beyond anything that is measured.", "Check the numbers and their units."
        case Kind.NOT_EXACT:
            return f"{left} is not one number.", "Use a value that is a single number."
        case _ as never:
            assert_never(never)


def said_of_number(trouble: NumberTrouble) -> tuple[str, str]:
    """A number that could not be read, in words."""
    text = f"`{trouble.text}`"
    right = " or ".join(f"`{offer}`" for offer in trouble.offers)
    match trouble.fault:
        case NumberFault.DECIMAL_COMMA:
            return f"{text} has a comma where a decimal point belongs.", f"Write {right}."
        case NumberFault.FOREIGN_THOUSANDS:
            return f"{text} is not how thousands are separated here.", f"Write {right}."
        case NumberFault.MISPLACED_COMMA:
            return (
                f"{text} has a comma in an odd place.",
                "A comma stands before exactly three digits: `1,000`.",
            )
        case NumberFault.BARE_POINT:
            return f"{text} ends in a decimal point.", f"Write {right}."
        case NumberFault.PLUS_SIGN:
            return f"{text} has a plus sign.", f"Write {right}."
        case NumberFault.TOO_LONG:
            return "This number has more digits than anything that is measured.", "Check the number."
        case NumberFault.NOT_A_NUMBER:
            return f"{text} is not a number.", "Write digits, such as `82` or `2.5`."
        case _ as never:
            assert_never(never)
