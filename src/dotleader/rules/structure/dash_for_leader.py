"""A dash or a tab where a leader belongs."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Before takeoff
  Brakes – HELD
  Fuel pump - ON
""",
    (("dash-for-leader", " – "), ("dash-for-leader", " - ")),
)

GOOD = Example(
    """\
normal Before takeoff
  Brakes .... HELD
  Fuel pump .... ON
""",
)

RULE = Rule(
    name="dash-for-leader",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A line whose two parts are joined by a dash or a tab. Lists that were pasted from a word processor often are."
    ),
    why="A dash also stands inside names and numbers, so only a leader says for certain where the challenge ends.",
    source=THE_LANGUAGE,
    mend="Join the parts by a leader, two or more dots with a space on both sides.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
    fix="unsafe",
)
