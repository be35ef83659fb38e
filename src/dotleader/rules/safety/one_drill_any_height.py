"""One engine failure card for every height."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Branch, Card
from dotleader.handbook.walking import every_step
from dotleader.rules.coverage.topics import Topic, topics_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

_LANDING = """\
emergency Forced landing
  when no engine and no runway in reach
  Airspeed .... BEST GLIDE
  end
"""

BAD = Example(
    """\
emergency Engine failure
  during takeoff, climb, cruise, descent
  when the engine stops
  memory
    Airspeed .... BEST GLIDE
  Fuel selector .... OTHER TANK
  Mixture .... RICH
  go to Forced landing

"""
    + _LANDING,
    (("one-drill-any-height", "Engine failure"),),
)

GOOD_TWO = Example(
    """\
emergency Engine failure after takeoff
  when the engine stops below 700 ft
  memory
    Nose .... DOWN AT ONCE
  Landing site .... AHEAD
  end

emergency Engine failure in flight
  when the engine stops with height to spare
  memory
    Airspeed .... BEST GLIDE
  Fuel selector .... OTHER TANK
  go to Forced landing

"""
    + _LANDING
)

GOOD_GATE = Example(
    """\
emergency Engine failure
  during takeoff, climb, cruise, descent
  when the engine stops
  memory
    Airspeed .... BEST GLIDE
  if below 700 ft above the ground
    go to Forced landing
  Fuel selector .... OTHER TANK
  Mixture .... RICH
  go to Forced landing

"""
    + _LANDING
)

_BOTH = frozenset({Topic.FAILURE_AFTER_TAKEOFF, Topic.FAILURE_IN_FLIGHT})
_HEIGHT = re.compile(
    r"\b(?:below|above|height|altitude|low|lower|high|time|ft|feet|agl|climb-?out|airborne|turn back)\b|\d\s*m\b",
    re.IGNORECASE,
)


def check(subject: Subject) -> Iterator[Finding]:
    failures = [(card, topics) for card in subject.handbook.cards if (topics := topics_of(card) & _BOTH)]
    for_all = [card for card, topics in failures if topics == _BOTH]
    if not for_all or {topic for _, topics in failures if topics != _BOTH for topic in topics}:
        return  # another card tells one height apart, and what is missing is said by `missing-emergency`
    if any(_asks_for_height(card) for card in for_all):
        return
    card = for_all[0]
    yield Finding(
        RULE.name,
        card.spot,
        f"`{card.title}` is the one card for an engine failure, from the first climb to cruising height.",
        "Write one card for the failure after takeoff, which leads to the ground ahead at once, and one for the "
        "failure with height to spare; or ask for the height right after the memory items.",
    )


def _asks_for_height(card: Card) -> bool:
    branches = (step for step in every_step(card.steps) if isinstance(step, Branch))
    conditions = (arm.condition for branch in branches for arm in branch.arms if arm.condition is not None)
    return any(_HEIGHT.search(condition.text) for condition in conditions)


RULE = Rule(
    name="one-drill-any-height",
    severity=Severity.WARNING,
    family="safety",
    what=(
        "A handbook whose only card for an engine failure is for the climb after takeoff and for cruising height "
        "alike, by its title, its trigger or its `during`, and does not ask for height or time. A handbook that has "
        "no card for one of the two is `missing-emergency`."
    ),
    why=(
        "The list for both engines that was begun over a river in January 2009 had been written for great height, so "
        "the inquiry asked for one for low height."
    ),
    source=(
        "NTSB A-10-66 and A-10-68, after AAR-10/03 (the recommendations read; for which height the list was written "
        "from memory)"
    ),
    mend="Give each height an entry of its own: on the takeoff roll, after takeoff, in flight.",
    bad=(BAD,),
    good=(GOOD_TWO, GOOD_GATE),
    check=check,
    confidence="medium",
)
