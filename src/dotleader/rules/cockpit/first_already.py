"""The first of several positions that a control is to go through is the one in which it stands."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.moving import Already
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_EQUIPMENT = """\
equipment
  Alternator .... OFF, ON
    parked .... OFF

"""

BAD = Example(
    _EQUIPMENT
    + """\
normal Engine start
  when the engine runs
  Alternator .... OFF then ON
""",
    (("first-already", "Alternator .... OFF then ON"),),
)

GOOD = Example(
    _EQUIPMENT
    + """\
normal Engine start
  when the engine runs
  Alternator .... ON
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    for occasion in subject.run().occasions.first:
        what = occasion.met.what
        if isinstance(what, Already) and occasion.met.always:
            control = subject.handbook.controls[what.control]
            yield Finding(
                RULE.name,
                occasion.line.item.spot,
                f"`{control.name}` stands at `{what.position}` already, the first position that this line puts it in.",
                f"Leave out `{what.position}`, or see why it should stand elsewhere before this line.",
                (Related(control.spot, "It is declared here."),),
            )


RULE = Rule(
    name="first-already",
    severity=Severity.NOTE,
    family="cockpit",
    what=(
        "An item of several positions in turn (`OFF then ON`) whose first is the position in which the control stands "
        "then, in whatever way the cards are gone through."
    ),
    why="A reader who finds it so already wonders whether a line was missed.",
    source=NO_SOURCE,
    mend="Leave the first position out; or add what is missing before it.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
