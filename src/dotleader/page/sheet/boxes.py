"""The trim and bleed box of a side of a sheet (ISO 32000-1, 14.11.2), for whoever trims by them.

A page has one of each. So they are given where one piece is cut out of the sheet: a leaf, or a folded card of two.
"""

from __future__ import annotations

from typing import NamedTuple, TypeAlias

from dotleader.handbook.stocks.measures import BLEED
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.extents import Rect
from dotleader.page.sheet.sheets import SheetSide

PageBox: TypeAlias = tuple[int, int, int, int]
"""x, y, width and height, whole micrometres from the upper left corner, y down."""


class Boxes(NamedTuple):
    trim: PageBox | None = None
    bleed: PageBox | None = None


def boxes_of(side: SheetSide, stock: Stock) -> Boxes:
    """The bleed box encloses the trim box, and neither reaches beyond the paper."""
    if len(side.leaves) != 1 + stock.folded:
        return Boxes()
    rects = [leaf.rect for leaf in side.leaves]
    left, top = min(rect.left for rect in rects), min(rect.top for rect in rects)
    right, bottom = max(rect.right for rect in rects), max(rect.bottom for rect in rects)
    if (right - left) * (bottom - top) != sum((r.right - r.left) * (r.bottom - r.top) for r in rects):
        return Boxes()  # two pieces
    bleed = Rect(left - BLEED, top - BLEED, right + BLEED, bottom + BLEED).common(Rect(0, 0, *stock.paper))
    return Boxes(
        (left, top, right - left, bottom - top),
        (bleed.left, bleed.top, bleed.right - bleed.left, bleed.bottom - bleed.top),
    )
