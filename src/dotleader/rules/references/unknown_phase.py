"""A phase of flight that there is not."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Mountain flying
  phase cruising
  Oxygen .... ON
""",
    (("unknown-phase", "cruising"),),
)

BAD_SLIP = Example(
    """\
normal Mountain flying
  phase criuse
  Oxygen .... ON
""",
    (("unknown-phase", "criuse"),),
)

GOOD = Example(
    """\
normal Mountain flying
  phase cruise
  Oxygen .... ON
""",
)

RULE = Rule(
    name="unknown-phase",
    severity=Severity.ERROR,
    family="references",
    what="A `phase` or `during` line that names no phase of a flight.",
    why="A card in no phase stands nowhere in the order of a flight.",
    source=THE_LANGUAGE,
    mend=(
        "Use one of the phases in docs/language.md: `preflight`, `before start`, `engine start`, `taxi`, `run-up`, "
        "`before takeoff`, `takeoff`, `climb`, `cruise`, `descent`, `approach`, `landing`, `after landing`, "
        "`shutdown`, `parking`."
    ),
    bad=(BAD, BAD_SLIP),
    good=(GOOD,),
    found_by="resolving",
    fix="safe",
)
