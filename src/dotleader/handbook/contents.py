"""What of a handbook is in a book."""

from __future__ import annotations

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.model import Handbook
from dotleader.handbook.sections import TEXTS
from dotleader.source.record import replace


def books_of(handbook: Handbook) -> tuple[DeclaredBook, ...]:
    """The books that are printed, the first unless another is asked for; one of everything where none is declared."""
    return handbook.books or (whole_book(handbook),)


def whole_book(handbook: Handbook) -> DeclaredBook:
    """Everything, on the stock of the handbook."""
    return DeclaredBook("", True, (), (), handbook.stock, handbook.spot)


def contents(handbook: Handbook, book: DeclaredBook) -> Handbook:
    """The handbook with only those cards and texts that are in the book, on its stock.

    What is declared stays: references need it, and so does an index of what a go-to may lead to.
    """
    if book.whole and book.stock == handbook.stock:
        return handbook
    return replace(
        handbook,
        cards=tuple(card for card in handbook.cards if book.has(card)),
        essays=handbook.essays if book.has_section(TEXTS) else (),
        stock=book.stock,
    )
