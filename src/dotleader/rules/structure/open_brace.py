"""A brace without its fellow, or with nothing inside."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  climb speed .... 75 kt  unverified

normal Climb
  Airspeed .... {climb speed
""",
    (("open-brace", "{"),),
)

GOOD = Example(
    """\
values
  climb speed .... 75 kt  unverified

normal Climb
  Airspeed .... {climb speed}
""",
)

RULE = Rule(
    name="open-brace",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "An opening brace that is never closed, a closing one that was never opened, or a pair with nothing between. A "
        "doubled brace is a literal brace."
    ),
    why="The card would show the braces in place of the number that belongs there.",
    source=THE_LANGUAGE,
    mend="Close the brace after the name: `{VG}`. To print a brace, double it.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
