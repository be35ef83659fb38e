"""A line indented by a tab."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Before takeoff
\tFuel pump .... ON
""",
    (("tab-indentation", "\t"),),
)

GOOD = Example(
    """\
normal Before takeoff
  Fuel pump .... ON
""",
)

RULE = Rule(
    name="tab-indentation",
    severity=Severity.ERROR,
    family="structure",
    what="A line that is indented by a tab, alone or among spaces.",
    why="A tab is as wide as the editor makes it, so two people see the line below two different lines.",
    source=THE_LANGUAGE,
    mend="Indent by two spaces for each level; `dotleader format` does it.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
    fix="safe",
)
