"""A reference to a value that is not declared."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
speeds
  VG .... 82 KIAS  unverified

normal Descent
  Airspeed .... {VGL}
""",
    (("unknown-value", "{VGL}"),),
)

SLIP = Example(
    """\
values
  usable fuel .... 38 US gal  unverified

normal Preflight
  Fuel .... {usabel fuel}
""",
    (("unknown-value", "{usabel fuel}"),),
)

GOOD = Example(
    """\
speeds
  VG .... 82 KIAS  unverified

normal Descent
  Airspeed .... {VG}
""",
)

RULE = Rule(
    name="unknown-value",
    severity=Severity.ERROR,
    family="references",
    what="A name in braces that is no row of `speeds` or `values` and no range of a gauge.",
    why="Where the number belongs, the card would show a name in braces.",
    source=THE_LANGUAGE,
    mend=(
        "Write the name as it is declared, declare it, or take the braces away. A range of a gauge is `{Oil pressure "
        "green}`, its ends `{Oil pressure green low}` and `{Oil pressure green high}`."
    ),
    bad=(BAD, SLIP),
    good=(GOOD,),
    found_by="resolving",
    fix="unsafe",
)
