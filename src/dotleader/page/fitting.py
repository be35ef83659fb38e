"""The largest type, then the widest pitch, at which rows fit on one face; else on two."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from dotleader.page.breaking import length
from dotleader.page.composing import Matter, compose, height_at, starts_at
from dotleader.page.laid import Frame, LaidFace
from dotleader.page.measures import PITCHES, air

_FACES = 2
"""More than two faces are an error that a rule reports."""


class Fitted(NamedTuple):
    """`over` is by how many lines it is too long for one face at the smallest size and pitch."""

    size: int
    faces: tuple[LaidFace, ...]
    over: int


def fitted(sizes: Sequence[int], matter_at: Callable[[int], Matter], frame: Frame) -> Fitted:
    """`sizes` from the largest down; the smallest is taken where nothing fits."""
    room = frame.bottom - frame.top
    tried: list[tuple[int, Matter]] = []
    for size in sizes:
        matter = matter_at(size)
        for pitch in PITCHES:
            if height_at(matter, air(size, pitch)) <= room:
                return Fitted(size, compose(matter, frame, air(size, pitch), [0]), 0)
        tried.append((size, matter))
    smallest, tightest = tried[-1]
    line = length(PITCHES[-1], smallest)
    over = -(-(height_at(tightest, air(smallest, PITCHES[-1])) - room) // line)
    for size, matter in tried:
        for pitch in PITCHES:
            starts = starts_at(matter, frame, air(size, pitch))
            if len(starts) <= _FACES or (size, pitch) == (smallest, PITCHES[-1]):
                return Fitted(size, compose(matter, frame, air(size, pitch), starts), over)
    raise AssertionError("the smallest size and pitch are always taken")
