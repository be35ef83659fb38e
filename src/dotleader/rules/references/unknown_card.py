"""A way to a card that there is not."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  Fuel selector .... OTHER TANK
  go to Forced landng

emergency Forced landing
  when no power is left
  Landing site .... CHOOSE
  end
""",
    (("unknown-card", "Forced landng"),),
)

GOOD = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  Fuel selector .... OTHER TANK
  go to Forced landing

emergency Forced landing
  when no power is left
  Landing site .... CHOOSE
  end
""",
)

RULE = Rule(
    name="unknown-card",
    severity=Severity.ERROR,
    family="references",
    what="A `go to` or `after` line, or a `card` row of a `book`, that names no card of the handbook.",
    why="In an emergency somebody would look for a card that does not exist.",
    source=THE_LANGUAGE,
    mend="Write the title as it stands after `emergency`, `abnormal` or `normal`.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
    fix="safe",
)
