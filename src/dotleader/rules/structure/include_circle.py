"""Files that include one another in a circle."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two

include handbook.cards
""",
    (("include-circle", "handbook.cards"),),
)

GOOD = Example(
    """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two
""",
)

RULE = Rule(
    name="include-circle",
    severity=Severity.ERROR,
    family="structure",
    what="An `include` line that leads back to a file that is already being read.",
    why="A file that includes itself has no end; its cards would stand in the book without end.",
    source=THE_LANGUAGE,
    mend="Take out the `include` line that leads back.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
