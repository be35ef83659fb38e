"""A stock that cannot be made."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock
  leaf .... 300 x 400 mm
  paper ... A4
""",
    (("impossible-stock", "300 x 400 mm"),),
)

GOOD = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock
  leaf .... A5
  paper ... A4
""",
)

RULE = Rule(
    name="impossible-stock",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A leaf larger than its paper or its pouch, a hole that does not lie inside the leaf, a length that is no "
        "length, or the like."
    ),
    why="What is printed on such a stock cannot be cut, punched or read.",
    source=THE_LANGUAGE,
    mend="Measure the leaf, the pouch and the punch again, and write what was measured.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
