"""A seal of almost 1/8 in, or less around holes."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock
  leaf .... A5
  pouch ... 154 x 216 mm
  paper ... A4
""",
    (("narrow-seal", "154 x 216 mm"),),
)

RELIEF = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock 6 x 9 in pouch
  relief .... 2 mm
""",
    (("narrow-seal", "2 mm"),),
)

GOOD = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock
  leaf .... 147 x 209 mm
  pouch ... 154 x 216 mm
  paper ... A4
""",
)

RULE = Rule(
    name="narrow-seal",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A pouch that leaves at least 3 mm of film around the leaf, and less than 1/8 in (3.175 mm). Pouches that are "
        "sold by the millimetre leave 3 mm. Less than that is `impossible-stock`. Or a `relief` of less than 3 mm: "
        "film seals no more than that around the holes then."
    ),
    why="Where the film does not close around the leaf, damp gets in and the film comes apart.",
    source=(
        "Film makers' and binderies' advice of 1/8 in on every side (several read, no standard); 3 mm is common "
        "practice, no source"
    ),
    mend="Cut the leaf a little smaller, or take a larger pouch, and put the leaf into the very middle of it.",
    bad=(BAD, RELIEF),
    good=(GOOD,),
    found_by="resolving",
)
