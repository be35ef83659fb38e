"""A way of using a card that there is not."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  method read then do
  Mixture .... LEANED
""",
    (("unknown-method", "read then do"),),
)

GOOD = Example(
    """\
normal Cruise
  method read and do
  Mixture .... LEANED
""",
)

RULE = Rule(
    name="unknown-method",
    severity=Severity.ERROR,
    family="references",
    what="A `method` line that says neither `verify` nor `read and do`.",
    why="The card would be printed with the method of its kind, which may not be the one that was meant.",
    source=THE_LANGUAGE,
    mend=(
        "Write `method verify` where everything is done first and then checked by the card, `method read and do` where "
        "each line is read and then done."
    ),
    bad=(BAD,),
    good=(GOOD,),
    found_by="resolving",
)
