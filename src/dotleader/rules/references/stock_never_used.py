"""A further stock that nothing is printed on."""

from __future__ import annotations

from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.source.finding import Severity

_STOCKS = """\
normal Cruise
  when level
  Mixture .... LEANED

stock A5

stock Thigh card
  leaf .... 110 x 160 mm
"""

BAD = Example(_STOCKS, (("stock-never-used", "Thigh card"),))

GOOD = Example(f"{_STOCKS}\nbook Full book\n\nbook Thigh cards\n  stock .... Thigh card\n")

RULE = Rule(
    name="stock-never-used",
    severity=Severity.WARNING,
    family="references",
    what="A `stock` after the first one that no `book` is printed on. The first is that of the handbook.",
    why="Whoever described it expects leaves of that size, and everything is printed on another.",
    source=NO_SOURCE,
    mend="Name it in the `stock` row of a `book`, make it the first, or take it out.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
