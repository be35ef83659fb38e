"""The books of a handbook laid out. A card is laid out once for all books that have it on leaves of one frame."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from dotleader.handbook.book import USUAL_TYPE, DeclaredBook
from dotleader.handbook.model import Handbook
from dotleader.page.frames import frame_of
from dotleader.page.lay.checklists import Checklists
from dotleader.source.record import replace

if TYPE_CHECKING:
    from dotleader.page.laid import Frame, LaidCard


class Continued(NamedTuple):
    """A card that does not stay on one face, and the names of the books in which it does not.

    There are no names where no book is declared. `large` is whether its type is larger than usual.
    """

    laid: LaidCard
    books: tuple[str, ...]
    large: bool


class LaidBooks:
    """Books on stocks that are possible."""

    def __init__(self, handbook: Handbook, books: Sequence[DeclaredBook]) -> None:
        self._handbook = handbook
        self._on: dict[Frame, list[DeclaredBook]] = {}
        for book in books:
            self._on.setdefault(frame_of(book.stock), []).append(book)
        self._checklists = {frame: self._together(some) for frame, some in self._on.items()}

    def cards(self, book: DeclaredBook) -> tuple[LaidCard, ...]:
        """Every card of a book in the order of the source."""
        checklists = self._checklists[frame_of(book.stock)]
        cards = checklists.handbook.cards
        return tuple(laid for card, laid in zip(cards, checklists.all(), strict=True) if book.has(card))

    def continued(self) -> Iterator[Continued]:
        """The cards that do not stay on one face, by frames."""
        for frame, books in self._on.items():
            checklists = self._checklists[frame]
            large = books[0].stock.type_percent > USUAL_TYPE
            for laid in checklists.continued:
                card = checklists.handbook.by_key[laid.key]
                yield Continued(laid, tuple(book.name for book in books if book.name and book.has(card)), large)

    def _together(self, books: Sequence[DeclaredBook]) -> Checklists:
        """What is in any of the books."""
        handbook = self._handbook
        if not any(book.whole for book in books):
            cards = tuple(card for card in handbook.cards if any(book.has(card) for book in books))
            handbook = replace(handbook, cards=cards)
        return Checklists(replace(handbook, stock=books[0].stock))
