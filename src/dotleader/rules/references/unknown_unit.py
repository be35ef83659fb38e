"""A unit that the language does not have."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  tyre pressure .... 36 pis  unverified

normal Preflight
  Tyres .... {tyre pressure}
""",
    (("unknown-unit", "pis"),),
)

GOOD = Example(
    """\
values
  tyre pressure .... 36 psi  unverified

normal Preflight
  Tyres .... {tyre pressure}
""",
)

RULE = Rule(
    name="unknown-unit",
    severity=Severity.ERROR,
    family="references",
    what="A number whose unit is none of those listed in docs/language.md.",
    why="A unit that is not understood can neither be compared nor converted, and may be a misprint for another.",
    source=THE_LANGUAGE,
    mend="Write the unit as the instrument shows it: `KIAS`, `psi`, `US gal`, `degC`.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
    fix="unsafe",
)
