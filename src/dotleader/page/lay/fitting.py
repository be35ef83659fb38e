"""The largest type, then the widest pitch, at which rows fit on one face; else on two."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

from dotleader.page.laid import Frame, LaidFace
from dotleader.page.lay.composing import Matter, compose, height_at, starts_at
from dotleader.page.lay.measures import PITCHES, air
from dotleader.page.lay.outline import Hold
from dotleader.page.type.breaking import length

_FACES = 2
"""More than two faces are an error that a rule reports."""


class Fitted(NamedTuple):
    """`over` is by how many lines it is too long for one face at the smallest size and pitch."""

    size: int
    faces: tuple[LaidFace, ...]
    over: int


def fits(smallest: int, matter_at: Callable[[int], Matter], frame: Frame) -> bool:
    """Whether rows fit on one face at that size and the tightest pitch."""
    return height_at(matter_at(smallest), air(smallest, PITCHES[-1])) <= frame.bottom - frame.top


def fitted(sizes: Sequence[int], matter_at: Callable[[int], Matter], frame: Frame) -> Fitted:
    """`sizes` from the largest down. On two faces, where the page is turned goes before how large the type is."""
    room = frame.bottom - frame.top
    tried: list[tuple[int, Matter]] = []
    for size in sizes:
        matter = matter_at(size)
        for pitch in PITCHES:
            if height_at(matter, air(size, pitch)) <= room:
                return Fitted(size, compose(matter, frame, air(size, pitch), [0]), 0)
        tried.append((size, matter))
    smallest, tightest = tried[-1]
    least = air(smallest, PITCHES[-1])
    over = -(-(height_at(tightest, least) - room) // length(PITCHES[-1], smallest))
    best = (smallest, tightest, least, starts_at(tightest, frame, least))
    if len(best[-1]) <= _FACES:
        trials = ((size, matter, air(size, pitch)) for size, matter in tried for pitch in PITCHES)
        best = _best_turned(trials, frame) or best
    size, matter, taken, starts = best
    return Fitted(size, compose(matter, frame, taken, starts), over)


def _best_turned(trials: Iterable[tuple[int, Matter, int]], frame: Frame) -> tuple[int, Matter, int, list[int]] | None:
    """The first trial that is on two faces and turned at a group; where none is, at the outermost level there is."""
    best: tuple[int, Matter, int, list[int]] | None = None
    lowest = sys.maxsize
    for size, matter, taken in trials:
        starts = starts_at(matter, frame, taken)
        cost = _cost(matter.rows[starts[-1]].hold)
        if len(starts) <= _FACES and cost < lowest:
            best, lowest = (size, matter, taken, starts), cost
            if cost == _cost(Hold.GROUP):
                break
    return best


def _cost(hold: int) -> int:
    """Of turning the page there: least at a group, then by the level of the branch."""
    return 0 if hold == Hold.GROUP else 1 + hold // Hold.LEVEL
