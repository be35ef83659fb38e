"""The steps of a card in reading order, with those that stand inside others, and the texts of all cards."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.handbook.cards import (
    Branch,
    Explained,
    Group,
    Item,
    Memory,
    Notice,
    OneOf,
    Phrase,
    Repeat,
    Step,
)
from dotleader.handbook.model import Handbook


def every_step(steps: Iterable[Step]) -> Iterator[Step]:
    """Each step, then what stands inside it."""
    found: list[Step] = []
    _add(steps, found)
    return iter(found)


def _add(steps: Iterable[Step], found: list[Step]) -> None:
    # Every rule goes through the steps; a list is filled in half the time that generators inside one another take.
    for step in steps:
        found.append(step)
        if type(step) is Item:
            continue
        match step:
            case Group(steps=inner) | Memory(steps=inner) | OneOf(steps=inner) | Repeat(steps=inner):
                _add(inner, found)
            case Branch(arms):
                for arm in arms:
                    _add(arm.steps, found)
            case _:
                pass


def every_phrase(handbook: Handbook) -> Iterator[Phrase]:
    """Every text of the cards and of the prose, but for titles."""
    for card in handbook.cards:
        if card.when is not None:
            yield card.when
        for step in every_step(card.steps):
            yield from texts_of(step)
        for part in card.amplified:
            if isinstance(part, Explained):
                yield from (*texts_of(part.item), *part.paragraphs)
            else:
                yield part
    for essay in handbook.essays:
        yield from essay.paragraphs


def texts_of(step: Step) -> Iterator[Phrase]:
    """The texts of one step, without those of the steps inside it."""
    match step:
        case Item():
            yield from (challenge.phrase for challenge in step.challenges)
            if step.response is not None:
                yield step.response
            yield from step.detail
        case Notice(phrase=text) | Group(title=text) | Repeat(until=text):
            yield text
        case Branch(arms):
            yield from (arm.condition for arm in arms if arm.condition is not None)
        case _:
            pass
