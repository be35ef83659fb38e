"""Items that follow one another with nothing between them that the eye can hold on to."""

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
from dotleader.rules.subject import Subject


def long_blocks(subject: Subject, most: int) -> Iterator[tuple[Card, list[Item]]]:
    """The runs of more than `most` items without a heading, a condition or the like between them."""
    for card, items in subject.lines().long_cards:
        if items <= most:
            return  # they are sorted
        for run in _runs(card.steps):
            if len(run) > most:
                yield card, run


def _runs(steps: Sequence[Step]) -> Iterator[list[Item]]:
    run: list[Item] = []
    for step in steps:
        match step:
            case Item():
                run.append(step)
                continue
            case Notice() | Unread():
                continue
            case GoTo() | End() | Memory():
                pass  # a memory block has a measure of its own
            case Group(steps=inner) | OneOf(steps=inner) | Repeat(steps=inner):
                yield from _runs(inner)
            case Branch(arms):
                for arm in arms:
                    yield from _runs(arm.steps)
            case _ as never:
                assert_never(never)
        yield run
        run = []
    yield run
