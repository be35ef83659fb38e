"""What can go wrong when values are worked out. Troubles are values: nothing that a user writes raises."""

from __future__ import annotations

from enum import Enum, auto

from dotleader.handbook.amounts.numerals import NumberFault, NumberTrouble
from dotleader.source.record import record


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
    BACKWARDS = auto()  # a range whose low end is above its high end
    BELOW_ZERO = auto()  # a tolerance
    TOO_COARSE = auto()  # nothing is left of a range when both its ends are rounded inwards
    TOO_LARGE = auto()
    NOT_EXACT = auto()  # arithmetic with a range


@record
class Trouble:
    """`left` and `right` are what met, in the language's writing; `right` is empty where one is alone."""

    kind: Kind
    left: str = ""
    right: str = ""


_SAID: dict[Kind, tuple[str, str]] = {
    Kind.UNLIKE: ("{left} and {right} are unlike.", "Use values that can be measured in the same unit."),
    Kind.BASIS: (
        "{left} and {right} are speeds of different kinds.",
        "Use the same kind of airspeed on both sides; no factor leads from one to the other.",
    ),
    Kind.BARE: (
        "{left} and {right} are unlike: only one of them has a unit.",
        "Write the unit of the bare number.",
    ),
    Kind.TEMPERATURE: (
        "{left} is a point on a scale, and cannot be added to another or multiplied.",
        "Add or subtract a number of degrees without a unit, such as `15 degC + 10`.",
    ),
    Kind.NO_UNIT: (
        "The result would be in {left}, which is no unit.",
        "Check what is multiplied and divided here.",
    ),
    Kind.DIVISION_BY_ZERO: ("{left} is divided by zero.", "Check the value below the division."),
    Kind.NEGATIVE_ROOT: ("{left} is below zero and has no square root.", "Check the value under the root."),
    Kind.NOT_ROUNDED: (
        "The root comes to {left} and is never rounded.",
        "Say `rounded to` a step, such as `rounded to 1`.",
    ),
    Kind.NESTED_ROOT: (
        "{left} has a root in it that must be rounded first.",
        "Declare that root, rounded, as a value of its own.",
    ),
    Kind.UNEVEN: (
        "The result, {left}, does not come out even.",
        "Say `rounded to` a step, such as `rounded to 0.1`.",
    ),
    Kind.STEP: ("{left} is no step to round to.", "Round to a step above zero, such as `1` or `0.5`."),
    Kind.BACKWARDS: ("{left} is above {right}.", "Write the lower number first."),
    Kind.BELOW_ZERO: ("The tolerance {left} is below zero.", "Write `+/-` before a number above zero."),
    Kind.TOO_COARSE: ("{left} is too narrow for the unit {right}.", "Give the value in that unit as well."),
    Kind.TOO_LARGE: (
        "The result goes beyond anything that is measured.",
        "Check the numbers and their units.",
    ),
    Kind.NOT_EXACT: ("{left} is not one number.", "Use a value that is a single number."),
}

_SAID_OF_NUMBERS: dict[NumberFault, tuple[str, str]] = {
    NumberFault.DECIMAL_COMMA: ("{text} has a comma where a decimal point belongs.", "Write {offers}."),
    NumberFault.FOREIGN_THOUSANDS: ("{text} separates thousands in another way.", "Write {offers}."),
    NumberFault.MISPLACED_COMMA: (
        "{text} has a comma in an odd place.",
        "A comma stands before exactly three digits, as in `1,000`.",
    ),
    NumberFault.BARE_POINT: ("{text} ends in a decimal point.", "Write {offers}."),
    NumberFault.PLUS_SIGN: ("{text} has a plus sign.", "Write {offers}."),
    NumberFault.TOO_LONG: (
        "This number has more digits than anything that is measured.",
        "Check the number.",
    ),
    NumberFault.NOT_A_NUMBER: ("{text} is not a number.", "Write digits, such as `82` or `2.5`."),
}


def said(trouble: Trouble) -> tuple[str, str]:
    """A trouble in words: one sentence about what is, and one about what to do."""
    left, right = f"`{trouble.left}`", f"`{trouble.right}`"
    message, advice = _SAID[trouble.kind]
    return message.format(left=left, right=right), advice


def said_of_number(trouble: NumberTrouble) -> tuple[str, str]:
    """A number that could not be read, in words."""
    offers = " or ".join(f"`{offer}`" for offer in trouble.offers)
    message, advice = _SAID_OF_NUMBERS[trouble.fault]
    return message.format(text=f"`{trouble.text}`"), advice.format(offers=offers)
