"""The box of memory items."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.drawn import Box, Drawn, Ink, Line, mm
from dotleader.page.lay.inking import Placed
from dotleader.page.lay.measures import MEMORY_RULE

_BREAK = mm(1.6)  # between the rule of the box and the words that break it


def memory_box(rows: Sequence[Placed], left: int, width: int, opened: bool) -> Iterator[Drawn]:
    """The ground, and the rule round it; where `opened`, the first row's words break its top.

    Where the page is turned inside it, for it is longer than a face, the rule stands outside the rows.
    """
    half = MEMORY_RULE // 2
    top = rows[0].middle if opened else rows[0].top - half
    bottom = rows[-1].bottom + (half if rows[-1].row.pieces else -half)
    x, right = left + half, width - half
    yield Box(x, top, right - x, bottom - top, fill=Ink.MEMORY)
    corners = ((x, top), (x, bottom), (right, bottom), (right, top))
    if not opened:
        yield Line(corners, MEMORY_RULE, closed=True)
        return
    words = rows[0].row.pieces[0]
    begin, end = max(x, words.x - _BREAK), min(right, rows[0].row.end + _BREAK)
    yield Line(((begin, top), *corners, (end, top)), MEMORY_RULE)
