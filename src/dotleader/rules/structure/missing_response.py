"""A challenge without a response, or another line that stops halfway."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD_1 = Example(
    """\
normal Before takeoff
  Brakes
  Flaps ....
""",
    (("missing-response", "Brakes"), ("missing-response", "Flaps ....")),
)

BAD_2 = Example(
    """\
normal Before takeoff
  when
  Brakes .... HELD
""",
    (("missing-response", "when"),),
)

BAD_COLON = Example(
    """\
normal Before takeoff
  Fuel pump: ON
""",
    (("missing-response", "Fuel pump: ON"),),
)

GOOD = Example(
    """\
normal Before takeoff
  when holding short of the runway
  Brakes .... HELD
  Flaps .... 10 DEG
""",
)

RULE = Rule(
    name="missing-response",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A challenge that has no response, a declared name with nothing after its leader, or a keyword whose text is "
        "missing."
    ),
    why="A challenge alone does not say what is wanted, and everybody who reads it answers something else.",
    source=THE_LANGUAGE,
    mend="Say after a leader what is wanted: a position, a value, a state that can be seen.",
    bad=(BAD_1, BAD_2, BAD_COLON),
    good=(GOOD,),
    found_by="parsing",
    fix="unsafe",
)
