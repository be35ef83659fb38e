"""A card leads to another in a state in which that cannot be done."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.cockpit.unmet import unmet
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

_BEFORE = """\
equipment
  Master switch .... OFF, ON
    parked .... OFF
  Flaps .... UP, LANDING
    parked .... UP
    needs .... Master switch ON

normal Before start
  when seated
  Master switch .... ON

normal Shutdown
  when parked
  Master switch .... OFF

emergency Forced landing
  when there is no engine
  Flaps .... LANDING
  end

"""

BAD = Example(
    _BEFORE
    + """\
emergency Electrical fire in flight
  when there is a smell of burnt wiring
  Master switch .... OFF
  go to Forced landing
""",
    (("go-to-blocked", "Flaps .... LANDING"),),
)

BAD_FLAPS_DOWN_ALREADY = Example(
    _BEFORE.replace(
        "normal Shutdown", "normal Before landing\n  when joining\n  Flaps .... LANDING\n\nnormal Shutdown"
    ).replace("  Master switch .... OFF\n\nemergency", "  Flaps .... UP\n  Master switch .... OFF\n\nemergency")
    + """\
emergency Electrical fire in flight
  when there is a smell of burnt wiring
  Master switch .... OFF
  go to Forced landing
""",
    (("go-to-blocked", "Flaps .... LANDING"),),
)

GOOD = Example(
    _BEFORE
    + """\
emergency Electrical fire in flight
  when there is a smell of burnt wiring
  Flaps .... LANDING
  Master switch .... OFF
  end
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    return unmet(subject, RULE.name, by_go_to=True)


RULE = Rule(
    name="go-to-blocked",
    severity=Severity.WARNING,
    family="cockpit",
    what=(
        "A line on a card that moves a control whose `needs` do not hold when the card is led to by the `go to` of "
        "another one, which has left a control in the wrong position for it."
    ),
    why="In the middle of an emergency the next card asks for something that no longer works.",
    source=NO_SOURCE,
    mend=(
        "Do what is needed on the first card before the power goes; or let the second card ask `if` over the control's "
        "position; or lead to a card that does without it."
    ),
    bad=(BAD, BAD_FLAPS_DOWN_ALREADY),
    good=(GOOD,),
    check=check,
)
