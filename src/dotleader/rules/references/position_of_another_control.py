"""A response that is a position of another control."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
  Fuel selector .... OFF, LEFT, RIGHT

normal Before takeoff
  Fuel pump .... LEFT
  Fuel selector .... RIGHT
""",
    (("position-of-another-control", "LEFT"),),
)

GOOD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
  Fuel selector .... OFF, LEFT, RIGHT

normal Before takeoff
  Fuel pump .... ON
  Fuel selector .... RIGHT
""",
)

RULE = Rule(
    name="position-of-another-control",
    severity=Severity.ERROR,
    family="references",
    what="A response to a control that does not have that position, while another declared control has it.",
    why="Two lines have probably been mixed up, and the pilot would move the wrong thing or leave the right one.",
    source=(
        "FAA AC 120-71B (2017) 5.4, that challenges copy the panel label and responses come from a fixed list (read in "
        "a summary)"
    ),
    mend="Give the response to the control that it belongs to.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
