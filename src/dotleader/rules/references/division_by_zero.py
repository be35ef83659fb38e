"""A division by zero."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  usable fuel .... 38 US gal  unverified
  idle flow .... 0 US gal/h  unverified
  endurance .... {usable fuel} / {idle flow}

normal Cruise
  Time aloft .... AT MOST {endurance}
""",
    (("division-by-zero", "{usable fuel} / {idle flow}"),),
)

GOOD = Example(
    """\
values
  usable fuel .... 38 US gal  unverified
  cruise flow .... 8 US gal/h  unverified
  endurance .... {usable fuel} / {cruise flow}

normal Cruise
  Time aloft .... AT MOST {endurance}
""",
)

RULE = Rule(
    name="division-by-zero",
    severity=Severity.ERROR,
    family="references",
    what="Arithmetic that divides by a value that is zero.",
    why="Nothing can be divided by zero, so there is no number to print.",
    source=THE_LANGUAGE,
    mend="Check the value below the division.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
