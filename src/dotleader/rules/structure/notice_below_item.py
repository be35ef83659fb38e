"""A note, caution or warning indented below an item."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Engine start
  Starter .... ENGAGE
    caution Not longer than ten seconds.
""",
    (("notice-below-item", "caution Not longer than ten seconds."),),
)

GOOD = Example(
    """\
normal Engine start
  caution Do not engage the starter longer than ten seconds.
  Starter .... ENGAGE
""",
)

RULE = Rule(
    name="notice-below-item",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A line that begins with `note`, `caution` or `warning` and is indented below an item, where only the details "
        "of the item stand."
    ),
    why="A caution that is read after its step has been done comes too late.",
    source=(
        "Writing guides for technical procedures put warnings and cautions immediately before the step they bear on "
        "(NUREG-0899, DOE-STD-1029-92; from memory)"
    ),
    mend="Put the notice before the item, indented like it. For a remark on the item itself leave the keyword out.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
