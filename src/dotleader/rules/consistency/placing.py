"""Where the items of a card stand: on its straight way, in parts within which their order is a matter of habit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
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
    Repeat,
    Step,
    Unread,
)
from dotleader.handbook.walking import every_step
from dotleader.source.record import record
from dotleader.syntax.plain import folded


@record
class Placed:
    """An item that stands once on its card. `part` is the run of lines that it stands in, and whether it is critical.

    The order of two items is a matter of habit only within one part: groups and branches are for a reason of their own.
    """

    item: Item
    place: int
    part: tuple[int, bool]


def placed_on(card: Card) -> dict[tuple[str, str], Placed]:
    """The items on the straight way through a card, in their order, by challenge and response."""
    keys = {id(step): _key(step) for step in every_step(card.steps) if isinstance(step, Item)}
    counts: dict[tuple[str, str], int] = {}
    for key in keys.values():
        counts[key] = counts.get(key, 0) + 1
    found: dict[tuple[str, str], Placed] = {}
    for part, run in enumerate(_runs(card.steps)):
        for item in run:
            key = keys[id(item)]
            if counts[key] == 1:
                found[key] = Placed(item, len(found), (part, item.critical))
    return found


def from_memory(card: Card) -> set[tuple[str, str]]:
    """The items from memory: two drills that begin otherwise may be of one kind in what is read."""
    memory = [step for step in card.steps if isinstance(step, Memory)]
    return {_key(item) for block in memory for run in _runs(block.steps) for item in run}


def _runs(steps: Sequence[Step]) -> Iterator[list[Item]]:
    """The items that follow one another without a heading or a branch between them."""
    run: list[Item] = []
    for step in steps:
        match step:
            case Item():
                run.append(step)
                continue
            case Notice() | Unread():
                continue
            case Group(steps=inner) | Memory(steps=inner):
                yield run
                yield from _runs(inner)
            case Branch() | OneOf() | Repeat() | GoTo() | End():
                yield run
            case _ as never:
                assert_never(never)
        run = []
    yield run


def _key(item: Item) -> tuple[str, str]:
    return folded(item.challenge), folded(item.response.text) if item.response is not None else ""
