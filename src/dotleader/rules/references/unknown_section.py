"""A section that there is not."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

_CARD = """\
emergency Forced landing
  when no power is left
  Landing site .... CHOOSE
  end

book Cockpit set
"""

BAD = Example(f"{_CARD}  section .... Emergencies\n", (("unknown-section", "Emergencies"),))

GOOD = Example(f"{_CARD}  section .... Emergency\n")

RULE = Rule(
    name="unknown-section",
    severity=Severity.ERROR,
    family="references",
    what="A `section` row of a `book` that names no section of a handbook.",
    why="What was meant would be missing from the book.",
    source="GAMA Specification 1 (revision 2, 1996), for the sections and their names",
    mend="Write the section's name (`Emergency`, `Abnormal`, `Normal` ...) or its number, each in a row of its own.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
