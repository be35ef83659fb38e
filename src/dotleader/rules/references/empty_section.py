"""A section of a book with nothing in it."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

_CARD = """\
emergency Forced landing
  when no power is left
  Landing site .... CHOOSE
  end

book Cockpit set
  section .... Emergency
"""

BAD = Example(f"{_CARD}  section .... Abnormal\n", (("empty-section", "Abnormal"),))

GOOD = Example(_CARD)

RULE = Rule(
    name="empty-section",
    severity=Severity.ERROR,
    family="references",
    what="A `section` row of a `book` that names a section in which nothing of this handbook stands.",
    why="The book would lack what it is said to have, and nobody would see it in print.",
    source=THE_LANGUAGE,
    mend="Name the section in which the cards stand, or take the row out.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
