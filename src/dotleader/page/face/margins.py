"""Where the frame stands on each side of a leaf."""

from __future__ import annotations

from dotleader.handbook.stocks.measures import OUTER_MARGIN, binding_margin
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.face.placement import Side
from dotleader.page.frames import FOOT_MARGIN, frame_width
from dotleader.source.record import record


@record
class Margins:
    """Where the frame stands on one side of a leaf: its left edge, and how far it is moved down from its own place.

    `outer_right`: whether the edge with band and thumb mark is the right one. `upside`: whether heights along that
    edge count from the foot, so that the marks of both sides fall on each other.
    """

    left: int
    down: int
    outer_right: bool
    upside: bool


def margins(stock: Stock, side: Side) -> Margins:
    front = side is Side.FRONT
    if stock.bound_at == "left":
        outer = stock.leaf[0] - binding_margin(stock) - frame_width(stock)
        return Margins(binding_margin(stock) if front else outer, 0, front, False)
    moved = 0 if front else FOOT_MARGIN - binding_margin(stock)
    return Margins(OUTER_MARGIN, moved, True, not front)
