"""The steps of a card in reading order, with those that stand inside others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.handbook.cards import Branch, Group, Memory, OneOf, Repeat, Step


def every_step(steps: Iterable[Step]) -> Iterator[Step]:
    """Each step, then what stands inside it."""
    for step in steps:
        yield step
        match step:
            case Group(steps=inner) | Memory(steps=inner) | OneOf(steps=inner) | Repeat(steps=inner):
                yield from every_step(inner)
            case Branch(arms):
                for arm in arms:
                    yield from every_step(arm.steps)
            case _:
                pass
