"""The white between parts: how much stands above each, by what comes before it."""

from __future__ import annotations

from typing import NamedTuple, assert_never

from dotleader.page.drawn import mm
from dotleader.page.lay.measures import OPENING, SLOT
from dotleader.page.lay.outline import (
    Completion,
    Condition,
    Gate,
    Heading,
    ItemLine,
    Leave,
    MemoryEdge,
    NoticeLine,
    Part,
    Sign,
)
from dotleader.page.type.breaking import length

_FITTED = 200
"""Over the line that says for which option an item stands, so that it reads with the item below, not above."""

_RULED = 150
"""Over a rule, in thousandths of the size: it parts by itself, and 22 items in five groups come on one face."""


class Space(NamedTuple):
    """`gap` micrometres, and `air` thousandths of what the pitch leaves between two slots."""

    gap: int
    air: int


def space_above(before: Part | None, part: Part, size: int) -> Space:
    if before is None:
        return _first(part)
    if before.what is MemoryEdge.FOOT and not isinstance(part.what, Heading):
        return _opened(size, 600)
    what = part.what
    apart = before.level > part.level or (isinstance(what, ItemLine) and what.opened)
    match what:
        case ItemLine() | Leave() | NoticeLine() if apart:
            return _opened(size, 1000)
        case ItemLine(fitted=(_, *_)) if isinstance(before.what, ItemLine):
            return Space(length(_FITTED, size), 1000)
        case ItemLine() | Leave():
            return _after(before, size)
        case Condition():
            tight = isinstance(before.what, Condition | Heading) and before.level <= part.level
            return Space(0, 600) if tight else _opened(size, 1000)
        case NoticeLine():
            return Space(mm(0.8), 300 if isinstance(before.what, Heading | NoticeLine) else 700)
        case Sign():
            return Space(0, 300) if isinstance(before.what, ItemLine) else Space(mm(0.8), 500)
        case MemoryEdge():
            return Space(0, 500) if what is MemoryEdge.FOOT else _opened(size, 500)
        case Heading() | Completion():
            return Space(length(_RULED, size), 1500)
        case Gate():
            return _opened(size, 600)
        case _:
            assert_never(what)


def _first(part: Part) -> Space:
    match part.what:
        case MemoryEdge():
            return Space(mm(0.9), 0)
        case Heading() | Completion():
            return Space(mm(1.6), 0)
        case NoticeLine():
            return Space(mm(1.8), 0)
        case _:
            return Space(mm(0.8), 500)


def _after(before: Part, size: int) -> Space:
    match before.what:
        case Heading():
            return Space(0, 100)
        case Condition() | MemoryEdge():
            return Space(0, 500)
        case NoticeLine():
            return Space(mm(0.8), 700)
        case Sign() | Leave() | Gate():
            return _opened(size, 800)
        case _:
            return Space(0, 1000)


def _opened(size: int, air: int) -> Space:
    """Set apart by `OPENING` of a pitch, over the usual air."""
    return Space(length(SLOT, size) * OPENING // 1000, OPENING + air)
