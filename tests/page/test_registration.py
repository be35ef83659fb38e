"""Marks for a cutter that reads them: the numbers that the module gives, and the room around the marks."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Group, Ink, mm
from dotleader.page.extents import Rect, extents
from dotleader.page.imposition import imposition
from dotleader.page.sheet.cut_shapes import Layer
from dotleader.page.sheet.cutting import cuttings, outline
from dotleader.page.sheet.registration import QUIET, registration_places
from dotleader.page.sheet.sheets import SheetSide, sheets
from tests.page.leaves import EVERY_KIND, STOCKS, faces, laid, stocks


def marks_of(side: SheetSide) -> list[Rect]:
    groups = [item for item in side.items if isinstance(item, Group) and item.role == "registration"]
    drawn = [(item, ink) for group in groups for item, ink in extents(group.items)]
    assert all(isinstance(item, Box) and item.fill is Ink.BLACK and item.stroke == 0 for item, _ in drawn)
    return [ink for _, ink in drawn]


@pytest.mark.parametrize("name", [name for name, stock in STOCKS.items() if not imposition(stock).filling])
def test_they_stand_where_the_module_says(name: str) -> None:
    stock = STOCKS[name]
    width, height = stock.paper
    for sheet in sheets(faces(*EVERY_KIND, stock=stock), stock, cutter_marks=True):
        if not sheet.number:
            continue
        found = marks_of(sheet.front)
        middles = {((left + right) // 2, (top + low) // 2) for left, top, right, low in found}
        assert middles == {(mm(7), mm(7)), (width - mm(7), mm(7)), (mm(7), height - mm(7))}
        assert all((right - left, low - top) == (mm(4), mm(4)) for left, top, right, low in found)
        assert marks_of(sheet.back) == []


@settings(deadline=None)
@given(stocks(), st.integers(1, 9))
def test_three_millimetres_around_them_are_free_of_all_other_ink(stock: Stock, leaves: int) -> None:
    cards = [laid(f"Card {number}", 2) for number in range(leaves)]
    for sheet in sheets(faces(*cards, stock=stock), stock, cutter_marks=True):
        found = marks_of(sheet.front)
        first = imposition(stock).slots[0]
        roomy = max(first.x, first.y) >= stock.printable_margin + mm(10)
        assert len(found) == (0 if imposition(stock).filling or not sheet.number or not roomy else 3)
        quiet = [Rect(left - QUIET, top - QUIET, right + QUIET, low + QUIET) for left, top, right, low in found]
        assert mm(3) == QUIET  # as the module says
        paper = Rect(0, 0, *stock.paper)
        assert all(mark.inside(paper) for mark in found)
        others = [item for item in sheet.front.items if not (isinstance(item, Group) and item.role == "registration")]
        for _, ink in extents(others):
            assert not any(ink.meets(room) for room in quiet)
        bleed = [Rect(p.x - 3_000, p.y - 3_000, p.x + p.w + 3_000, p.y + p.h + 3_000) for p in sheet.front.leaves]
        assert not any(room.meets(leaf) for room in quiet for leaf in bleed)


def test_the_cut_file_has_them_in_the_same_places_and_only_if_they_are_printed() -> None:
    stock = STOCKS["sample"]
    some = list(sheets(faces(*EVERY_KIND, stock=stock), stock, cutter_marks=True))
    (cutting,) = cuttings(some, stock, marks=registration_places(imposition(stock)))
    assert cutting.on(Layer.REGISTRATION) == tuple(map(outline, marks_of(some[0].front)))
    (cutting,) = cuttings(some, stock)
    assert cutting.on(Layer.REGISTRATION) == ()
