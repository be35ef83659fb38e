"""One line that asks for two things."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from itertools import pairwise

from dotleader.handbook.cards import Phrase
from dotleader.handbook.model import Control
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.rules.wording.verbs import LOOKS, MOVES, OF_FLYING, SURE, first_word, orders
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded

BAD = Example(
    """\
equipment
  Throttle .... CLOSED to FULL
  Cabin heat .... OFF, ON

emergency Engine fire on the ground
  when flames come from the cowling
  Pull the mixture and close the fuel valve .... AT ONCE
  Starter .... HOLD KEY AND PUSH THROTTLE
  Throttle .... CLOSED AND CABIN HEAT OFF
  Set flaps and check trim .... TAKEOFF
  Mixture .... LEAN AND CLOSE COWL FLAPS
  Brakes .... APPLY AND STEER TO THE GRASS
  Seat belts .... RELEASE, LEAVE THE AIRCRAFT
  end
""",
    (
        ("two-actions", "Pull the mixture and close the fuel valve"),
        ("two-actions", "HOLD KEY AND PUSH THROTTLE"),
        ("two-actions", "CLOSED AND CABIN HEAT OFF"),
        ("two-actions", "Set flaps and check trim"),
        ("two-actions", "LEAN AND CLOSE COWL FLAPS"),
        ("two-actions", "APPLY AND STEER TO THE GRASS"),
        ("two-actions", "RELEASE, LEAVE THE AIRCRAFT"),
    ),
)

GOOD = Example(
    """\
equipment
  Nav lights .... OFF, ON
  Strobe lights .... OFF, ON

normal Before takeoff
  when holding short of the runway
  Flight controls .... FREE AND CORRECT
  Canopy .... CLOSE AND LATCH
  Control lock .... REMOVE AND STOW
  Release handle .... PULL AND TURN
  Start and stop times .... WRITTEN
  Check doors and lock pins .... SEEN
  Check flaps and trim .... FOR TAKEOFF
  Nav lights + Strobe lights .... ON
  Nose and wings .... FREE OF ICE
  Push rods and pull rods .... FREE
  Rest and hold short .... ON THE NUMBERS
  Harness .... TIGHTEN, LOCK
  Handle .... PULL, HOLD FOR 5 s
  Primer .... PUSH IN, LOCK IT
  Nose .... LOWER, HOLD 90 KIAS
  Airfield .... CHOOSE, LAND INTO WIND
""",
)

_VERBS = MOVES | OF_FLYING
_AND = re.compile(r"\s+(?:and|&)\s+", re.IGNORECASE)
_COMMA = re.compile(r",\s+(?:then\s+)?", re.IGNORECASE)
_ITS_OBJECT = re.compile(r"(?:the|your)\s", re.IGNORECASE)
_SAME_THING = re.compile(r"(?:it|them|both)\b|[\d{]", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    controls = subject.handbook.controls
    for _, item in subject.lines().items:
        text = item.spot.text
        if "&" not in text and ", " not in text and " and " not in text.lower():
            continue
        for challenge in item.challenges:
            if not challenge.control and not challenge.gauge and _are_two(challenge.phrase.spot.text, of_things=True):
                yield _finding(challenge.phrase)
        moved = any(move.positions for move in item.moves)  # positions say what is to be done by themselves
        response = item.response.spot.text if item.response is not None and not moved else ""
        if item.response is not None and (
            _are_two(response, of_things=False) or _goes_on(response) or _moves_another(response, controls)
        ):
            yield _finding(item.response)


def _are_two(text: str, *, of_things: bool) -> bool:
    parts = _AND.split(text)
    return any(_joined(a, b, of_things) for a, b in pairwise(parts))


def _goes_on(response: str) -> bool:
    """Whether a comma leads from one action to another that has an object of its own: `RELEASE, LEAVE THE AIRCRAFT`."""
    return any(
        first_word(left)[0] in _VERBS
        and _SAME_THING.match(first_word(right)[1]) is None
        and (orders(right) or (first_word(right)[0] in OF_FLYING and _ITS_OBJECT.match(first_word(right)[1])))
        for left, right in pairwise(_COMMA.split(response))
    )


def _moves_another(response: str, controls: Mapping[str, Control]) -> bool:
    """Whether a response goes on to another control: `CLOSED AND MIXTURE CUT OFF`."""
    for part in _AND.split(folded(response))[1:]:
        words = part.split()
        for count in range(1, min(len(words), 4)):
            control = controls.get(" ".join(words[:count]))
            rest = " ".join(words[count:])
            if control is not None and any(rest.startswith(folded(position)) for position in control.positions):
                return True
    return False


def _joined(left: str, right: str, of_things: bool) -> bool:
    """Whether two parts are an action with its object, and another action. A challenge mostly is a list `of_things`."""
    verb, object_ = first_word(left.rpartition(", ")[2])
    second, rest = first_word(right)
    if verb not in _VERBS or second not in _VERBS:
        return False
    if of_things:
        return bool(object_) and (orders(right) or (second in LOOKS and verb not in LOOKS and bool(rest)))
    if verb in LOOKS:
        return orders(right)
    # Two verbs on one thing, `REMOVE AND STOW`, are one handling of it.
    return bool(rest) or (bool(object_) and second in SURE)


def _finding(phrase: Phrase) -> Finding:
    return Finding(
        RULE.name,
        phrase.spot,
        f"`{short(phrase.text)}` is two actions.",
        "Give each a line of its own, in the order in which they are done.",
    )


RULE = Rule(
    name="two-actions",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A challenge or a response in which `and` joins two actions of which one has an object of its own: `PULL "
        "BREAKER AND SWITCH OFF MASTER`; or a comma does, in a response: `RELEASE, LEAVE THE AIRCRAFT`. Two verbs on "
        "one thing (`REMOVE AND STOW`) and two states (`FREE AND CORRECT`) are one."
    ),
    why="One answer is given for both, and it is given when the first is done.",
    source="UK procedure audit aid after HSG 48, one action in each step and no run-on `and` (read)",
    mend="Make two items of it. Where one response holds for several controls, join their names: `A + B .... ON`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
