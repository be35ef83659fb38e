"""How leaves stand on a sheet of paper, the same on every sheet. Whole micrometres, from the upper left corner.

A sheet always stands upright. Leaves that fit better across are turned on it instead of the sheet, because turning
about the long edge, or the short one, then always means the same (`sheet.duplex`). Drivers differ in how they turn a
page that lies across.

What is cut out in one piece is a leaf, or the two leaves of a folded card. Those stand beside each other, joined at
their binding edges: the first one with its front up, the second one with its back up, so that of the card's four faces
the outer two are on the front of the sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from dotleader.handbook.stocks.measures import (
    MARK_LENGTH,
    MARK_OFFSET,
    PRINTABLE_MARGIN,
    fills,
    leaves_together,
    may_fill,
    open_size,
    sides_around,
)
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.extents import Rect, Turned
from dotleader.source.record import record, replace

GUTTER = 2 * MARK_OFFSET + MARK_LENGTH
"""Between two leaves with cut lines of their own: one crop mark, off the trim of both, serves both."""


@record
class Slot:
    """Where a leaf stands on the front of a sheet: a rectangle, and the turn counter-clockwise in it of the face that
    shows there. That is the leaf's front, or its back where it lies `back_up`."""

    x: int
    y: int
    w: int
    h: int
    turn: int
    back_up: bool = False

    @property
    def rect(self) -> Rect:
        return Rect(self.x, self.y, self.x + self.w, self.y + self.h)


@record
class Imposition:
    """`slots` in the order in which leaves are laid down, `together` of them in each piece.

    `filling` leaves share their cuts with each other and with the edge of the paper: there is neither bleed nor waste,
    and no mark can stand beside them. `margin` is what the printer leaves unprinted along the paper's edges. Leaves
    that are `stepped` have tabs that are cut, and marks for them along their sides.
    """

    paper: tuple[int, int]
    slots: tuple[Slot, ...]
    filling: bool
    margin: int = PRINTABLE_MARGIN
    together: int = 1
    stepped: bool = False

    @property
    def pieces(self) -> tuple[Rect, ...]:
        """What is cut out, in the order of the slots."""
        return united([slot.rect for slot in self.slots], self.together)


def united(leaves: Sequence[Rect], together: int) -> tuple[Rect, ...]:
    """The pieces that leaves make up, `together` of them each."""
    lefts, tops, rights, bottoms = ([leaf[side] for leaf in leaves] for side in range(4))
    return tuple(
        Rect(min(lefts[at:end]), min(tops[at:end]), max(rights[at:end]), max(bottoms[at:end]))
        for at, end in ((at, at + together) for at in range(0, len(leaves), together))
    )


def folds(leaves: Sequence[Rect], together: int) -> tuple[Rect, ...]:
    """Where pieces are folded: the side that two leaves of one have in common, a rectangle without width or height."""
    return tuple(leaves[at].common(leaves[at + 1]) for at in range(0, len(leaves) - 1, together) if together == 2)


@record
class _Grid:
    columns: int
    rows: int
    gutter: int
    filling: bool
    turn: int

    @property
    def count(self) -> int:
        return self.columns * self.rows


@lru_cache(maxsize=64)
def imposition(stock: Stock) -> Imposition:
    """As many leaves as fit, with their marks or filling the paper; upright where that is as good."""
    grid = _best(stock)
    if grid is None:
        raise ValueError(f"no leaf of {stock.leaf} fits the paper {stock.paper}")  # no stock that was read is so
    slots = tuple(_slots(stock, grid))
    together, stepped = leaves_together(stock), stock.recess > 0
    return Imposition(stock.paper, slots, grid.filling, stock.printable_margin, together, stepped)


def pieces_to_a_sheet(stock: Stock, cut_lines: str) -> int:
    """How many leaves, or folded cards, a sheet would take with `shared` or `separate` cut lines; 0 if none fits."""
    grid = _best(replace(stock, cut_lines=cut_lines))
    return grid.count if grid else 0


def _best(stock: Stock) -> _Grid | None:
    marked = [grid for grid in _marked(stock) if grid.count]
    filled = [grid for grid in _filled(stock) if grid.count]
    if marked and stock.folded and stock.cut_lines != "shared":
        filled = []  # the outer edges of its faces would be the paper's own, where bands are lost
    return max((*marked, *filled), key=lambda grid: grid.count, default=None)


