"""A reference to a range that a gauge has more than once."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
gauge Oil pressure in psi from unverified
  yellow .... 25 to 55
  green .... 55 to 95
  yellow .... 95 to 115

normal Run-up
  caution Stop at {Oil pressure yellow}.
  Oil pressure .... {Oil pressure green}
""",
    (("ambiguous-reference", "{Oil pressure yellow}"),),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  yellow .... 25 to 55
  green .... 55 to 95
  yellow .... 95 to 115

normal Run-up
  caution Stop at {Oil pressure yellow 2}.
  Oil pressure .... {Oil pressure green}
""",
)

RULE = Rule(
    name="ambiguous-reference",
    severity=Severity.ERROR,
    family="references",
    what=(
        "A reference such as `{Oil pressure yellow}` where the gauge has a yellow range below the green one and "
        "another above it."
    ),
    why="The card could show the wrong one of the two ranges.",
    source=THE_LANGUAGE,
    mend="Say which, counted from the top of the block: `{Oil pressure yellow 2}`.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
