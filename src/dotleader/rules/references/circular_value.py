"""A value that refers to itself."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  full fuel .... 2 * {tank fuel}
  tank fuel .... {full fuel} / 2

normal Preflight
  Fuel .... {full fuel}
""",
    (("circular-value", "{full fuel}"),),
)

GOOD = Example(
    """\
values
  full fuel .... 2 * {tank fuel}
  tank fuel .... 19 US gal  unverified

normal Preflight
  Fuel .... {full fuel}
""",
)

RULE = Rule(
    name="circular-value",
    severity=Severity.ERROR,
    family="references",
    what="A value whose arithmetic refers to itself, directly or by way of others. The finding shows the circle.",
    why="A value that waits for itself has no number.",
    source=THE_LANGUAGE,
    mend="Give one value of the circle a number of its own.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
