"""A long emergency list with no early way out of it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import assert_never

from dotleader.handbook.cards import (
    Arm,
    Branch,
    End,
    GoTo,
    Group,
    Item,
    Kind,
    Memory,
    Notice,
    OneOf,
    Repeat,
    Step,
    Unread,
)
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

_LIST = """\
emergency Engine failure in flight
  when the engine stops
  memory
    Airspeed .... BEST GLIDE
    Fuel selector .... OTHER TANK
%s  Fuel pump .... ON
  Mixture .... RICH
  Alternate air .... OPEN
  Carburettor heat .... HOT
  Primer .... LOCKED
  Throttle .... HALF OPEN
  Magnetos .... LEFT, RIGHT, BOTH
%s  Propeller .... FINE
  Transponder code .... 7700
  Radio call .... MAYDAY
  Seat belts .... TIGHT
  Canopy .... RELEASED
  Flaps .... FULL
  end
"""

_GATE = """\
  if below 1,000 ft above the ground
    go to Forced landing
"""
_OTHER = """
emergency Forced landing
  when no power is left
  Seat belts .... TIGHT
  end
"""

BAD_1 = Example(_LIST % ("", ""), (("long-list", "Engine failure in flight"),))
BAD_2 = Example(_LIST % ("", _GATE) + _OTHER, (("long-list", "Engine failure in flight"),))

GOOD_1 = Example(_LIST % (_GATE, "") + _OTHER)
GOOD_2 = Example(
    _LIST
    % (
        """\
  if there is time for one try
    Fuel pump .... ON
    Alternate air .... OPEN
""",
        "",
    )
)
GOOD_3 = Example(
    """\
emergency Flight control jam
  when the stick does not move
  memory
    Grip .... FIRM, NO SUDDEN FORCE
  Stick .... NOTHING IN THE WAY
  Pedals .... NOTHING IN THE WAY
  Throttle .... FOR LEVEL FLIGHT
  if the elevator is stuck
    Throttle .... FOR HEIGHT
    Flaps .... ONE NOTCH
    Trim .... NOSE UP
    Seats .... FORWARD
  otherwise
    Rudder .... FOR WIDE TURNS
    Ailerons .... FOR ALL TURNS
    Runway .... LITTLE CROSSWIND
    Pilot's seat .... LOCKED
  Radio call .... MAYDAY
  Land .... LONG, WIDE RUNWAY
  end
""",
)

_HOW_HIGH = re.compile(r"\b(?:height|altitude|low|high|below|above|time|ft|feet|m)\b", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    most = subject.limits["long-list"]
    for card, items in subject.lines().long_cards:
        if items <= most:
            break  # they are sorted
        longest = _length(card.steps)
        if card.kind is Kind.NORMAL or longest <= most:
            continue
        if any(isinstance(step, Unread) for step in every_step(card.steps)):
            continue  # what could not be read may be the gate
        third = -(-longest // 3)
        gate = _before_gate(card.steps)
        if gate is None or gate > third:
            at = "none" if gate is None else f"the first after {gate}"
            yield Finding(
                RULE.name,
                card.spot,
                f"`{card.title}` has up to {longest} items and no early way out: {at}, where {third} would be a third.",
                "Ask in the first third for how much height or time there is, or whether this is the right card: "
                "`if below 1,000 ft above the ground` with a `go to` below it. No item need go.",
            )


def _length(steps: Iterable[Step]) -> int:
    """The items on the longest way through."""
    total = 0
    for step in steps:
        match step:
            case Item():
                total += 1
            case Group(steps=inner) | Memory(steps=inner) | Repeat(steps=inner):
                total += _length(inner)
            case OneOf(steps=inner):
                total += max((_length((one,)) for one in inner), default=0)
            case Branch(arms):
                total += max(_length(arm.steps) for arm in arms)
            case Notice() | GoTo() | End() | Unread():
                pass
            case _ as never:
                assert_never(never)
    return total


def _before_gate(steps: Iterable[Step]) -> int | None:
    """The items on the longest way to the first way out; None where there is none."""
    before = 0
    for step in steps:
        match step:
            case Branch(arms) if any(map(_is_way_out, arms)):
                return before
            case Group(steps=inner) | Memory(steps=inner) | Repeat(steps=inner):
                inside = _before_gate(inner)
                if inside is not None:
                    return before + inside
            case _:
                pass
        before += _length((step,))
    return None


def _is_way_out(arm: Arm) -> bool:
    """Whether it leaves the list, or asks how much height or time there is for a part of it."""
    if any(isinstance(step, GoTo | End) for step in every_step(arm.steps)):
        return True
    return arm.condition is not None and _HOW_HIGH.search(arm.condition.text) is not None


RULE = Rule(
    name="long-list",
    severity=Severity.WARNING,
    family="form",
    what=(
        "An emergency or abnormal card with more than twelve items on its longest way, and no gate in the first third "
        "of them: no branch that leads to an `end` or a `go to`, and none that asks for height or time."
    ),
    why=(
        "In January 2009 a crew without engines at low height worked on a list that had been written for great height "
        "and lay in the river with most of it undone; the inquiry asked for gates and opt-outs in such lists."
    ),
    source=(
        "NTSB A-10-68, after AAR-10/03 (the recommendation read, how far the crew came from memory); that a third of "
        "twelve items is the measure is our own"
    ),
    mend=(
        "Put a gate near the head of the card, or make a card of its own of what is done when there is less time. "
        "Leave no item out for it that can kill when it is missed."
    ),
    bad=(BAD_1, BAD_2),
    good=(GOOD_1, GOOD_2, GOOD_3),
    check=check,
    confidence="medium",
)
