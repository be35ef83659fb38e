"""Where controls stand on their panels, and the hand's way over a panel from item to item of a card."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise
from math import hypot

from dotleader.handbook.cards import Card, Item
from dotleader.handbook.model import Control
from dotleader.handbook.walking import every_step
from dotleader.source.record import record
from dotleader.syntax.plain import folded

_AT = re.compile(r"(\S.*?)\s+(\d+(?:\.\d+)?)\s*(mm|cm|in)\s*,\s*(\d+(?:\.\d+)?)\s*(mm|cm|in)$")
_MILLIMETRES = {"mm": Fraction(1), "cm": Fraction(10), "in": Fraction("25.4")}

LEAST_TURN = 20
"""Millimetres that a hand has to go back for it to be a turn: about the distance of two switches (our own measure)."""


@record
class Place:
    """On which panel a control stands, and how far right and up from its lower left corner, in millimetres."""

    panel: str
    right: Fraction
    up: Fraction


@record
class Reach:
    """The hand at a control, for an item of a card."""

    item: Item
    control: Control
    place: Place


@record
class Way:
    """The hand's way on one card. `distance` is the straight way from place to place on one panel, in millimetres.

    `turns` are the items at which the hand goes back sideways on a panel after having gone the other way; `returns`
    those at which it comes back to a panel that it had left. Items marked critical are reached but bring no turn and no
    return: they go first wherever they stand.
    """

    reaches: tuple[Reach, ...]
    distance: int
    turns: tuple[Reach, ...]
    returns: tuple[Reach, ...]


def place_of(control: Control) -> Place | None:
    """Where a control is declared to stand; None where that is not said."""
    for fact in control.properties:
        found = _AT.match(fact.text) if fact.name == "at" else None
        if found is not None:
            right, up = Fraction(found[2]) * _MILLIMETRES[found[3]], Fraction(found[4]) * _MILLIMETRES[found[5]]
            return Place(folded(found[1]), right, up)
    return None


def places(controls: Mapping[str, Control]) -> dict[str, Place]:
    """The places of all controls that have one, by key."""
    found = {key: place_of(control) for key, control in controls.items()}
    return {key: place for key, place in found.items() if place is not None}


def way_of(card: Card, controls: dict[str, Control], known: dict[str, Place]) -> Way:
    """The hand's way over the controls of a card that have a place, in the order of its lines."""
    reaches = tuple(_reaches(card, controls, known))
    distance = 0.0
    turns: list[Reach] = []
    returns: list[Reach] = []
    going: dict[str, int] = {}
    left: set[str] = set()
    for before, now in pairwise(reaches):
        critical = before.item.critical or now.item.critical
        if before.place.panel != now.place.panel:
            left.add(before.place.panel)
            going.clear()
            if now.place.panel in left and not critical:
                returns.append(now)
            continue
        across = now.place.right - before.place.right
        distance += hypot(across, now.place.up - before.place.up)
        if abs(across) < LEAST_TURN:
            continue
        way = 1 if across > 0 else -1
        if going.get(now.place.panel, way) != way and not critical:
            turns.append(now)
        going[now.place.panel] = way
    return Way(reaches, round(distance), tuple(turns), tuple(returns))


def _reaches(card: Card, controls: dict[str, Control], known: dict[str, Place]) -> Iterator[Reach]:
    """An item over several controls is begun at its nearer end: which of them goes first is the hand's choice."""
    last: Place | None = None
    for step in every_step(card.steps):
        if not isinstance(step, Item):
            continue
        keys = [challenge.control for challenge in step.challenges if challenge.control in known]
        if not keys:
            continue
        if len(keys) > 1 and len({known[key].panel for key in keys}) == 1:
            keys.sort(key=lambda key: known[key].right)
            if last is not None and _across(last, known[keys[-1]]) < _across(last, known[keys[0]]):
                keys.reverse()
        last = known[keys[-1]]
        yield from (Reach(step, controls[key], known[key]) for key in keys)


def _across(one: Place, other: Place) -> Fraction:
    return abs(one.right - other.right)
