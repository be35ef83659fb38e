"""Arithmetic with units that do not go together."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD_1 = Example(
    """\
values
  empty weight .... 1,080 lb  unverified
  stall speed .... 46 kt  unverified
  loaded weight .... {empty weight} + {stall speed}

normal Preflight
  Weight .... AT MOST {loaded weight}
""",
    (("unlike-units", "{empty weight} + {stall speed}"),),
)

BAD_2 = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

gauge Oil temperature in degC from unverified
  green .... 50 to 118

normal Run-up
  Oil temperature .... {Oil temperature green}
  Oil pressure .... {Oil temperature green}
""",
    (("unlike-units", "{Oil temperature green}"),),
)

GOOD = Example(
    """\
values
  empty weight .... 1,080 lb  unverified
  load .... 410 lb  unverified
  loaded weight .... {empty weight} + {load}

normal Preflight
  Weight .... AT MOST {loaded weight}
""",
)

RULE = Rule(
    name="unlike-units",
    severity=Severity.ERROR,
    family="references",
    what=(
        "A sum, range, rounding or conversion of things that cannot be measured in the same unit, such as knots and "
        "pounds; a row of `speeds` that is no speed; or a response that is a reading of another instrument than the "
        "one that its line is about."
    ),
    why="The result would be a number that means nothing, printed as if it meant something.",
    source=THE_LANGUAGE,
    mend=(
        "Check what is added, multiplied or compared; give a bare number its unit. Give a gauge a reading of its own."
    ),
    bad=(
        BAD_1,
        BAD_2,
    ),
    good=(GOOD,),
    found_by="resolving",
)
