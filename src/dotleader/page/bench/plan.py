"""A plan for punching. Data only; lengths in whole micrometres."""

from __future__ import annotations

from itertools import pairwise
from typing import TypeAlias

from dotleader.handbook.punch import Punch
from dotleader.source.record import record


@record
class Pattern:
    """The holes that are wanted along one edge of what is punched: a leaf, or the pouch around it.

    `centres` ascend from the start of the edge, which is the head of a leaf bound at the left, and the left end of
    one bound at the top, both as its front is read. `inset` is their distance from the edge.
    """

    edge: int
    centres: tuple[int, ...]
    diameter: int
    inset: int
    bound_at: str  # "left" | "top"
    filmed: bool = False  # the edge is the pouch's

    @property
    def gaps(self) -> tuple[int, ...]:
        return tuple(after - before for before, after in pairwise(self.centres))


@record
class Stroke:
    """One stroke on every leaf.

    `start_at_stop` says which end of the edge meets the stop, `front_up` which face is seen. `stop` is the distance
    from the stop (or from the mark that stands for it) to the hole of the punch that is nearest to it, below zero where
    the leaf ends between the holes. `makes` are the holes of the pattern by their numbers from 0, in ascending order.
    """

    stop: int
    start_at_stop: bool
    front_up: bool
    makes: tuple[int, ...]


@record
class Plan:
    """Strokes in their order. `off` is the most that a hole comes from its place; never above `punching.TOLERANCE`."""

    pattern: Pattern
    punch: Punch
    strokes: tuple[Stroke, ...]
    off: int


@record
class NoPlan:
    """A pattern that a punch cannot make, why, and what it can.

    `nearest` has the plan for the pattern whose spacing changes least, and after it the one that changes least among
    those with fewer strokes; none where there is neither.
    """

    pattern: Pattern
    punch: Punch
    reasons: tuple[str, ...]
    nearest: tuple[Plan, ...]


Punching: TypeAlias = Plan | NoPlan
