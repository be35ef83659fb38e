"""The right part of a row of numbers that is no number and no arithmetic."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  takeoff flaps ..... two notches  unverified

normal Before takeoff
  Flaps ..... {takeoff flaps}
""",
    (("unreadable-value", "two notches  unverified"),),
)

DASHED = Example(
    """\
gauge Oil pressure in psi from unverified
  green ..... 55 - 95

normal Before takeoff
  Oil pressure ..... {Oil pressure green}
""",
    (("unreadable-value", "55 - 95"),),
)

SLASHED = Example(
    """\
equipment
  Fuel pump ..... OFF / ON

normal Before takeoff
  Fuel pump ..... ON
""",
    (("unreadable-value", "OFF / ON"),),
)

SPACED = Example(
    """\
values
  turn back height ..... 1 250 ft  unverified

normal Before takeoff
  Height ..... {turn back height}
""",
    (("unreadable-value", "250 ft  unverified"),),
)

GOOD = Example(
    """\
values
  takeoff flaps ..... 10 deg  unverified

normal Before takeoff
  Flaps ..... {takeoff flaps}
""",
)

RULE = Rule(
    name="unreadable-value",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A row of `speeds`, `values` or a gauge whose right part cannot be read as a number, a range, a tolerance or "
        "arithmetic. A dash between two numbers is a range to whoever wrote it, and less than nothing to arithmetic. "
        "Also positions and properties of a control, and rows of a `stock` or a `punch`, that are not written as they "
        "have to be."
    ),
    why="A value that cannot be read cannot be printed wherever a card refers to it.",
    source=THE_LANGUAGE,
    mend=(
        "Write a number and its unit, such as `82 KIAS`, `55 to 95 psi`, `62 +/- 2 mm`, `at least 5 US qt`, or "
        "arithmetic over references. Words belong into a `text` block or an item."
    ),
    bad=(BAD, DASHED, SLASHED, SPACED),
    good=(GOOD,),
    found_by="parsing",
    fix="unsafe",
)
