"""Which of the books of a handbook is printed, and into which folder unless one is named."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.contents import books_of
from dotleader.handbook.model import Handbook
from dotleader.handbook.names import offered
from dotleader.syntax.plain import folded
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.printing.printed_names import PRINTED

_LONGEST = 60
_NO_WORD = re.compile(r"[\W_]+")


def book_asked(handbook: Handbook, name: str | None) -> DeclaredBook:
    """The book of that name, the first without one. Raises CannotRun where there is none of that name."""
    books = books_of(handbook)
    if name is None:
        return books[0]
    for book in handbook.books:
        if folded(book.name) == folded(name):
            return book
    if not handbook.books:
        raise CannotRun(
            f"`--book {name}`: the handbook declares no books.",
            "A `book` block declares one; without the option everything is printed.",
        )
    names = [book.name for book in books]
    known = f"Its books are {', '.join(f'`{one}`' for one in names)}."
    raise CannotRun(f"`--book {name}`: the handbook has no such book.", offered(name, names, known))


def folder_of(handbook: Handbook, book: DeclaredBook) -> str:
    """Where a book goes beside its handbook: the first into `printed`, each other one into a folder in it."""
    taken: set[str] = set()
    for one in handbook.books[1:]:
        name = base = _NO_WORD.sub("-", folded(one.name)).strip("-")[:_LONGEST] or "book"
        number = 2
        while name in taken:
            name, number = f"{base}-{number}", number + 1
        taken.add(name)
        if one == book:
            return os.path.join(PRINTED, name)
    return PRINTED


def said_of_book(handbook: Handbook, book: DeclaredBook) -> Iterator[str]:
    """Which book it is, where the handbook has several, and how to have the others."""
    others = [f"`{one.name}`" for one in handbook.books if one != book]
    if others:
        *some, last = others
        either = f"{', '.join(some)} or {last}" if some else last
        yield f"This is the book `{book.name}`; `--book` prints {either}."