def _marked(stock: Stock) -> Iterator[_Grid]:
    """With waste and marks around: leaves apart, or edge to edge where they share their cuts."""
    gutter = 0 if stock.cut_lines == "shared" else GUTTER
    for turn, (width, height) in _ways(stock):
        columns, rows = (
            max(0, (paper - 2 * sides_around(stock.printable_margin) + gutter) // (length + gutter))
            for length, paper in zip((width, height), stock.paper, strict=True)
        )
        yield _Grid(columns, rows, gutter, False, turn)


def _filled(stock: Stock) -> Iterator[_Grid]:
    if not may_fill(stock):
        return
    for turn, (width, height) in _ways(stock):
        yield _Grid(fills(width, stock.paper[0]), fills(height, stock.paper[1]), 0, True, turn)


def _ways(stock: Stock) -> Iterator[tuple[int, tuple[int, int]]]:
    width, height = open_size(stock)
    yield 0, (width, height)
    yield 90, (height, width)


def _slots(stock: Stock, grid: _Grid) -> Iterator[Slot]:
    """The grid stands in the middle of the paper, so that the cuts of both sides fall on each other."""
    width, height = open_size(stock)[::-1] if grid.turn else open_size(stock)
    left = (stock.paper[0] - grid.columns * width - (grid.columns - 1) * grid.gutter) // 2
    top = (stock.paper[1] - grid.rows * height - (grid.rows - 1) * grid.gutter) // 2
    for row in range(grid.rows):
        for column in range(grid.columns):
            turn = grid.turn
            if not grid.gutter and not stock.folded:
                turn = _head_to_foot(grid, *((row, grid.rows) if turn else (column, grid.columns)))
            x, y = left + column * (width + grid.gutter), top + row * (height + grid.gutter)
            yield from _leaves(stock, Slot(x, y, width, height, turn))


def _leaves(stock: Stock, piece: Slot) -> Iterator[Slot]:
    """The leaves of a piece: of a folded card the one with the card's front and, beyond the fold, the other one."""
    if not stock.folded:
        yield piece
        return
    width, height = stock.leaf
    right, down = (width, 0) if stock.bound_at == "left" else (0, height)
    for x, y, back_up in ((right, down, False), (0, 0, True)):
        half = on_sheet(piece).rect(x, y, x + width, y + height)
        yield Slot(half.left, half.top, half.right - half.left, half.bottom - half.top, piece.turn, back_up)


def _head_to_foot(grid: _Grid, place: int, count: int) -> int:
    """Leaves that touch turn their right edges, where the edge bands are, away from where a band would be lost.

    Where leaves fill the paper, the bands stand at a cut within it, because no printer prints at its edge. Where there
    is waste around leaves, the bands stand there and bleed into it. `place` counts from the paper's left edge, or from
    its upper edge where leaves lie across.
    """
    to_start, to_end = (180, 0) if not grid.turn else (90, 270)  # of the paper: where the right edge is turned
    if grid.filling:
        return to_end if place < (count + 1) // 2 else to_start
    if count == 1:
        return grid.turn
    return to_start if place < count // 2 else to_end


def on_sheet(slot: Slot) -> Turned:
    """From the coordinates of a face to those of the sheet."""
    match slot.turn:
        case 0:
            return Turned(slot.x, slot.y, 0)
        case 90:
            return Turned(slot.x, slot.y + slot.h, 90)
        case 180:
            return Turned(slot.x + slot.w, slot.y + slot.h, 180)
        case _:
            return Turned(slot.x + slot.w, slot.y, 270)


def printable(paper: tuple[int, int], margin: int = PRINTABLE_MARGIN) -> tuple[int, int, int, int]:
    """Left, top, right and bottom of what a printer reaches."""
    return margin, margin, paper[0] - margin, paper[1] - margin


@lru_cache(maxsize=64)
def lost_at_outer_edge(stock: Stock) -> int:
    """How far from the leaf's outer edge a printer does not reach, because that edge is the paper's own."""
    laid = imposition(stock)
    if not laid.filling:
        return 0
    # what is lost of a leaf that lies back up is lost of the one beyond the fold, too
    return max(0, *(_lost(laid, slot) for slot in laid.slots if not slot.back_up))


def _lost(laid: Imposition, slot: Slot) -> int:
    left, top, right, bottom = printable(laid.paper, laid.margin)
    match slot.turn:
        case 0:
            return slot.x + slot.w - right
        case 90:
            return top - slot.y
        case 180:
            return left - slot.x
        case _:
            return slot.y + slot.h - bottom
