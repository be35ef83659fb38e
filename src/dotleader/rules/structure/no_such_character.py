"""A character that no font at hand has."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  Mixture .... LEANED 🙂
""",
    (("no-such-character", "🙂"),),
)

GOOD = Example(
    """\
normal Cruise
  Mixture .... LEANED
""",
)

RULE = Rule(
    name="no-such-character",
    severity=Severity.ERROR,
    family="structure",
    what="A character that neither the font of the cards nor its fallback has.",
    why="It would be printed as an empty box, and nobody could read what stood there.",
    source=THE_LANGUAGE,
    mend="Write the word in its place.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="laying out",
)
