"""Where controls stand on their panels, and the hand's way over a panel from item to item of a card."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise
from math import hypot

from dotleader.handbook.cards import Card, Item
from dotleader.handbook.model import Control
from dotleader.handbook.panel_place import Place
from dotleader.handbook.walking import every_step
from dotleader.source.record import record

LEAST_TURN = 20
"""Millimetres that a hand has to go back for it to be a turn: about the distance of two switches (our own measure)."""


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


def places(controls: Mapping[str, Control]) -> dict[str, Place]:
    """The places of all controls that have one, by key."""
    return {key: control.place for key, control in controls.items() if control.place is not None}


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
