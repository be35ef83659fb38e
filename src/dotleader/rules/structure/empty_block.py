"""A line that opens a block with nothing below it."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  if the engine runs rough
  Mixture .... RICH
""",
    (("empty-block", "if"),),
)

GOOD = Example(
    """\
normal Cruise
  if the engine runs rough
    Mixture .... RICH
""",
)

RULE = Rule(
    name="empty-block",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A `memory`, `group`, `if`, `or if`, `otherwise`, `one of` or `repeat until` line with nothing indented below "
        "it."
    ),
    why="A branch or group with nothing in it stands on the card as a question without an answer.",
    source=THE_LANGUAGE,
    mend="Indent what belongs to it by two spaces more, or take the line out.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
