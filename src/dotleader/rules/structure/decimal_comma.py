"""A number with a comma where a decimal point belongs."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  oil ..... at least 4,5 US qt  unverified

normal Preflight
  Oil ..... {oil}
""",
    (("decimal-comma", "4,5"),),
)

GOOD = Example(
    """\
values
  oil ..... at least 4.5 US qt  unverified

normal Preflight
  Oil ..... {oil}
""",
)

RULE = Rule(
    name="decimal-comma",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A number with a comma that is not followed by exactly three digits. A comma before exactly three digits "
        "separates thousands."
    ),
    why="A comma means a decimal to some readers and thousands to others.",
    source=THE_LANGUAGE,
    mend="Write a decimal point: `82.5`. Thousands are `1,250` or `1250`.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
