"""Marks by which a cutter with an eye finds a sheet that was printed: print, then cut.

In numbers, so that any machine can be told of them. Three solid black squares of 4 mm stand on the front of a sheet,
at its upper left, upper right and lower left corner; the lower right corner bears none, so that a sheet that lies the
wrong way round is known. Their outer sides are as far from the edges of the paper as the printer reaches, which is
5 mm unless the stock says something else. With those 5 mm their centres are 7 mm from the edges: on a paper of W by
H mm, counted from its upper left corner, at (7, 7), (W - 7, 7) and (7, H - 7). Around each, 3 mm are free of all else
that is printed, the bleed of the leaves included.

Where leaves fill the paper there are no marks, nor where it is within 10 mm of where the printer reaches that leaves
begin both from the side and from above. Crop marks never come nearer to a mark than 4.5 mm.

A machine that reads nothing but the marks of its own maker needs those; its own program lays them on.
Solid corner marks with clear space about them, outside the trim: common practice, no source; sizes are our own.
"""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.measures import BLEED
from dotleader.page.drawn import Box, Ink, mm
from dotleader.page.extents import Rect
from dotleader.page.imposition import Imposition

MARK = mm(4)
QUIET = mm(3)


def registration_places(laid: Imposition) -> tuple[Rect, ...]:
    """Where the three squares stand on the front of a sheet; none where there is no room for them."""
    near, right, low = laid.margin, *(length - laid.margin - MARK for length in laid.paper)
    places = tuple(Rect(x, y, x + MARK, y + MARK) for x, y in ((near, near), (right, near), (near, low)))
    leaves = [_around(piece, BLEED) for piece in laid.pieces]
    crowded = any(_around(place, QUIET).meets(leaf) for place in places for leaf in leaves)
    return () if laid.filling or crowded else places


def _around(rect: Rect, more: int) -> Rect:
    return Rect(rect.left - more, rect.top - more, rect.right + more, rect.bottom + more)


def registration_marks(laid: Imposition) -> Iterator[Box]:
    for left, top, right, bottom in registration_places(laid):
        yield Box(left, top, right - left, bottom - top, fill=Ink.BLACK)
