"""How leaves stand on a sheet of paper, the same on every sheet. Whole micrometres, from the upper left corner.

A sheet always stands upright. Leaves that fit better across are turned on it instead of the sheet, because turning
about the long edge, or the short one, then always means the same (`sheet.duplex`). Drivers differ in how they turn a
page that lies across.
"""

from __future__ import annotations

from functools import lru_cache

from dotleader.handbook.stocks.measures import MARK_LENGTH, MARK_OFFSET, PRINTABLE_MARGIN, fills, may_fill, sides_around
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.record import record

GUTTER = 2 * MARK_OFFSET + MARK_LENGTH
"""Between two leaves: one crop mark, off the trim of both, serves both."""


@record
class Slot:
    """Where a leaf's front stands on the front of a sheet: a rectangle, and the turn counter-clockwise in it."""

    x: int
    y: int
    w: int
    h: int
    turn: int


@record
class Imposition:
    """`slots` in the order in which leaves are laid down. `filling` leaves share their cuts with each other and with
    the edge of the paper: there is neither bleed nor waste, and no mark can stand beside them. `margin` is what the
    printer leaves unprinted along the paper's edges."""

    paper: tuple[int, int]
    slots: tuple[Slot, ...]
    filling: bool
    margin: int = PRINTABLE_MARGIN


@lru_cache(maxsize=64)
def imposition(stock: Stock) -> Imposition:
    """As many leaves as fit, with their marks or filling the paper; upright where that is as good."""
    best: tuple[int, int, int, bool, int] = (0, 0, 0, False, 0)
    for turned in (False, True):
        width, height = stock.leaf[::-1] if turned else stock.leaf
        margin = stock.printable_margin
        marked = _fit(width, stock.paper[0], margin), _fit(height, stock.paper[1], margin)
        filled = (fills(width, stock.paper[0]), fills(height, stock.paper[1])) if may_fill(stock) else (0, 0)
        for (columns, rows), filling in ((marked, False), (filled, True)):
            if columns * rows > best[0]:
                best = (columns * rows, columns, rows, filling, 90 if turned else 0)
    count, columns, rows, filling, turn = best
    if not count:
        raise ValueError(f"no leaf of {stock.leaf} fits the paper {stock.paper}")  # no stock that was read is so
    return Imposition(stock.paper, _slots(stock, columns, rows, filling, turn), filling, stock.printable_margin)


def _fit(length: int, paper: int, margin: int) -> int:
    return max(0, (paper - 2 * sides_around(margin) + GUTTER) // (length + GUTTER))


def _slots(stock: Stock, columns: int, rows: int, filling: bool, turn: int) -> tuple[Slot, ...]:
    """The grid stands in the middle of the paper, so that the cuts of both sides fall on each other."""
    width, height = stock.leaf[::-1] if turn else stock.leaf
    gutter = 0 if filling else GUTTER
    left = (stock.paper[0] - columns * width - (columns - 1) * gutter) // 2
    top = (stock.paper[1] - rows * height - (rows - 1) * gutter) // 2
    slots = []
    for row in range(rows):
        for column in range(columns):
            x, y = left + column * (width + gutter), top + row * (height + gutter)
            turned = _head_to_foot(turn, *((row, rows) if turn else (column, columns))) if filling else turn
            slots.append(Slot(x, y, width, height, turned))
    return tuple(slots)


def _head_to_foot(turn: int, place: int, count: int) -> int:
    """Leaves that fill the paper turn their right edges, where the edge bands are, to a cut within the paper.

    At the edge of the paper a band would be lost, because no printer prints there. `place` counts from the
    paper's left edge, or from its upper edge where leaves lie across.
    """
    first_half = place < (count + 1) // 2
    if turn:
        return 270 if first_half else 90
    return 0 if first_half else 180


def printable(paper: tuple[int, int], margin: int = PRINTABLE_MARGIN) -> tuple[int, int, int, int]:
    """Left, top, right and bottom of what a printer reaches."""
    return margin, margin, paper[0] - margin, paper[1] - margin


@lru_cache(maxsize=64)
def lost_at_outer_edge(stock: Stock) -> int:
    """How far from the leaf's outer edge a printer does not reach, because that edge is the paper's own."""
    laid = imposition(stock)
    if not laid.filling:
        return 0
    lost = 0
    for slot in laid.slots:
        left, top, right, bottom = printable(laid.paper, laid.margin)
        match slot.turn:
            case 0:
                lost = max(lost, slot.x + slot.w - right)
            case 90:
                lost = max(lost, top - slot.y)
            case 180:
                lost = max(lost, left - slot.x)
            case _:
                lost = max(lost, slot.y + slot.h - bottom)
    return lost
