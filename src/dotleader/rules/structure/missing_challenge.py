"""A leader with nothing before it."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON
  .... BOTH
""",
    (("missing-challenge", ".... BOTH"),),
)

GOOD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON
  Magnetos .... BOTH
""",
)

RULE = Rule(
    name="missing-challenge",
    severity=Severity.ERROR,
    family="structure",
    what="A line that begins with its leader, so that nothing says what is to be looked at, moved or declared.",
    why="A response alone does not say which control or gauge it is about.",
    source=THE_LANGUAGE,
    mend="Name the control, the gauge or the value before the leader.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
