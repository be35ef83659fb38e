"""The lines of all cards, gone through once and sorted by kind for the rules that look at single lines."""

from __future__ import annotations

from collections.abc import Iterable
from typing import assert_never

from dotleader.handbook.cards import (
    Arm,
    Branch,
    Card,
    End,
    Explained,
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
from dotleader.handbook.model import Handbook
from dotleader.source.record import record


@record
class Lines:
    """In reading order, each with its card. What is repeated in amplified text is only in `printed`.

    `printed` are the items wherever they are printed: with those that amplified text repeats. `in_memory` are the
    items and the branches inside memory blocks; `branches` are those outside. `texts` are the files in small letters,
    offsets kept, in which it is quickly seen whether a word stands anywhere at all.
    """

    items: tuple[tuple[Card, Item], ...]
    printed: tuple[tuple[Card, Item], ...]
    notices: tuple[tuple[Card, Notice], ...]
    arms: tuple[tuple[Card, Arm], ...]
    repeats: tuple[tuple[Card, Repeat], ...]
    choices: tuple[tuple[Card, OneOf], ...]
    branches: tuple[tuple[Card, Branch], ...]
    in_memory: tuple[tuple[Card, Item | Branch], ...]
    long_cards: tuple[tuple[Card, int], ...]  # by the number of all their items, the most first
    texts: tuple[str, ...]


class _Sorted:
    def __init__(self) -> None:
        self.items: list[tuple[Card, Item]] = []
        self.notices: list[tuple[Card, Notice]] = []
        self.arms: list[tuple[Card, Arm]] = []
        self.repeats: list[tuple[Card, Repeat]] = []
        self.choices: list[tuple[Card, OneOf]] = []
        self.branches: list[tuple[Card, Branch]] = []
        self.in_memory: list[tuple[Card, Item | Branch]] = []

    def add(self, card: Card, steps: Iterable[Step], *, in_memory: bool = False) -> None:
        for step in steps:
            match step:
                case Item():
                    self.items.append((card, step))
                    if in_memory:
                        self.in_memory.append((card, step))
                case Notice():
                    self.notices.append((card, step))
                case Branch(arms):
                    (self.in_memory if in_memory else self.branches).append((card, step))
                    for arm in arms:
                        self.arms.append((card, arm))
                        self.add(card, arm.steps, in_memory=in_memory)
                case Memory(steps=inner):
                    self.add(card, inner, in_memory=True)
                case Repeat(steps=inner):
                    self.repeats.append((card, step))
                    self.add(card, inner, in_memory=in_memory)
                case OneOf(steps=inner):
                    self.choices.append((card, step))
                    self.add(card, inner, in_memory=in_memory)
                case Group(steps=inner):
                    self.add(card, inner, in_memory=in_memory)
                case GoTo() | End() | Unread():
                    pass
                case _ as never:
                    assert_never(never)


def lines_of(handbook: Handbook) -> Lines:
    found = _Sorted()
    counted: list[tuple[Card, int]] = []
    printed: list[tuple[Card, Item]] = []
    for card in handbook.cards:
        before = len(found.items)
        found.add(card, card.steps)
        counted.append((card, len(found.items) - before))
        printed += found.items[before:]
        printed += [(card, part.item) for part in card.amplified if isinstance(part, Explained)]
    return Lines(
        tuple(found.items),
        tuple(printed),
        tuple(found.notices),
        tuple(found.arms),
        tuple(found.repeats),
        tuple(found.choices),
        tuple(found.branches),
        tuple(found.in_memory),
        tuple(sorted(counted, key=lambda each: -each[1])),
        tuple(_small(source.text) for source in handbook.files),
    )


def _small(text: str) -> str:
    """The text in small letters, as long as it was: a letter that would become two stays."""
    small = text.lower()
    return small if len(small) == len(text) else "".join(c.lower() if len(c.lower()) == 1 else c for c in text)
