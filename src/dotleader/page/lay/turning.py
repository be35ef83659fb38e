"""Rows over faces: where the page is turned."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import accumulate

from dotleader.page.lay.outline import Hold
from dotleader.page.lay.rows import Row

_FULL = (3, 5)
"""A face is filled at least so far before a better place to turn is taken, unless all the rest then is on the next."""


def tops_of(rows: Sequence[Row], air: int) -> list[int]:
    """Where each row would begin if all stood on one endless face; `air` is what the pitch leaves between slots."""
    steps = (row.gap + row.air * air // 1000 + (rows[at - 1].height if at else 0) for at, row in enumerate(rows))
    return list(accumulate(steps))


def height_of(rows: Sequence[Row], tops: Sequence[int], start: int, end: int) -> int:
    """From the top of the first row to the bottom of the last, `end` excluded."""
    return tops[end - 1] + rows[end - 1].height - tops[start] if end > start else 0


def turns(rows: Sequence[Row], tops: Sequence[int], room: int, foot: int, head: Callable[[int], int]) -> list[int]:
    """The first row of each face.

    `room` is a face's height, `foot` what a face keeps free that goes on, and `head(at)` what stands above
    row `at` where a further face begins with it. Each face takes one row at least.
    """
    starts = [0]
    while True:
        start = starts[-1]
        space = room - (head(start) if start else 0)
        if start + 1 >= len(rows) or height_of(rows, tops, start, len(rows)) <= space:
            return starts
        limit = start + 1
        while limit < len(rows) - 1 and height_of(rows, tops, start, limit + 1) <= space - foot:
            limit += 1
        starts.append(_turn(rows, tops, start, limit, lambda at: room - head(at)))


def _turn(rows: Sequence[Row], tops: Sequence[int], start: int, limit: int, space: Callable[[int], int]) -> int:
    """The best row at or before `limit` to begin the next face with: so that it is the last, then at a group."""

    def cost(at: int) -> tuple[int, int]:
        return rows[at].hold, -at

    share, whole = _FULL
    enough = height_of(rows, tops, start, limit) * share // whole
    places = range(start + 1, limit + 1)
    full = [at for at in places if height_of(rows, tops, start, at) >= enough]
    good = [at for at in places if rows[at].hold < Hold.KEEP]
    if not good:
        return max((at for at in full if rows[at].hold < Hold.MEMORY), default=limit)
    last = [at for at in good if height_of(rows, tops, at, len(rows)) <= space(at)]
    if last:
        return min(last, key=cost)
    return min((at for at in full if rows[at].hold < Hold.KEEP), key=cost, default=good[-1])
