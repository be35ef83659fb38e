"""A smoke or fire card that thinks of landing last."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import assert_never

from dotleader.handbook.cards import (
    Branch,
    Card,
    End,
    GoTo,
    Group,
    Item,
    Memory,
    Notice,
    OneOf,
    Phrase,
    Repeat,
    Step,
    Unread,
)
from dotleader.handbook.walking import every_step
from dotleader.rules.coverage.topics import Topic, topics_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.source.record import record
from dotleader.source.text import Spot

_SMOKE = """\
emergency Smoke in the cabin
  during climb, cruise, descent
  when smoke is seen or smelt
  memory
    Cabin heat .... CLOSED
%s  Master switch .... OFF
  Air vents .... OPEN
  Extinguisher .... AT THE FLAMES
  Radio breaker .... OUT
  Light breaker .... OUT
  Landing light breaker .... OUT
%s  end
"""

BAD_1 = Example(_SMOKE % ("", "  Land .... NEAREST AIRFIELD\n"), (("landing-late", "Land .... NEAREST AIRFIELD"),))
BAD_2 = Example(_SMOKE % ("", ""), (("landing-late", "Smoke in the cabin"),))

GOOD_MEMORY = Example(_SMOKE % ("    Land .... AT ONCE\n", ""))
GOOD_EARLY = Example(_SMOKE % ("  Heading .... TO NEAREST AIRFIELD\n", "  Landing .... STRAIGHT IN\n"))
GOOD_GROUND = Example(
    """\
emergency Engine fire on the ground
  during engine start, taxi
  when flames or smoke come from the cowling
  memory
    Mixture .... CUT OFF
  Fuel selector .... OFF
  Magnetos .... OFF
  Master switch .... OFF
  Seat belts .... UNDONE
  Everyone .... OUT, UPWIND
  end
"""
)
GOOD_SHORT = Example(
    """\
emergency Fire in the air
  when the fire light is on
  memory
    Fuel valve .... CLOSED
  Ignition .... OFF
  Master switch .... OFF
  go to Forced landing

emergency Forced landing
  when no engine and no runway in reach
  Airspeed .... BEST GLIDE
  end
"""
)

_LANDING = re.compile(
    r"\b(?:land(?!ing)|landing(?!\s+(?:light|lamp|gear|flap))|divert|diversion|diverting|airfields?|airports?|aerodromes?"
    r"|runways?|ditch(?:ing)?|descen[dt]|descending|emergency descent|field|touch\s?down)\b",
    re.IGNORECASE,
)

_IN_FLIGHT = re.compile(r"\b(?:in[- ]?flight|flight|air|airborne|cabin|cockpit|electrical|smoke|climb|cruise)\b", re.I)


@record
class _Found:
    """The first line that leads to the ground, with the number of items before it."""

    before: int
    spot: Spot


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        topics = topics_of(card)
        if Topic.FIRE_IN_FLIGHT not in topics or Topic.FIRE_ON_GROUND in topics or _in_memory(card):
            continue  # a card that serves on the ground as well cannot begin with a landing
        total = _length(card.steps)
        first = _first(card.steps, subject.handbook.by_key)
        allowed = max(-(-total // 3), subject.limits["landing-late"])
        if first is None:
            if (
                not total
                or not _surely_in_flight(card)
                or any(isinstance(step, Unread) for step in every_step(card.steps))
            ):
                continue
            yield Finding(
                RULE.name,
                card.spot,
                f"`{card.title}` has no line about landing.",
                "Say early where to go, best as a memory item: `Land .... AT ONCE`, or `Land .... NEAREST AIRFIELD`.",
            )
        elif first.before + 1 > allowed:
            yield Finding(
                RULE.name,
                first.spot,
                f"`{card.title}` comes to landing at its line {first.before + 1} of {max(total, first.before + 1)} "
                f"after the memory items; the first {allowed} would be early.",
                "Turn to a landing place first, best as a memory item: `Land .... AT ONCE`. Fight the fire on the way.",
                (Related(card.spot, "The card."),),
            )


def _surely_in_flight(card: Card) -> bool:
    """Whether it says that it is for the air; one that says neither may be meant for the ground."""
    return bool(card.during) or _IN_FLIGHT.search(card.title) is not None


def _in_memory(card: Card) -> bool:
    memory = (step for step in card.steps if isinstance(step, Memory))
    return any(isinstance(step, Item) and _leads_down(step) for block in memory for step in every_step(block.steps))


def _speaks_of_landing(card: Card) -> bool:
    return any(
        _leads_down(step)
        if isinstance(step, Item)
        else isinstance(step, GoTo) and _LANDING.search(step.title) is not None
        for step in every_step(card.steps)
    )


def _leads_down(item: Item) -> bool:
    if any(challenge.control or challenge.gauge for challenge in item.challenges):
        return False
    texts: list[Phrase] = [challenge.phrase for challenge in item.challenges]
    texts += [item.response] if item.response is not None else []
    texts += item.detail
    return any(_LANDING.search(text.text) for text in texts)


def _first(steps: Sequence[Step], cards: Mapping[str, Card]) -> _Found | None:
    """The first line on landing; a `go to` a card that is for a landing, or speaks of one, counts as one."""
    before = 0
    for step in steps:
        match step:
            case Item():
                if _leads_down(step):
                    return _Found(before, step.spot)
            case GoTo(title, target):
                if _LANDING.search(title) or (target in cards and _speaks_of_landing(cards[target])):
                    return _Found(before, step.spot)
            case Group(steps=inner) | OneOf(steps=inner) | Repeat(steps=inner):
                found = _first(inner, cards)
                if found is not None:
                    return _Found(before + found.before, found.spot)
            case Branch(arms):
                some = [found for arm in arms if (found := _first(arm.steps, cards)) is not None]
                if some:
                    best = min(some, key=lambda found: found.before)
                    return _Found(before + best.before, best.spot)
            case Memory() | Notice() | End() | Unread():
                pass
            case _ as never:
                assert_never(never)
        before += _length((step,))
    return None


def _length(steps: Sequence[Step]) -> int:
    """The items on the longest way through, without those of memory blocks."""
    total = 0
    for step in steps:
        match step:
            case Item():
                total += 1
            case Group(steps=inner) | Repeat(steps=inner):
                total += _length(inner)
            case OneOf(steps=inner):
                total += max((_length((one,)) for one in inner), default=0)
            case Branch(arms):
                total += max(_length(arm.steps) for arm in arms)
            case Memory() | Notice() | GoTo() | End() | Unread():
                pass
            case _ as never:
                assert_never(never)
    return total


RULE = Rule(
    name="landing-late",
    severity=Severity.WARNING,
    family="safety",
    what=(
        "An emergency or abnormal card for smoke or fire in flight whose first line about landing or diverting comes "
        "after the first third of its items, memory items not counted, and after the first three; or that has none "
        "though it says that it is for the air. A memory item about landing is early in any case, and so is a `go to` "
        "a card for a landing in its place. Cards for the ground are not looked at."
    ),
    why=(
        "On both smoke lists of the aircraft lost off Nova Scotia in 1998 the preparation for landing was the last "
        "item, and the inquiry spoke of one list with the landing early on it."
    ),
    source=(
        "TSB Canada A98H0003, on the two smoke lists (read); that a third or three lines are the measure is our own"
    ),
    mend="Let the card turn to a landing place first, and fight the fire on the way.",
    bad=(BAD_1, BAD_2),
    good=(GOOD_MEMORY, GOOD_EARLY, GOOD_GROUND, GOOD_SHORT),
    check=check,
    confidence="medium",
)
