"""A unit that does not say which of several it is."""

from __future__ import annotations

from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  usable fuel .... 38 gal  unverified

normal Preflight
  Fuel .... {usable fuel}
""",
    (("ambiguous-unit", "gal"),),
)

GOOD = Example(
    """\
values
  usable fuel .... 38 US gal  unverified

normal Preflight
  Fuel .... {usable fuel}
""",
)

RULE = Rule(
    name="ambiguous-unit",
    severity=Severity.ERROR,
    family="references",
    what="A unit such as `gal`, which is one thing in the United States and another in Britain.",
    why=(
        "An imperial gallon is a fifth larger than a US gallon: with the wrong one the fuel on board is wrong by that "
        "much."
    ),
    source="NIST SP 811 (2008), appendix B: gallon (U.S.) 3.785 412 L, gallon (Imperial) 4.546 09 L (from memory)",
    mend="Write which unit is meant: `US gal` or `imp gal`.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
