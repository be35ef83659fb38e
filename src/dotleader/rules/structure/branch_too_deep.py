"""A branch inside two others."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  if over land
    if below cloud
      if it is dark
        Landing light .... ON
""",
    (("branch-too-deep", "if"),),
)

GOOD = Example(
    """\
normal Cruise
  if over land
    if below cloud in the dark
      Landing light .... ON
""",
)

RULE = Rule(
    name="branch-too-deep",
    severity=Severity.ERROR,
    family="structure",
    what="An `if`, `or if` or `otherwise` that stands inside two other branches. A card has at most two levels.",
    why=(
        "Three conditions at once cannot be kept in mind while flying, and the marks that show where a branch ends no "
        "longer help."
    ),
    source=(
        "Writing guides for technical procedures avoid conditions inside conditions (NUREG-0899, DOE-STD-1029-92; from "
        "memory); the limit of two levels is our own"
    ),
    mend="Make a card of its own of the inner branch and `go to` it.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
