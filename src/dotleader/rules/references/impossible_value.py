"""A value that cannot be."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 95 to 55

normal Run-up
  Oil pressure .... IN GREEN
""",
    (("impossible-value", "95 to 55"),),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

normal Run-up
  Oil pressure .... IN GREEN
""",
)

RULE = Rule(
    name="impossible-value",
    severity=Severity.ERROR,
    family="references",
    what=(
        "A range that runs from high to low, a tolerance below zero, rounding to a step of zero, the root of a number "
        "below zero, arithmetic with a value that is not one number, or the like."
    ),
    why="A value that cannot be is a misprint, and nobody can tell which of its numbers is wrong.",
    source=THE_LANGUAGE,
    mend="Check the numbers; write the lower one of a range first.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
