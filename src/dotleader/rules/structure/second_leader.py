"""A line with two leaders."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON .... Nav lights ON
""",
    (("second-leader", "...."),),
)

GOOD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON
  Nav lights .... ON
""",
)

RULE = Rule(
    name="second-leader",
    severity=Severity.ERROR,
    family="structure",
    what="A line that has a leader in its right part. A line is split at its first leader, and there is one to a line.",
    why="With two leaders nobody can say which of the parts answers which.",
    source=THE_LANGUAGE,
    mend="Write two items on two lines. Where dots belong to the text, take them out or write them apart from it.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
