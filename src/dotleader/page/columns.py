"""The columns in which responses stand: one for each block, as far left as its challenges allow."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from dotleader.page.measures import (
    COLUMN_FIRST,
    COLUMN_SHARE,
    COLUMN_STEP,
    COLUMNS_JOIN,
    DOT,
    DOT_PITCH,
    LEADER_GAP,
    LONGEST_LEADER,
    SHORTEST_DOTS,
)

_SHORTEST = DOT_PITCH * SHORTEST_DOTS
_LONGEST = (LONGEST_LEADER - DOT) // DOT_PITCH * DOT_PITCH + DOT_PITCH


class Challenge(NamedTuple):
    """What a column has to leave room for: the block, where its text begins, where the challenge ends on one line."""

    block: int
    left: int
    end: int


def columns(challenges: Sequence[Challenge], width: int) -> dict[int, int]:
    """Each block's column. Columns no further than `COLUMNS_JOIN` left of another join it.

    A column never stands so far right that a leader would be too long; then the long challenges wrap.
    """
    wanted: dict[int, int] = {}
    limits: dict[int, int] = {}
    for block, left, end in challenges:
        first = first_dot(end)
        top = _rightmost(left, width)
        wanted[block] = max(wanted.get(block, 0), min(_on_grid(first + _SHORTEST), top))
        limits[block] = min(limits.get(block, top), max(first + _LONGEST, _on_grid(left)))
    found: dict[int, int] = {}
    left_over = sorted(wanted, key=lambda block: -wanted[block])
    while left_over:
        rightmost = wanted[left_over[0]]
        joined = [block for block in left_over if wanted[block] >= rightmost - COLUMNS_JOIN]
        column = _down_to_grid(min(rightmost, *(limits[block] for block in joined)))
        found.update(dict.fromkeys(joined, column))
        left_over = left_over[len(joined) :]
    return found


def first_dot(end: int) -> int:
    """The centre of the first dot after a challenge that ends there: on the grid that all lines share."""
    return -(-(end + LEADER_GAP + DOT // 2) // DOT_PITCH) * DOT_PITCH


def leader(end: int, column: int) -> tuple[int, int] | None:
    """The centres of the first and last dot between a challenge's end and a column; none where none fits."""
    first = max(first_dot(end), column - _LONGEST)
    last = column - DOT_PITCH
    return (first, last) if first <= last else None


def challenge_end(column: int) -> int:
    """How far right the line of a challenge may go that the leader follows."""
    return column - _SHORTEST - LEADER_GAP - DOT // 2


def _rightmost(left: int, width: int) -> int:
    """The last column for a text that begins at `left`, with room for a response right of it."""
    share, whole = COLUMN_SHARE
    top = _down_to_grid(width * share // whole)
    return min(max(top, _on_grid(left + _SHORTEST + DOT_PITCH)), max(0, width - width // 4))


def _on_grid(x: int) -> int:
    """The first column that is not left of x."""
    at_least = max(x, COLUMN_FIRST)
    return COLUMN_FIRST + -(-(at_least - COLUMN_FIRST) // COLUMN_STEP) * COLUMN_STEP


def _down_to_grid(x: int) -> int:
    return COLUMN_FIRST + (x - COLUMN_FIRST) // COLUMN_STEP * COLUMN_STEP
