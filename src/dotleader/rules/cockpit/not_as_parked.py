"""A control is not back at its parked position when the aircraft is left."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.words import ends_with
from dotleader.handbook.phases import ORDER
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_EQUIPMENT = """\
equipment
  Master switch .... OFF, ON
    parked .... OFF
  Strobe lights .... OFF, ON
    parked .... OFF
  Throttle .... CLOSED to FULL

normal Engine start
  when clear
  Master switch .... ON
  Strobe lights .... ON
  Throttle .... ONE QUARTER OPEN

"""

BAD = Example(
    _EQUIPMENT
    + """\
normal Shutdown
  when parked
  Master switch .... OFF
""",
    (("not-as-parked", "Strobe lights .... ON"),),
)

GOOD = Example(
    _EQUIPMENT
    + """\
normal Shutdown
  when parked
  Strobe lights .... OFF
  Master switch .... OFF
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    done = subject.run()
    if not done.main or ORDER[done.main[-1].phase] < ORDER["shutdown"]:
        return  # the cards end before the flight does; that a phase is missing is said elsewhere
    ending = ends_with(done.main[-1])
    for key, place in done.cockpit.places.items():
        control = subject.handbook.controls.get(key)
        if control is None or not control.parked or control.takes_any:
            continue
        left = dict.fromkeys(state[place] for state in ending)
        astray = [position for position in left if position not in ("", control.parked)]
        movers = done.occasions.movers.get(key, ())
        if astray and movers:
            last = done.main[-1].card
            yield Finding(
                RULE.name,
                movers[-1].item.spot,
                f"`{control.name}` stays at `{' or '.join(astray)}` when the aircraft is left; it is parked at "
                f"`{control.parked}`.",
                f"Put `{control.name}` to `{control.parked}` on `{last.title}` or before, or declare where it is left.",
                (Related(control.spot, f"It is declared here, parked at `{control.parked}`."),),
            )


RULE = Rule(
    name="not-as-parked",
    severity=Severity.WARNING,
    family="cockpit",
    what=(
        "A control with a `parked` position that stands elsewhere at the end of the normal cards, be it only where a "
        "condition is so. The line that moved it last is marked. Handbooks whose cards end before shutdown are not "
        "looked at; nor is what has no `parked`, such as a lever that may be left anywhere."
    ),
    why="What is left on empties the battery, and the next start begins with a cockpit that no card expects.",
    source=NO_SOURCE,
    mend="Add the line to the last cards; or change `parked`, if that is not how the aircraft is left.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
