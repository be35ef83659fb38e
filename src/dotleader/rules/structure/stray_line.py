"""A line that is neither an item nor begins with a keyword."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD_1 = Example(
    """\
normal Before start
  Make sure that nobody stands near the propeller.
  Fuel selector .... LEFT
""",
    (("stray-line", "Make sure that nobody stands near the propeller."),),
)

BAD_2 = Example(
    """\
normal Before start
  Fuel selector .... LEFT
Fuel pump .... ON
""",
    (("stray-line", "Fuel pump .... ON"),),
)

BAD_FACT = Example(
    """\
speeds
  VG = 82 KIAS  unverified
""",
    (("stray-line", "VG = 82 KIAS  unverified"),),
)

GOOD = Example(
    """\
normal Before start
  warning Make sure that nobody stands near the propeller.
  Fuel selector .... LEFT
  Fuel pump .... ON
""",
)

RULE = Rule(
    name="stray-line",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A line that can be read neither as an item nor as a line that begins with a keyword of its block, or one that "
        "stands where nothing of its kind can stand."
    ),
    why="A line that is not understood would be missing from the card, or stand on it as something else.",
    source=THE_LANGUAGE,
    mend=(
        "Give an item its leader. Write an explanation behind `note`, indented below the item it explains, or under "
        "`amplified`. Indent what belongs to a block."
    ),
    bad=(BAD_1, BAD_2, BAD_FACT),
    good=(GOOD,),
    found_by="parsing",
    fix="unsafe",
)
