"""What is said at the end of a print of leaves and cards: folded, cut apart or together, with holes to seal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.handbook.stocks.fault import millimetres
from dotleader.handbook.stocks.measures import leaves_together
from dotleader.page.imposition import imposition, pieces_to_a_sheet
from dotleader.report.summary import counted
from dotleader.tools.printing.in_lines import in_lines

if TYPE_CHECKING:  # a book is made only where it is printed
    from dotleader.handbook.stocks.stock import Stock
    from dotleader.page.face.book import Book


def pieces(book: Book) -> str:
    """What there is to cut out: `6 leaves`, `2 folded cards`."""
    return of_pieces(book.stock, len(book.faces) // 2 // leaves_together(book.stock))


def of_pieces(stock: Stock, count: int) -> str:
    """So many of what is cut out of a sheet."""
    return counted(count, "folded card") if stock.folded else counted(count, "leaf", "leaves")


def of_stock(book: Book, arrangements: int) -> Iterator[str]:
    """What is to be known of a stock that is folded or has tabs, or whose holes are sealed, in lines as wide as the
    terminal. `arrangements` are those that have a pair of files to cut by.
    """
    yield from in_lines((*_of_stock(book), *_of_tabs(book.stock, arrangements)))


def _of_stock(book: Book) -> Iterator[str]:
    stock = book.stock
    if stock.folded:
        yield from _folded(book)
    if stock.relief:
        cut, punched = stock.hole_diameter + 2 * stock.relief, stock.hole_diameter
        yield (
            f"The holes in the paper are {millimetres(cut)} wide, {millimetres(stock.relief)} more all round than they "
            f"are punched ({millimetres(punched)}), so that film seals around them: cut them before laminating."
        )


def _folded(book: Book) -> Iterator[str]:
    each = 2 * leaves_together(book.stock)
    used = sum(not face.blank for face in book.faces)
    several = len(book.faces) // each
    if several > 1:
        yield (
            f"A folded card has {each} faces, and these are {used}: they make {several} cards, each folded by itself "
            "and none inside another."
        )
    yield "A folded card has its cards alone: no control leaf, no index, no contents and no tables of numbers."
    edge = "left" if book.stock.bound_at == "left" else "upper"
    where = "where the setting-up sheet says" if imposition(book.stock).filling else "from dashes to dashes"
    yield f"Score and fold {where}, the front of the sheet outside; the fold is the {edge} edge of face 1."


def _of_tabs(stock: Stock, arrangements: int) -> Iterator[str]:
    if not stock.recess:
        return
    if arrangements == 1:
        yield "The tabs of all sheets are in the same places, and one pair of files cuts them."
    else:
        yield (
            f"Tabs are cut in {arrangements} ways, each by a pair of files of its own: sheets whose leaves have their "
            "tabs in the same places share one."
        )
    if stock.pouch != (0, 0):
        yield "They are cut into the paper. The film around them stays whole, and they are seen through it."


def of_cut_lines(stock: Stock) -> str:
    """How many leaves a sheet takes with shared cut lines and with separate ones."""
    takes = []
    for name in ("shared", "separate"):
        count = pieces_to_a_sheet(stock, name)
        chosen = ", as here" if stock.cut_lines == name else ""
        takes.append(f"with {name} cut lines {of_pieces(stock, count) if count else 'none'}{chosen}")
    return f"A sheet takes {' and '.join(takes)}."
