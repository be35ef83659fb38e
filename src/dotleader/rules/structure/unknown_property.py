"""A row that its block does not know."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
    parkd .... OFF

normal Before takeoff
  Fuel pump .... ON
""",
    (("unknown-property", "parkd"),),
)

GOOD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
    parked .... OFF

normal Before takeoff
  Fuel pump .... ON
""",
)

RULE = Rule(
    name="unknown-property",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A row whose left part is nothing that its block can say. What controls, gauges, the handbook, the electrical "
        "system, stocks, punches and books can say is listed in docs/language.md."
    ),
    why="A property that is not understood has no effect, though it looks as if it had one.",
    source=THE_LANGUAGE,
    mend="Use the name that the block knows; the finding offers the nearest.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
    fix="safe",
)
