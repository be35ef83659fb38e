"""Crop marks for tabs that are cut by hand: where the outer edge is cut back, and where the tab begins and ends."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.measures import MARK_LENGTH, MARK_OFFSET, body_of_leaf
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.face.placement import Side
from dotleader.page.face.thumb_index import slot_span
from dotleader.page.imposition import Slot, on_sheet
from dotleader.page.sheet.cut_shapes import Point


def tab_marks(stock: Stock, side: Side, slot: Slot, tab: int) -> Iterator[tuple[Point, Point]]:
    """The ends of the marks on the sheet, the left or upper one first; none where tabs are not cut.

    They stand as far off the leaf as other crop marks.
    """
    if not stock.recess:
        return
    near, far = MARK_OFFSET, MARK_OFFSET + MARK_LENGTH
    width, height = stock.leaf
    edge, _ = body_of_leaf(stock)
    ends = slot_span(stock, tab)
    begin, end = width + near, width + far
    if side is Side.BACK and stock.bound_at == "left":
        edge, begin, end = width - edge, -far, -near
    if side is Side.BACK and stock.bound_at == "top":
        ends = height - ends[0], height - ends[1]
    marks = [((edge, -far), (edge, -near)), ((edge, height + near), (edge, height + far))]
    marks += [((begin, y), (end, y)) for y in ends]
    there = on_sheet(slot)
    for one, other in marks:
        first, last = sorted((there.point(*one), there.point(*other)))
        yield first, last
