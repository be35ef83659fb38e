"""A response that names no position of its control."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

BAD_1 = Example(
    """\
equipment
  Fuel selector .... OFF, LEFT, RIGHT

normal Before takeoff
  Fuel selector .... BOTH
""",
    (("unknown-position", "BOTH"),),
)

BAD_2 = Example(
    """\
equipment
  Fuel pump .... OFF, ON
    parked .... OF

normal Before takeoff
  Fuel pump .... ON
""",
    (("unknown-position", "OF"),),
)

BAD_SLIP = Example(
    """\
equipment
  Fuel selector .... OFF, LEFT, RIGHT

normal Before takeoff
  Fuel selector .... RIHGT
""",
    (("unknown-position", "RIHGT"),),
)

BAD_TOGETHER = Example(
    """\
equipment
  Nav lights .... OFF, ON
  Strobe lights .... OFF, ON

normal Before takeoff
  Nav lights + Strobe lights .... LIT
""",
    (("unknown-position", "LIT"),),
)

GOOD = Example(
    """\
equipment
  Fuel selector .... OFF, LEFT, RIGHT
    parked .... OFF
    means .... FULLEST TANK: LEFT or RIGHT

normal Before takeoff
  Fuel selector .... FULLEST TANK

normal Taxi
  Fuel selector .... LEFT then RIGHT, one minute each
""",
)

RULE = Rule(
    name="unknown-position",
    severity=Severity.ERROR,
    family="references",
    what=(
        "A response to a declared control that is none of its positions, or a property such as `parked` or `needs` "
        "that names a position which the control does not have."
    ),
    why="A pilot who reads a position that is not on the panel has to guess which one is meant.",
    source=(
        "FAA AC 120-71B (2017) 5.4, that challenges copy the panel label and responses come from a fixed list (read in "
        "a summary)"
    ),
    mend=(
        "Use a position as it is declared. Declare one that is missing, or with `means` a word that stands for "
        "several. A condition follows a position after `if`, a remark after a comma: `LANDING, when the field is made`."
    ),
    bad=(BAD_1, BAD_2, BAD_SLIP, BAD_TOGETHER),
    good=(GOOD,),
    found_by="resolving",
    fix="unsafe",
)
