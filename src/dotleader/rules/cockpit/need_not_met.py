"""A control is moved before what it needs, or after what it needs has gone."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.cockpit.unmet import unmet
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

_EQUIPMENT = """\
equipment
  Master switch .... OFF, ON
    parked .... OFF
  Fuel shutoff .... OPEN, SHUT
    parked .... SHUT
    needs .... Master switch ON
    does .... A motor moves it.

normal Before start
  when seated
  Master switch .... ON
  Fuel shutoff .... OPEN

"""

BAD = Example(
    _EQUIPMENT
    + """\
normal Shutdown
  when parked
  Master switch .... OFF
  Fuel shutoff .... SHUT
""",
    (("need-not-met", "Fuel shutoff .... SHUT"),),
)

GOOD = Example(
    _EQUIPMENT
    + """\
normal Shutdown
  when parked
  Fuel shutoff .... SHUT
  Master switch .... OFF
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    return unmet(subject, RULE.name, by_go_to=False)


RULE = Rule(
    name="need-not-met",
    severity=Severity.WARNING,
    family="cockpit",
    what=(
        "An item that moves a control while something that its `needs` names is not so, on the way through the normal "
        "cards or on a card called for in one of its phases: what is driven electrically moves before what feeds it "
        "goes off. Of a card off the main line the moment is named at which it was called for. What was left out or "
        "done too early is told once, at the first line that needs it."
    ),
    why=(
        "After a landing short of the runway in 2008 a fuel valve stayed open though the evacuation list had been "
        "completed: it was listed after what fed it had gone."
    ),
    source=(
        "NASA CR-177549, appendix A, guideline 9: external events that have to come first; the accident as told of in "
        "an article on the report, the order of its list from memory"
    ),
    mend=(
        "Move the line to where the need holds, or add a line that sees to it. If the control does not need it for "
        "this position, write `needs for ON` in the place of `needs`."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
