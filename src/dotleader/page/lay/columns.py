"""The columns in which responses stand: one for each block, as far left as its challenges allow."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from dotleader.page.lay.measures import (
    COLUMN_FAR_SHARE,
    COLUMN_FIRST,
    COLUMN_SHARE,
    COLUMN_STEP,
    COLUMNS_JOIN,
    DOT,
    DOT_PITCH,
    LEADER_GAP,
    LONGEST_LEADER,
    NARROW,
    NARROW_DOTS,
    NARROW_STEP,
    SHORTEST_DOTS,
)

_LONGEST = (LONGEST_LEADER - DOT) // DOT_PITCH * DOT_PITCH + DOT_PITCH


class Need(NamedTuple):
    """What an item asks of its block's column.

    Its text begins at `left`; its challenge ends at `end`, or at `parted_end` when it is on two lines.
    Its response stays on one line in a column up to `response_until`.
    """

    block: int
    left: int
    end: int
    parted_end: int
    response_until: int


class _Block(NamedTuple):
    number: int
    column: int
    until: int  # how far right it can stand: no leader too long, no further response on two lines


def columns(needs: Sequence[Need], width: int) -> dict[int, int]:
    """Each block's column.

    Columns no further than `COLUMNS_JOIN` left of another join it, so that the eye does not zigzag, unless a response
    would be broken by it or a leader be too long.
    """
    by_block: defaultdict[int, list[Need]] = defaultdict(list)
    for need in needs:
        by_block[need.block].append(need)
    left_over = sorted((_own(wants, width) for wants in by_block.values()), key=lambda one: -one.column)
    found: dict[int, int] = {}
    while left_over:
        column = left_over[0].column
        joined = {one.number for one in left_over if column - COLUMNS_JOIN <= one.column and column <= one.until}
        found.update(dict.fromkeys(joined, column))
        left_over = [one for one in left_over if one.number not in joined]
    return found


def column_for(end: int, width: int) -> int:
    """The first column that leaves room for the shortest leader after a challenge that ends there.

    `width` is that of the whole text, here and below.
    """
    return _on_grid(first_dot(end) + _shortest(width), width)


def usual_column(width: int) -> int:
    """The rightmost column there is, but for short responses."""
    return _part(width, COLUMN_SHARE)


def first_dot(end: int) -> int:
    """The centre of the first dot after a challenge that ends there: on the grid that all lines share."""
    return -(-(end + LEADER_GAP + DOT // 2) // DOT_PITCH) * DOT_PITCH


def leader(end: int, column: int) -> tuple[int, int] | None:
    """The centres of the first and last dot between a challenge's end and a column; none where none fits."""
    first = max(first_dot(end), column - _LONGEST)
    last = column - DOT_PITCH
    return (first, last) if first <= last else None


def challenge_end(column: int, width: int) -> int:
    """How far right the line of a challenge may go that the leader follows."""
    return column - _shortest(width) - LEADER_GAP - DOT // 2


def _own(needs: Sequence[Need], width: int) -> _Block:
    """The column of a block by itself.

    Further right than usual where that spares a challenge its second line and leaves each response on one.
    """
    usual = _rightmost(needs, usual_column(width), width)
    far = _rightmost(needs, _part(width, COLUMN_FAR_SHARE), width)
    longest = _longest(needs, width)
    until = min(longest, *(need.response_until for need in needs if need.response_until >= usual), far)
    ends = [need.end if column_for(need.end, width) <= until else need.parted_end for need in needs]
    if max(column_for(end, width) for end in ends) > until:
        ends = [need.end if column_for(need.end, width) <= usual else need.parted_end for need in needs]
    wanted = max(COLUMN_FIRST, *(column_for(end, width) for end in ends))
    column = wanted if wanted <= until else min(wanted, usual, longest)
    column = max(_down_to_grid(column, width), 0)
    kept = [need.response_until for need in needs if need.response_until >= column]
    return _Block(needs[0].block, column, max(column, min(longest, far, *kept)))


def _longest(needs: Iterable[Need], width: int) -> int:
    """The rightmost column at which no leader is too long."""
    return min(max(first_dot(need.end) + _LONGEST, need.left + _shortest(width)) for need in needs)


def _rightmost(needs: Sequence[Need], usual: int, width: int) -> int:
    """A column at or right of `usual` that leaves room for a leader in a deep branch, and for a response."""
    deep = _on_grid(max(need.left for need in needs) + _shortest(width) + DOT_PITCH, width)
    return min(max(usual, deep), width - width // 4)


def _part(width: int, share: tuple[int, int]) -> int:
    return _down_to_grid(width * share[0] // share[1], width)


def _shortest(width: int) -> int:
    return DOT_PITCH * (NARROW_DOTS if width < NARROW else SHORTEST_DOTS)


def _step(width: int) -> int:
    return NARROW_STEP if width < NARROW else COLUMN_STEP


def _on_grid(x: int, width: int) -> int:
    """The first place of the grid that is not left of x."""
    step = _step(width)
    return COLUMN_FIRST + -(-(x - COLUMN_FIRST) // step) * step


def _down_to_grid(x: int, width: int) -> int:
    step = _step(width)
    return COLUMN_FIRST + (x - COLUMN_FIRST) // step * step
