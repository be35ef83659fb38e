"""An emergency that the aircraft's equipment calls for, and that no card is for."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Item
from dotleader.handbook.model import Handbook
from dotleader.handbook.walking import every_step
from dotleader.rules.coverage.topics import Topic, topics_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded

_CARDS = """\
# allow missing-phase: an example of emergency cards
handbook Ostrel Two flight handbook

equipment
  Engine .... STOPPED, RUNNING
  Master switch .... OFF, ON

emergency Engine failure after takeoff
  when power is lost below 700 ft
  memory
    Nose .... DOWN AT ONCE
  Landing site .... AHEAD
  end

emergency Engine failure in flight
  when power is lost with height to spare
  memory
    Airspeed .... BEST GLIDE
  if the engine runs again
    Engine .... RUNNING
    Land .... NEAREST AIRFIELD
    end
  go to Forced landing

emergency Forced landing
  when no runway is in reach
  Landing site .... CHOOSE
  Master switch .... OFF
  end

emergency Engine fire in flight
  when flames or smoke come from the cowling
  memory
    Mixture .... CUT OFF
  Land .... AT ONCE
  end

emergency Engine fire on the ground
  during engine start, taxi
  when flames or smoke come from the cowling
  memory
    Mixture .... CUT OFF
  Everyone .... OUT
  end
"""

BAD = Example(_CARDS, (("missing-emergency", "handbook Ostrel Two flight handbook"),))

GOOD = Example(
    _CARDS
    + """
abnormal Alternator failure
  when the voltmeter falls below the green
  Land .... NEAREST AIRFIELD
  end
"""
)

_ENGINE = re.compile(
    r"\b(?:engines?|motors?|magnetos?|ignition|throttles?|mixture|starter|propellers?|props?|carburett?ors?|carb|choke"
    r"|primer|prime|cowl|manifold|rpm|cylinders?|cht|egt|oil|fuel|tacho(?:meter)?|power lever|thrust|turbine|coolant)\b"
)
_ELECTRICAL = re.compile(
    r"\b(?:master|battery|batteries|alternators?|generators?|charging|bus|avionics|ammeter|volt(?:s|age|meter)?"
    r"|electrical|electrics|circuit breakers?)\b"
)
_NO_ENGINE = re.compile(r"(?:none|no|without|nil|unpowered|glider|sailplane)\b")
_LOADS = ("draws", "breaker")
_FIRST_RANK = 100  # after the lists of a flight that are missing

_SAMPLES = {
    Topic.FAILURE_AFTER_TAKEOFF: "Write `emergency Engine failure after takeoff`.",
    Topic.FAILURE_IN_FLIGHT: "Write `emergency Engine failure in flight`.",
    Topic.FORCED_LANDING: "Write `emergency Forced landing`.",
    Topic.FIRE_IN_FLIGHT: "Write `emergency Engine fire in flight`.",
    Topic.FIRE_ON_GROUND: "Write `emergency Engine fire on the ground`.",
    Topic.ELECTRICAL_FAILURE: "Write `abnormal Alternator failure` or `emergency Electrical failure`.",
}


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    if handbook.loose:
        return
    there = {topic for card in handbook.cards for topic in topics_of(card)}
    for rank, topic in enumerate(Topic, _FIRST_RANK):
        wanted = has_electrics(handbook) if topic is Topic.ELECTRICAL_FAILURE else has_engine(handbook)
        if wanted and topic not in there:
            yield Finding(
                RULE.name,
                handbook.spot,
                f"This handbook has no card for {topic.value}.",
                f"{_SAMPLES[topic]} If a card serves for it under another name, let its title say so.",
                rank=rank,
            )


def has_engine(handbook: Handbook) -> bool:
    """Whether the aircraft has an engine; an aircraft of which no equipment is declared has one unless it says not."""
    fact = handbook.fact("engine")
    if fact:
        return _NO_ENGINE.match(folded(fact)) is None
    if not handbook.controls and not handbook.gauges:
        return True
    return any(_ENGINE.search(name) for name in (*_declared(handbook), *_challenges(handbook)))


def has_electrics(handbook: Handbook) -> bool:
    """Whether an electrical system is declared: a supply of it, or anything that draws on it."""
    if handbook.electrical is not None or any(_ELECTRICAL.search(name) for name in _declared(handbook)):
        return True
    return any(fact.name in _LOADS for control in handbook.controls.values() for fact in control.properties)


def _declared(handbook: Handbook) -> Iterator[str]:
    """The folded names of controls and gauges."""
    for control in handbook.controls.values():
        yield control.key
        yield from map(folded, control.also_called)
    yield from handbook.gauges


def _challenges(handbook: Handbook) -> Iterator[str]:
    for card in handbook.cards:
        for step in every_step(card.steps):
            if isinstance(step, Item):
                yield folded(step.challenge)


RULE = Rule(
    name="missing-emergency",
    severity=Severity.WARNING,
    family="coverage",
    what=(
        "A handbook without an emergency or abnormal card for what its equipment can do: with an engine, "
        "engine failure after takeoff and in flight, a forced landing, fire in flight and on the ground; with "
        "an electrical system, its failure, for which that of the alternator, the generator or the charging "
        "serves. Titles are read with their usual variants (`Engine out on climb-out`, `Off-field landing`, "
        "`Smoke in the cabin`), with `when` and `during`."
    ),
    why="The card that is not there is missed when there is no time to think of what would have stood on it.",
    source=(
        "14 CFR 91.503(c), the emergencies that cockpit checklists cover (binding for large and turbine "
        "aeroplanes, here the measure); NTSB A-10-66, an engine failure list for low height"
    ),
    mend=(
        "Write the card, or name it so that it is found. Where the aircraft cannot have the emergency, say "
        "why on the line of the `handbook` block: `# allow missing-emergency: REASON`."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
