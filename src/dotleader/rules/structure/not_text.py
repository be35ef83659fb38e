"""A file that is not text."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
PK\x03\x04\x14\x00\x08\x08\x08
""",
    (("not-text", ""),),
)

GOOD = Example(
    """\
normal Cruise
  Mixture .... LEANED
""",
)

RULE = Rule(
    name="not-text",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A file full of bytes that no text holds, such as a picture or a document of a word processor. Nothing of it "
        "is read."
    ),
    why="The cards of that file would be missing from the book.",
    source=THE_LANGUAGE,
    mend=(
        "Give a file that was written with a text editor and saved as UTF-8; from a word processor, save as plain text."
    ),
    bad=(BAD,),
    good=(GOOD,),
    found_by="reading",
)
