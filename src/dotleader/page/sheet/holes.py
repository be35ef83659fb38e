"""Where the holes are on a face as it is read, counted from the edges that its leaf has.

Where leaves fill their paper, the paper may be up to 1.5 mm longer than they are (two A5 leave 1 mm of A4), and what
is left over stays on the leaves: there the edge of a leaf is the paper's own. ISO 838 has the distance of the holes
counted from the edge, and their middle on that of the sheet that is filed.
"""

from __future__ import annotations

from dotleader.handbook.stocks.measures import FILLING
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.extents import Rect, Turned
from dotleader.page.face.placement import Side
from dotleader.page.imposition import Slot, on_sheet
from dotleader.page.sheet.cut_shapes import Point


def hole_centres(stock: Stock, side: Side, leaf: Rect | None = None) -> tuple[Point, ...]:
    """In the coordinates of a face; those of the back are those of the front, seen from behind.

    `leaf` is as far as it reaches once it is cut, where that is not its nominal size.
    """
    left, top, right, bottom = leaf or Rect(0, 0, *stock.leaf)
    across, front = stock.hole_edge, side is Side.FRONT
    if stock.bound_at == "left":
        x, down = left + across if front else right - across, (top + bottom - stock.leaf[1]) // 2
        return tuple((x, at + down) for at in stock.holes)
    y, over = top + across if front else bottom - across, (left + right - stock.leaf[0]) // 2
    return tuple((at + over, y) for at in stock.holes)


def as_cut(stock: Stock, slot: Slot) -> Rect:
    """How far a leaf in this slot reaches once it is cut, in the coordinates of its face."""
    place = on_sheet(slot)
    left, top, right, bottom = up_to_paper(slot.rect, stock.paper)
    back = Turned(0, 0, (360 - place.turn) % 360)
    return back.rect(left - place.x, top - place.y, right - place.x, bottom - place.y)


def up_to_paper(piece: Rect, paper: Point) -> Rect:
    """A leaf or folded card on a sheet, each side that is as good as the paper's edge moved there."""
    left, top, right, bottom = piece
    return Rect(
        0 if left <= FILLING else left,
        0 if top <= FILLING else top,
        paper[0] if paper[0] - right <= FILLING else right,
        paper[1] if paper[1] - bottom <= FILLING else bottom,
    )
