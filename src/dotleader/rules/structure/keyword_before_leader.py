"""A line that begins with a keyword and has a leader."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Before start
  warning lights .... OUT
""",
    (("keyword-before-leader", "warning lights .... OUT"),),
)

GOOD = Example(
    """\
normal Before start
  Warning lights .... OUT
""",
)

RULE = Rule(
    name="keyword-before-leader",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A line of a card that begins with a keyword and has a leader. After `note`, `caution`, `warning`, `when`, "
        "`if`, `or if`, `group` and `repeat until` dots are read as text; with any other keyword the line is read as "
        "an item."
    ),
    why="What was meant as an item may be printed as a warning, or the other way round.",
    source=THE_LANGUAGE,
    mend="If an item is meant, begin it with a capital. If the keyword is meant, take the dots out.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
