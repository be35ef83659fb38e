"""A number that does not say where it comes from."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  takeoff flaps .... 10 deg

normal Before takeoff
  Flaps .... {takeoff flaps}
""",
    (("value-without-source", "takeoff flaps"),),
)

GOOD = Example(
    """\
values
  takeoff flaps .... 10 deg  unverified

normal Before takeoff
  Flaps .... {takeoff flaps}
""",
)

RULE = Rule(
    name="value-without-source",
    severity=Severity.WARNING,
    family="references",
    what=(
        "A row of `speeds` or `values`, or a gauge, that names no source and is not marked `unverified`. A value "
        "worked out from others has the sources of those."
    ),
    why="Whoever finds two different numbers has to know which of them was measured, and which was copied from where.",
    source="FAA SAFO 17006 (2017), that home-made checklists are to be compared line by line with the maker's",
    mend=(
        "Write `from` and a declared source at the end of the row or in the head of the block, or `unverified` while "
        "nobody has confirmed the number for this aircraft."
    ),
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
