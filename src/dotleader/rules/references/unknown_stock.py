"""A stock that has no known name."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock A5, tow holes
""",
    (("unknown-stock", "A5, tow holes"),),
)

OWN = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock Thigh card
  leaf .... 110 x 160 mm
""",
)

GOOD = Example(
    """\
normal Cruise
  Mixture .... LEANED

stock A5, two holes
""",
)

RULE = Rule(
    name="unknown-stock",
    severity=Severity.ERROR,
    family="references",
    what=(
        "A `stock NAME` line, or a `stock` row of a `book`, which takes a stock by its name, where none has that name. "
        "A name of your own on a `stock` line is none of these findings: where rows stand below it and the name is "
        "unlike all that are known, or one of them is `leaf`."
    ),
    why="The book would be laid out for a leaf that nobody asked for.",
    source=THE_LANGUAGE,
    mend=(
        "Use a name that is known, such as `A5, two holes` or `half letter, three holes`, or say below the line what "
        "the stock is."
    ),
    bad=(BAD,),
    good=(GOOD, OWN),
    found_by="resolving",
)
