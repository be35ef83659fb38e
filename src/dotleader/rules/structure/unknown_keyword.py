"""A line that begins with a word that is no keyword where it stands."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD_1 = Example(
    """\
Checklist Before takeoff
  Fuel pump .... ON
""",
    (("unknown-keyword", "Checklist"),),
)

BAD_2 = Example(
    """\
normal Before takeoff
  Caution: Do not take off with a rough engine.
  Fuel selector .... LEFT [importnat]
""",
    (("unknown-keyword", "Caution:"), ("unknown-keyword", "[importnat]")),
)

GOOD = Example(
    """\
normal Before takeoff
  caution Do not take off with a rough engine.
  Fuel selector .... LEFT [critical]
""",
)

RULE = Rule(
    name="unknown-keyword",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "An unindented line that opens no block, a line of a card that begins with something like a keyword but not "
        "quite, or a mark in square brackets that does not exist."
    ),
    why="A block or line whose keyword is not known is not printed as what it was meant to be.",
    source=THE_LANGUAGE,
    mend="Write the keyword in lower case and without a colon. Indent a line that belongs to the block above it.",
    bad=(
        BAD_1,
        BAD_2,
    ),
    good=(GOOD,),
    found_by="parsing",
    fix="safe",
)
