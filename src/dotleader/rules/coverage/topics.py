"""What an emergency or abnormal card is about, from its title, its trigger and the phases it can come in.

A pilot looks for a card by its name, so the title counts first. Titles are read generously: one that is not recognised
would be a false alarm.
"""

from __future__ import annotations

import re
from enum import Enum

from dotleader.handbook.cards import Card, Kind
from dotleader.handbook.phases import AIRBORNE
from dotleader.syntax.plain import folded


class Topic(Enum):
    """An emergency that equipment calls for, as it is named in a message."""

    FAILURE_AFTER_TAKEOFF = "engine failure after takeoff"
    FAILURE_IN_FLIGHT = "engine failure in flight"
    FORCED_LANDING = "a forced landing"
    FIRE_IN_FLIGHT = "fire in flight"
    FIRE_ON_GROUND = "fire on the ground"
    ELECTRICAL_FAILURE = "electrical failure"


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


_JOINED = (
    ("take off", "takeoff"), ("in flight", "inflight"), ("climb out", "climbout"), ("lift off", "liftoff"),
    ("flame out", "flameout"), ("en route", "enroute"), ("off line", "offline"), ("start up", "startup"),
    ("power plant", "powerplant"), ("dead stick", "deadstick"), ("out landing", "outlanding"),
    ("in the air", "inflight"), ("initial climb", "climbout"), ("landing out", "outlanding"),
    ("land out", "outlanding"),
)  # fmt: skip
_ABOVE_GROUND = re.compile(r"\b(?:above|over) (?:the )?ground(?: level)?\b|\bagl\b")
_HYPHEN = re.compile(r"(?<=\w)-(?=\w)")
_BETWEEN = re.compile(r"\W+")
_PARTS = re.compile(r"[/,;:&+()\u2013\u2014]| - | or | and ")

_ENGINE = _set("engine engines motor motors powerplant propulsion")
_POWER = _set("power thrust")
_FAILURE = _set(
    "failure failures fails failed fail loss lost lose loses out stoppage stops stopped stop stopping quits "
    "quit dead cut cuts malfunction inoperative no without"
)
_NOT_THE_ENGINE = _set(
    "oil pump pumps instrument instruments gauge gauges monitor indication indications alternator generator "
    "governor pressure temperature control controls partial rough vibration smoke fire restart gear landing "
    "landings electrical electrics flap flaps trim starter cable"
)
_ELECTRIC = _set("electrical electric electrics alternator alternators generator generators bus avionics battery")
_ON_THE_RUN = _set(
    "roll run rejected reject aborted abort abandoned abandon ground runway taxi taxiing start starting before"
)
_NO_RUNWAY = _set("no insufficient without short")
_LEAVING = _set("after climbout liftoff takeoff")
_LOW = _set("low below just shortly")
_AFTER_TAKEOFF = _set("takeoff climbout departure liftoff efato climb") | _LOW
_IN_FLIGHT = _set("inflight flight cruise cruising altitude airborne enroute descent high above level")
_APPROACH = _set("approach final circuit pattern")
_LOOSE = _set("low high above level flight run start starting before climb just")
"""What a trigger may say of other things than the height."""

_LANDING = _set("forced outlanding deadstick crash")
_GLIDING = _set("glide glider gliding")
_ELSEWHERE = _set("field airport aerodrome airfield")
_POWERLESS = _set("no without off out failure failed inoperative")
_OTHER_LANDING = _set("gear tyre tire wheel wheels brake brakes flap flaps float floats water sea precautionary")

_FIRE = _set("fire fires flame flames smoke burning burns")
_FIRE_ON_GROUND = _set(
    "ground start starting startup starter taxi taxiing parked parking refuelling refueling fuelling fueling "
    "hangar ramp apron brake brakes wheel wheels shutdown landing"
)
_FIRE_IN_FLIGHT = _set("inflight flight airborne air cruise climb enroute takeoff descent")

_SUPPLY = _set(
    "electrical electric electrics alternator alternators alt generator generators gen charging charge "
    "battery bus voltage ammeter voltmeter"
)
_SUPPLY_FAILURE = (_FAILURE - _set("cut cuts")) | _set(
    "fault faults off offline light lights warning low discharge discharging zero undervoltage problem "
    "problems trouble blackout flat"
)
_NOT_THE_SUPPLY = _set("trim flap flaps pump gear motor motors seat heat heater instrument instruments") | _FIRE


