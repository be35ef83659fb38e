"""An include whose file cannot be read."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two

include emergncy.cards
""",
    (("missing-file", "emergncy.cards"),),
)

GOOD = Example(
    """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two

normal Cruise
  Mixture .... LEANED
""",
)

RULE = Rule(
    name="missing-file",
    severity=Severity.ERROR,
    family="structure",
    what="An `include` line whose file does not exist or cannot be read.",
    why="The cards of that file would be missing from the book.",
    source=THE_LANGUAGE,
    mend="Write the path from the folder of the file that includes, with forward slashes: `include emergency.cards`.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
