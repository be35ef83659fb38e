"""The reading copy: every face in order, blanks included, one leaf-sized page each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Drawn, Group
from dotleader.page.face.edges import shown_areas, trim_line
from dotleader.page.face.faces import Face
from dotleader.page.face.margins import margins
from dotleader.page.face.placement import Side
from dotleader.page.labels import SECTIONS
from dotleader.page.lay.lay_dividers import DIVIDER
from dotleader.page.sheet.sheets import edges_within
from dotleader.source.record import record


@record
class ReadingPage:
    """A page of `width` by `height`. `outline` holds the entries that lead here: a level from 0, and a title.

    Links on a page lead to the `label` of another.
    """

    label: str
    side: Side
    width: int
    height: int
    items: tuple[Drawn, ...]
    outline: tuple[tuple[int, str], ...]


def reading_pages(faces: Iterable[Face], stock: Stock) -> Iterator[ReadingPage]:
    """The pages; odd ones are fronts."""
    width, height = stock.leaf
    section = ""
    for face in faces:
        links = tuple(group for group in face.groups if group.role == "links")
        outline = []
        if face.label.section != section:
            section = face.label.section
            outline.append((0, SECTIONS[section] if section == "0" else f"{section} {SECTIONS[section]}"))
        if not face.blank and face.part == 0 and face.kind != DIVIDER:  # it stands where its section does
            outline.append((1, face.title))
        at, here = margins(stock, face.side), face.label.section
        trim = Group(0, 0, tuple(trim_line(stock, at, here)), role="trim")
        items = (*edges_within(face.groups, *shown_areas(stock, at, here)), *((trim,) if trim.items else ()), *links)
        yield ReadingPage(str(face.label), face.side, width, height, items, tuple(outline))