def topics_of(card: Card) -> frozenset[Topic]:
    """What a card is about, of the emergencies that are asked for. A normal card is about none."""
    if card.kind is Kind.NORMAL:
        return frozenset()
    title = _plain(card.title)
    words = frozenset(_BETWEEN.split(title))
    parts = [frozenset(_BETWEEN.split(part)) for part in _PARTS.split(title)] + [words]
    when = frozenset(_BETWEEN.split(_plain(card.when.text))) if card.when is not None else frozenset()
    during = frozenset(card.during)
    found: set[Topic] = set()
    if any(_is_engine_failure(part) for part in parts):
        found |= _heights(words, when, during)
    if any(_is_forced_landing(part) for part in parts):
        found.add(Topic.FORCED_LANDING)
    if words & _FIRE:
        found |= _places_of_fire(words, when, during)
    if any(part & _SUPPLY and part & _SUPPLY_FAILURE and not part & _NOT_THE_SUPPLY for part in parts):
        found.add(Topic.ELECTRICAL_FAILURE)
    return frozenset(found)


def _plain(text: str) -> str:
    """A text folded, words that are written together or apart as one, heights without what they are above."""
    text = _HYPHEN.sub(" ", folded(text))
    for apart, joined in _JOINED:
        text = text.replace(apart, joined)
    return _ABOVE_GROUND.sub("", text)


def _is_engine_failure(words: frozenset[str]) -> bool:
    if words & {"flameout", "efato"}:
        return True
    if words & _NOT_THE_ENGINE or not words & _FAILURE:
        return False
    return bool(words & _ENGINE) or (bool(words & _POWER) and not words & _ELECTRIC)


def _heights(title: frozenset[str], when: frozenset[str], during: frozenset[str]) -> set[Topic]:
    """Where an engine failure finds the aircraft: what the title says, else the trigger, else the phases.

    A card that is bare of all three is looked for in flight: height is what tells the drills apart.
    """
    for words in (title, when - _LOOSE):
        said = _heights_said(words)
        if said is not None:
            return said
    only_climb = during == {"climb"}
    found = set()
    if "takeoff" in during or only_climb:
        found.add(Topic.FAILURE_AFTER_TAKEOFF)
    if not during or only_climb or during & {"cruise", "descent"}:
        found.add(Topic.FAILURE_IN_FLIGHT)
    return found


def _heights_said(words: frozenset[str]) -> set[Topic] | None:
    """None where the words say nothing of the height; nothing in it where they mean the runway or the approach."""
    rolling = bool(words & _ON_THE_RUN) and not ("runway" in words and words & _NO_RUNWAY)
    if words & _IN_FLIGHT and not words & _LOW:
        leaving = words & _LEAVING and not rolling
        return {Topic.FAILURE_IN_FLIGHT, Topic.FAILURE_AFTER_TAKEOFF} if leaving else {Topic.FAILURE_IN_FLIGHT}
    if rolling and ("before" in words or not words & (_LEAVING - {"takeoff"})):
        return set()
    if words & _AFTER_TAKEOFF:
        return {Topic.FAILURE_AFTER_TAKEOFF}
    return set() if words & _APPROACH else None


def _is_forced_landing(words: frozenset[str]) -> bool:
    if "outlanding" in words or ("forced" in words and words & {"landing", "landings"}):
        return True
    if "landing" not in words or words & _OTHER_LANDING:
        return False
    if words & _LANDING or "emergency" in words or ("off" in words and words & _ELSEWHERE):
        return True
    return bool(words & _GLIDING) or bool(words & {"power", "engine"} and words & _POWERLESS)


def _places_of_fire(title: frozenset[str], when: frozenset[str], during: frozenset[str]) -> set[Topic]:
    for words in (title, when - {"start", "landing", "takeoff"}):
        found = set()
        if words & _FIRE_ON_GROUND:
            found.add(Topic.FIRE_ON_GROUND)
        if words & _FIRE_IN_FLIGHT:
            found.add(Topic.FIRE_IN_FLIGHT)
        if found:
            return found
    airborne = frozenset(AIRBORNE)
    found = set()
    if not during or during & airborne:
        found.add(Topic.FIRE_IN_FLIGHT)
    if during - airborne:
        found.add(Topic.FIRE_ON_GROUND)
    return found
