"""What is printed: the laid-out cards of a handbook with everything that goes before them, placed and drawn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.contents import whole_book
from dotleader.handbook.model import Handbook
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.face.declared import lay_declared
from dotleader.page.face.faces import Face, faces_of
from dotleader.page.face.folded import place_folded
from dotleader.page.face.front_matter import lay_title, with_control_leaf
from dotleader.page.face.furniture import Imprint
from dotleader.page.face.placement import Placement
from dotleader.page.frames import frame_of
from dotleader.page.laid import Frame, LaidCard
from dotleader.page.lay.lay_dividers import lay_dividers
from dotleader.page.lay.lay_index import lay_index
from dotleader.page.type.symbols import symbols_of
from dotleader.source.record import record


@record
class Book:
    """`faces` are all faces in reading order, fronts and backs in turn, blanks included."""

    title: str
    stock: Stock
    placement: Placement
    faces: tuple[Face, ...]


def make_book(
    handbook: Handbook, cards: Iterable[LaidCard], draft: int | None = None, declared: DeclaredBook | None = None
) -> Book:
    """A book of everything, or of what is `declared`, of which `handbook` has the contents.

    `cards` are the laid-out checklists, amplified texts and essays in the order of the source.

    Of a folded card all four faces belong to the cards: nothing goes before them. `draft` is the number of errors when
    a draft is printed in spite of them, None otherwise.
    """
    declared = declared or whole_book(handbook)
    frame = frame_of(handbook.stock)
    title = lay_title(handbook, frame, declared.name)
    if handbook.stock.folded:
        placement = place_folded(cards)
    else:
        found = (*lay_index(handbook, frame), *cards, *_numbers(handbook, declared, frame))
        if handbook.stock.dividers:
            found += tuple(lay_dividers(handbook, found, frame))
        placement = with_control_leaf(title, found, frame)
    named = f"{declared.name}, {title.title}" if declared.name else title.title
    imprint = Imprint(named, handbook.fact("registration"))
    faces = tuple(faces_of(placement, imprint, handbook.stock, draft))
    return Book(named, handbook.stock, placement, faces)


def _numbers(handbook: Handbook, declared: DeclaredBook, frame: Frame) -> Iterator[LaidCard]:
    """The tables of what is declared, of those sections that are in the book."""
    for table in lay_declared(handbook, frame, symbols_of(handbook)):
        if declared.has_section(table.section):
            yield table
