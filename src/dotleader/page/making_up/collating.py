"""The leaves in the order of binding: front and back of each as thumbnails, their labels below them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.handbook.stocks.measures import leaves_together
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Drawn, Font, Group, Text, mm
from dotleader.page.extents import Rect
from dotleader.page.face.faces import Face
from dotleader.page.making_up.scaled import Scale
from dotleader.page.making_up.thumbnails import FINEST, thumbnail
from dotleader.page.type.metrics import ascent, cap_height, width
from dotleader.source.record import record

WIDEST, NARROWEST = mm(27), mm(10)
"""Of a thumbnail."""

SMALL_ENOUGH = mm(16)
"""Rather than smaller than this, thumbnails begin on a page of their own."""

_STEP = mm(0.5)
_FOLD = mm(1)
_ASIDE = mm(5)
_BELOW = mm(3.2)
_LABEL = 7_000
_LABEL_ROOM = mm(3.4)
_WORD = 6_000
_BLANK = "blank"


@record
class Grid:
    """Thumbnails so large, so many leaves to a row; `pages` has where a page's first row stands and its leaves."""

    scale: Scale
    columns: int
    cell: tuple[int, int]
    pages: tuple[tuple[int, range], ...]


def grid_for(leaves: int, stock: Stock, area: Rect, first_top: int, own_page: bool) -> Grid | None:
    """The largest thumbnails with which all leaves find room between `first_top` and the lower end of an area.

    None where that would make them too small beside other matter. On pages of their own there is always a grid, over
    several of them if need be.
    """
    most = len(_grid(leaves, stock, area, first_top, NARROWEST).pages) if own_page else 1
    for across in range(WIDEST, (NARROWEST if own_page else SMALL_ENOUGH) - 1, -_STEP):
        grid = _grid(leaves, stock, area, first_top, across)
        if len(grid.pages) <= most and grid.pages[0][1]:
            return grid
    return None


def _grid(leaves: int, stock: Stock, area: Rect, first_top: int, across: int) -> Grid:
    scale = Scale(across, stock.leaf[0], FINEST)
    down = scale.of(stock.leaf[1])
    wide, high = 2 * across + _FOLD + _ASIDE, down + _LABEL_ROOM + _BELOW
    together = leaves_together(stock)
    columns = max(1, (area.right - area.left + _ASIDE) // wide // together) * together  # a folded card on one row
    pages: list[tuple[int, range]] = []
    done, top = 0, first_top
    while done < leaves or not pages:
        rows = max(1 if pages else 0, (area.bottom - top + _BELOW) // high)  # a page of its own has one at least
        end = min(leaves, done + rows * columns)
        pages.append((top, range(done, end)))
        done, top = end, area.top
    return Grid(scale, columns, (wide, high), tuple(pages))


def draw_leaves(grid: Grid, place: int, faces: Sequence[Face], stock: Stock, area: Rect) -> Iterator[Drawn]:
    """The thumbnails of one page of the grid. `faces` are all of the book, fronts and backs in turn."""
    top, leaves = grid.pages[place]
    wide, high = grid.cell
    across = grid.scale.of(stock.leaf[0])
    for number, leaf in enumerate(leaves):
        row, column = divmod(number, grid.columns)
        x, y = area.left + column * wide, top + row * high
        if not column:
            yield _count(leaf // leaves_together(stock) + 1, area.left, y)
        for face, left in ((faces[2 * leaf], x), (faces[2 * leaf + 1], x + across + _FOLD)):
            yield Group(left, y, (thumbnail(face, stock, grid.scale), *_named(face, grid.scale, stock)))


def _count(leaf: int, right: int, top: int) -> Text:
    """The number of a row's first leaf, or folded card, in the margin."""
    said = str(leaf)
    x = right - mm(1.6) - width(said, Font.REGULAR, _WORD)
    return Text(x, top + cap_height(Font.REGULAR, _WORD), said, _WORD)


def _named(face: Face, scale: Scale, stock: Stock) -> Iterator[Text]:
    """The label below it; on a face that is left blank a word that says so."""
    across, down = scale.of(stock.leaf[0]), scale.of(stock.leaf[1])
    base = down + mm(0.6) + ascent(Font.BOLD, _LABEL)
    yield Text(0, base, str(face.label), _LABEL, Font.BOLD)
    if face.blank:
        long = width(_BLANK, Font.REGULAR, _WORD)
        yield Text((across - long) // 2, down // 2, _BLANK, _WORD)
