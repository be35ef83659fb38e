"""The reading copy: every face in order, an outline, and links."""

from __future__ import annotations

from itertools import pairwise

import pytest

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Group, Link
from dotleader.page.extents import Rect, extents
from dotleader.page.face.placement import Side
from dotleader.page.labels import SECTIONS
from dotleader.page.sheet.reading import reading_pages
from tests.page.leaves import EVERY_KIND, STOCKS, faces

ALL_STOCKS = pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)


@ALL_STOCKS
def test_the_reading_copy_has_every_face_in_order_on_leaf_sized_pages(stock: Stock) -> None:
    made = faces(*EVERY_KIND, stock=stock)
    pages = list(reading_pages(made, stock))
    assert [page.label for page in pages] == [str(face.label) for face in made]
    for number, page in enumerate(pages, start=1):
        assert page.side is (Side.FRONT if number % 2 else Side.BACK)
        assert (page.width, page.height) == stock.leaf
        assert all(ink.inside(Rect(0, 0, *stock.leaf)) for _, ink in extents(page.items))


def test_the_outline_of_the_reading_copy_leads_to_sections_and_cards() -> None:
    pages = list(reading_pages(faces(*EVERY_KIND), STOCKS["sample"]))
    entries = [entry for page in pages for entry in page.outline]
    assert [title for level, title in entries if level == 0] == [
        "Front matter",
        *(f"{section} {SECTIONS[section]}" for section in ("1", "2", "3", "3A", "4")),
    ]
    order = sorted(EVERY_KIND, key=lambda card: (list(SECTIONS).index(card.section), card.kind == "amplified"))
    assert [title for level, title in entries if level == 1] == [card.title for card in order]
    assert all(later <= level + 1 for (level, _), (later, _) in pairwise(entries))


def test_links_of_the_reading_copy_lead_to_labels_that_are_there() -> None:
    pages = list(reading_pages(faces(*EVERY_KIND), STOCKS["sample"]))
    links = [
        link
        for page in pages
        for group in page.items
        if isinstance(group, Group)
        for link in group.items
        if isinstance(link, Link)
    ]
    assert [link.label for link in links] == ["3-4"]
    assert {link.label for link in links} <= {page.label for page in pages}
