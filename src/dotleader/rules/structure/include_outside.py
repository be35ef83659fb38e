"""An include that leads out of the handbook's folder."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two

include ../shared/emergency.cards
""",
    (("include-outside", "../shared/emergency.cards"),),
)

GOOD = Example(
    """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two
""",
)

RULE = Rule(
    name="include-outside",
    severity=Severity.ERROR,
    family="structure",
    what="An `include` line whose path leads out of the handbook's folder, or names a place on one computer only.",
    why="A handbook that takes files from elsewhere cannot be moved, kept or given to somebody else as a whole.",
    source=THE_LANGUAGE,
    mend="Copy the file into the handbook's folder and include it there.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
