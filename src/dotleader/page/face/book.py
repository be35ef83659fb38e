"""What is printed: the laid-out cards of a handbook with everything that goes before them, placed and drawn."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.handbook.model import Handbook
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.face.declared import lay_declared
from dotleader.page.face.faces import Face, faces_of
from dotleader.page.face.folded import place_folded
from dotleader.page.face.front_matter import lay_title, with_control_leaf
from dotleader.page.face.furniture import Imprint
from dotleader.page.face.placement import Placement
from dotleader.page.frames import frame_of
from dotleader.page.laid import LaidCard
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


def make_book(handbook: Handbook, cards: Iterable[LaidCard], draft: int | None = None) -> Book:
    """A book of everything. `cards` are the laid-out checklists, amplified texts and essays in the order of the source.

    Of a folded card all four faces belong to the cards: nothing goes before them. `draft` is the number of errors when
    a draft is printed in spite of them, None otherwise.
    """
    frame = frame_of(handbook.stock)
    title = lay_title(handbook, frame)
    if handbook.stock.folded:
        placement = place_folded(cards)
    else:
        found = (*lay_index(handbook, frame), *cards, *lay_declared(handbook, frame, symbols_of(handbook)))
        if handbook.stock.dividers:
            found += tuple(lay_dividers(handbook, found, frame))
        placement = with_control_leaf(title, found, frame)
    imprint = Imprint(title.title, handbook.fact("registration"))
    faces = tuple(faces_of(placement, imprint, handbook.stock, draft))
    return Book(title.title, handbook.stock, placement, faces)
