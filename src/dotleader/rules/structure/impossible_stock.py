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

HOLES = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock A5
  holes .... 4, 80 mm apart
""",
    (("impossible-stock", "4, 80 mm apart"),),
)

RELIEF = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock 6 x 9 in pouch
  relief .... 5 mm
""",
    (("impossible-stock", "5 mm"),),
)

FOLDED = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock folded card
  holes .... 2, 80 mm apart
""",
    (("impossible-stock", "2, 80 mm apart"),),
)

TABS = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock A5
  tabs .... cut, 2 mm deep
""",
    (("impossible-stock", "cut, 2 mm deep"),),
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
        "A leaf that does not fit its paper with bleed and crop marks, or is larger than its pouch; a seal below 3 mm; "
        "a hole that lies neither inside the leaf and clear of its corners nor in a flap of film that is wide enough; "
        "a relief around holes that leaves no paper; corners that reach into what is printed; rings that do not close "
        "around the edge or, which a print finds, do not hold the pile; a folded card with holes or film; tabs that "
        "are too shallow, too deep or in the way of holes and corners; or the like. The finding says by how many "
        "millimetres."
    ),
    why="What is printed on such a stock cannot be cut, punched or read.",
    source=THE_LANGUAGE,
    mend="Measure the leaf, the pouch and the punch again, and write what was measured.",
    bad=(BAD, HOLES, RELIEF, FOLDED, TABS),
    good=(GOOD,),
    found_by="resolving",
)
