"""A leader that touches a digit."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Before takeoff
  Flaps.....5 DEG
""",
    (("dots-against-digit", "....."),),
)

GOOD = Example(
    """\
normal Before takeoff
  Flaps ..... 5 DEG
""",
)

RULE = Rule(
    name="dots-against-digit",
    severity=Severity.ERROR,
    family="structure",
    what="A leader whose last dot stands against a digit: `Flaps.....5` may mean 5 or .5.",
    why="A decimal point that is lost in the dots, or that the dots add, changes the number by ten times.",
    source=THE_LANGUAGE,
    mend="Put a space after the leader, and a zero before a decimal point: `.... 5` or `.... 0.5`.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
