"""A result that does not come out even and is not rounded."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
values
  full fuel .... 38 US gal  unverified
  reserve .... {full fuel} / 3

normal Cruise
  Fuel .... AT LEAST {reserve}
""",
    (("uneven-number", "{full fuel} / 3"),),
)

GOOD = Example(
    """\
values
  full fuel .... 38 US gal  unverified
  reserve .... {full fuel} / 3 rounded up to 0.5 US gal

normal Cruise
  Fuel .... AT LEAST {reserve}
""",
)

RULE = Rule(
    name="uneven-number",
    severity=Severity.ERROR,
    family="references",
    what="Arithmetic whose result has endless decimals, or a root, without `rounded to` a step.",
    why=(
        "Somebody has to say to how much a number is rounded and to which side; cut off anywhere, it may be on the "
        "wrong side of a limit."
    ),
    source=THE_LANGUAGE,
    mend=(
        "Say `rounded up to`, `rounded down to` or `rounded to` a step, such as `rounded up to 1 KIAS`. A limit that "
        "must not be exceeded goes down, one that must not be gone below goes up."
    ),
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
