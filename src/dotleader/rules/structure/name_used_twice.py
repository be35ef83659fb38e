"""Two things of one kind that have the same name."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON

normal Before Takeoff
  Trim .... NEUTRAL
""",
    (("name-used-twice", "Before Takeoff"),),
)

GOOD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON
  Trim .... NEUTRAL
""",
)

RULE = Rule(
    name="name-used-twice",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "Two cards, values, gauges, controls, sources, stocks, punches or books with the same name, a row that stands "
        "twice in its block, or a file that is included twice. Names are compared without regard to case."
    ),
    why="A reference to that name could mean either, and the two may differ.",
    source=THE_LANGUAGE,
    mend="Give one of them another name, or take one out.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
