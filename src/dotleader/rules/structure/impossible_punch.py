"""A punch that cannot be."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  Mixture .... LEANED

punch Desk punch
  holes .... 2, 8 mm apart, 10 mm wide, 12 mm from edge
  stop ..... scale
""",
    (("impossible-punch", "2, 8 mm apart, 10 mm wide, 12 mm from edge"),),
)

GOOD = Example(
    """\
normal Cruise
  Mixture .... LEANED

punch Desk punch
  holes .... 2, 80 mm apart, 6 mm wide, 12 mm from edge
  stop ..... scale
""",
)

RULE = Rule(
    name="impossible-punch",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A punch that says nothing of its holes, whose holes run into one another or out of the leaf, or whose stop "
        "cannot be moved clear of them."
    ),
    why="A punch plan made for it would spoil the leaves, which by then are printed, cut and laminated.",
    source=THE_LANGUAGE,
    mend=("Punch a piece of paper, measure its holes from centre to centre and from the edge, and write that down."),
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
