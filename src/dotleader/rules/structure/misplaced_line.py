"""A line of a card that cannot stand where it stands."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  Mixture .... LEANED
  otherwise
    Mixture .... RICH
""",
    (("misplaced-line", "otherwise"),),
)

GOOD = Example(
    """\
normal Cruise
  if the engine runs smoothly
    Mixture .... LEANED
  otherwise
    Mixture .... RICH
""",
)

RULE = Rule(
    name="misplaced-line",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A line of a card in a place where its keyword has no meaning: `otherwise` without an `if` before it, `when` "
        "inside a branch, a second `when`, and the like."
    ),
    why="A line in the wrong place is printed with the wrong meaning or not at all.",
    source=THE_LANGUAGE,
    mend=(
        "Move it to where it belongs: `or if` and `otherwise` right after the branch they go on from; `when`, `phase`, "
        "`thumb`, `during`, `after` and `method` directly below the title."
    ),
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
