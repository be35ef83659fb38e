"""A switch is called ON on two cards of different phases, and is never off in between."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.moving import Already, Change
from dotleader.handbook.cards import Item
from dotleader.handbook.model import Control
from dotleader.handbook.positions import matched
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_EQUIPMENT = """\
equipment
  Fuel pump .... OFF, ON
    parked .... OFF

normal Before takeoff
  when holding short of the runway
  Fuel pump .... ON

"""

BAD = Example(
    _EQUIPMENT
    + """\
normal Before landing
  when joining the circuit
  Fuel pump .... ON
""",
    (("on-already", "Fuel pump .... ON"),),
)

GOOD_1 = Example(
    _EQUIPMENT
    + """\
normal Climb
  when clear of the runway
  Fuel pump .... OFF

normal Before landing
  when joining the circuit
  Fuel pump .... ON
"""
)

GOOD_2 = Example(
    _EQUIPMENT
    + """\
normal Before landing
  when joining the circuit
  Fuel pump .... STAYS ON
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    controls = subject.handbook.controls
    called: dict[str, tuple[str, Item]] = {}  # control: the phase and the item that called it ON
    for ran in subject.run().main:
        for line in ran.lines:
            for met in line.met:
                control = controls[met.what.control]
                if not _switch(control):
                    continue
                match met.what:
                    case Change(after=after):
                        if matched(after) == "on" and line.item.moves:
                            called[control.key] = ran.phase, line.item
                        elif met.always or matched(after) == "off":
                            called.pop(control.key, None)
                    case Already(position=position, first=False):
                        before = called.get(control.key)
                        again = before is not None and before[0] != ran.phase and matched(position) == "on"
                        if before is not None and again and met.always and not line.item.critical:
                            yield _finding(control, line.item, *before)
                    case _:
                        pass


def _switch(control: Control) -> bool:
    return sorted(map(matched, control.positions)) == ["off", "on"]


def _finding(control: Control, item: Item, phase: str, before: Item) -> Finding:
    return Finding(
        RULE.name,
        item.spot,
        f"`{control.name}` is ON here already: it was called ON for {phase} and is not put OFF in between.",
        f"Write `STAYS ON` if that is meant, or put `{control.name}` OFF on a card between the two.",
        (Related(before.spot, f"Here `{short(before.challenge)}` is called ON."),),
    )


RULE = Rule(
    name="on-already",
    severity=Severity.NOTE,
    family="cockpit",
    what=(
        "An item that puts an OFF/ON control ON though a card of an earlier phase has done so and nothing has put it "
        "OFF since, in whatever way the cards are gone through. A `[critical]` item may be repeated."
    ),
    why=(
        "Either a line that puts it off is missing, or the item is answered without looking: so were 43 of the "
        "194 checklist deviations that observers saw in 60 flights."
    ),
    source="NASA/TM-2010-216396; the figures as read in a summary",
    mend="`STAYS ON` says that the control is only looked at. Otherwise add the line that puts it off.",
    bad=(BAD,),
    good=(GOOD_1, GOOD_2),
    check=check,
)
