"""A number from a source that is not declared."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
sources
  kit manual .... builder's manual, issue 4

values
  takeoff flaps .... 10 deg  from kit manuel

normal Before takeoff
  Flaps .... {takeoff flaps}
""",
    (("unknown-source", "kit manuel"),),
)

GOOD = Example(
    """\
sources
  kit manual .... builder's manual, issue 4

values
  takeoff flaps .... 10 deg  from kit manual

normal Before takeoff
  Flaps .... {takeoff flaps}
""",
)

RULE = Rule(
    name="unknown-source",
    severity=Severity.ERROR,
    family="references",
    what="A `from` whose name is no row of the `sources` block.",
    why="A number whose origin cannot be looked up cannot be checked against it.",
    source=THE_LANGUAGE,
    mend=(
        "Declare the source under `sources`, or write its name as it is declared there. What follows a comma is a "
        "detail: `from kit manual, page 12`."
    ),
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
    fix="safe",
)
