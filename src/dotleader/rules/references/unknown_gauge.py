"""A lever that is read on a gauge that is not declared."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
gauge Engine speed in rpm from unverified
  green .... 600 to 2700

equipment
  Throttle .... CLOSED to FULL
    read on .... Engine sped

normal Run-up
  Throttle .... 1800 rpm
  Engine speed .... {Engine speed green}
""",
    (("unknown-gauge", "Engine sped"),),
)

GOOD = Example(
    """\
gauge Engine speed in rpm from unverified
  green .... 600 to 2700

equipment
  Throttle .... CLOSED to FULL
    read on .... Engine speed

normal Run-up
  Throttle .... 1800 rpm
  Engine speed .... {Engine speed green}
""",
)

RULE = Rule(
    name="unknown-gauge",
    severity=Severity.ERROR,
    family="references",
    what="A `read on` row that names no declared gauge.",
    why="Values given for the lever cannot be held against the unit and the ranges of the gauge.",
    source=THE_LANGUAGE,
    mend=(
        "Write the name of the gauge as it is declared, or declare it: `gauge Engine speed in rpm from engine manual`."
    ),
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
    fix="safe",
)
