"""What rules are asked with: the handbook, and for some of them its cards as laid out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.model import Handbook
from dotleader.source.record import record

if TYPE_CHECKING:  # laying out is paid for only where it is asked for
    from dotleader.page.lay.laid_books import Continued


@record
class Subject:
    """`books` are those that are looked at: all, or the one that is to be printed.

    `continued` lays out their checklists that do not stay on one face; None where the stock is none to stand on.
    """

    handbook: Handbook
    continued: Callable[[], Iterable[Continued]] | None = None
    books: tuple[DeclaredBook, ...] = ()
