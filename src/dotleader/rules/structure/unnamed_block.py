"""A card, text, gauge, punch, book or include without its name."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal
  Fuel pump .... ON
""",
    (("unnamed-block", "normal"),),
)

GOOD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON
""",
)

RULE = Rule(
    name="unnamed-block",
    severity=Severity.ERROR,
    family="structure",
    what="A line that opens a card, a text, a gauge, a punch, a book or an include and does not name it.",
    why="What has no name cannot be found, and nothing can lead to it or say which one is meant.",
    source=THE_LANGUAGE,
    mend="Write the name on the same line, after the keyword.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
