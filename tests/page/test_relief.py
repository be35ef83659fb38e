"""Holes that are cut wider into the paper so that film seals around them, as printed and as cut.

Outside checks: a hole of 6 mm whose film is to seal 3 mm around it needs 12 mm cut out of the paper, from 6 to 18 mm
off the edge where its centre is 12 mm in (derived from what makers of film ask for, at least 1/8 in of seal).
"""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.relief import LEAST_PAPER, relief_room
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, mm
from dotleader.page.extents import Rect
from dotleader.page.sheet.cut_shapes import Circle, Cutting, Layer, Outline
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.sheets import Sheet, sheets
from dotleader.source.record import replace
from tests.page.leaves import EVERY_KIND, STOCKS, faces, laid, stock_of, stocks
from tests.page.test_sheets import through, within

SEALED = replace(STOCKS["sample"], relief=mm(3))
FLAP = stock_of(
    "stock\n  leaf .... 130 x 200 mm\n  pouch .... 154 x 216 mm\n  paper .... A4\n"
    "  holes .... 2, 80 mm apart, 6 mm wide, 6 mm from edge\n"
)


def printed(stock: Stock, turning: Turning = "long-edge") -> list[Sheet]:
    some = sheets(faces(*EVERY_KIND, stock=stock), stock, turning=turning)
    return [sheet for sheet in some if sheet.number]


def holes_of(cutting: Cutting) -> list[Circle]:
    return [hole for hole in cutting.on(Layer.HOLES) if isinstance(hole, Circle)]


def test_a_hole_of_6_mm_with_3_mm_of_seal_is_cut_12_mm_wide_from_6_to_18_mm_off_the_edge_of_the_pouch() -> None:
    (cutting,) = cuttings(printed(SEALED), SEALED)
    (pouch,) = (path for path in cutting.on(Layer.POUCH) if isinstance(path, Outline))
    left = min(part.x for part in pouch.parts)
    holes = holes_of(cutting)
    assert len(holes) == 4
    for hole in holes:
        assert 2 * hole.radius == mm(12)
        assert (hole.x - hole.radius - left, hole.x + hole.radius - left) == (mm(6), mm(18))


@pytest.mark.parametrize("turning", TURNINGS)
def test_the_circle_on_both_sides_of_the_sheet_is_what_is_cut(turning: Turning) -> None:
    (cutting,) = cuttings(printed(SEALED), SEALED)
    wanted = {Rect(h.x - h.radius, h.y - h.radius, h.x + h.radius, h.y + h.radius) for h in holes_of(cutting)}
    for sheet in printed(SEALED, turning):
        for side, seen in ((sheet.front, wanted), (sheet.back, {through(SEALED, turning, rect) for rect in wanted})):
            boxes = {item: ink for item, ink in within(side.items, "holes") if isinstance(item, Box)}
            found = {Rect(i.left + s, i.top + s, i.right - s, i.bottom - s) for i, s in _inner(boxes)}
            assert found == seen


def _inner(boxes: dict[Box, Rect]) -> list[tuple[Rect, int]]:
    return [(ink, -(-box.stroke // 2)) for box, ink in boxes.items()]


def test_no_ink_but_the_marks_lies_where_paper_is_cut_out() -> None:
    (cutting,) = cuttings(printed(SEALED), SEALED)
    for sheet in printed(SEALED):
        marks = {ink for _, ink in within(sheet.front.items, "holes")}
        for hole in holes_of(cutting):
            area = Rect(hole.x - hole.radius, hole.y - hole.radius, hole.x + hole.radius, hole.y + hole.radius)
            for role in ("head", "label", "edge", "body", "tabs", "foot", "issue"):
                assert not any(ink.meets(area) for _, ink in within(sheet.front.items, role) if ink not in marks)


def test_there_is_room_only_beside_film_and_holes() -> None:
    assert relief_room(STOCKS["A5"])[0] == 0  # no film
    assert relief_room(replace(STOCKS["sample"], holes=()))[0] == 0
    # 3.175 of seal and 8.825 mm make the 12 mm to the centre; 3 of the hole and 1 of paper to be left
    assert relief_room(STOCKS["sample"]) == (4_825, "the edge of the leaf")


@settings(deadline=None)
@given(stocks(), st.integers(2_000, 12_000))
def test_widened_holes_leave_paper_around_them(stock: Stock, corner: int) -> None:
    stock = replace(stock, pouch=(stock.leaf[0] + 6_350, stock.leaf[1] + 6_350), corner_radius=corner)
    room, _ = relief_room(stock)
    if room <= 0 or any(amiss(replace(stock, relief=room))):
        return
    wide = replace(stock, relief=room)
    some = [sheet for sheet in sheets(faces(laid("Card", 2), stock=stock), stock) if sheet.number]
    plain, widened = cuttings(some, stock)[0], cuttings(some, wide)[0]
    leaves = [place.rect for place in some[0].front.leaves]
    holes = holes_of(widened)
    assert [(hole.x, hole.y) for hole in holes] == [(hole.x, hole.y) for hole in holes_of(plain)]
    for hole in holes:
        reach = hole.radius + LEAST_PAPER
        assert any(Rect(hole.x - reach, hole.y - reach, hole.x + reach, hole.y + reach).inside(leaf) for leaf in leaves)
    for one, other in combinations(holes, 2):
        apart = ((one.x - other.x) ** 2 + (one.y - other.y) ** 2) ** 0.5
        assert apart >= one.radius + other.radius + LEAST_PAPER - 1
    beyond = replace(stock, relief=room + 1)
    assert [fault.of for fault in amiss(beyond)] == ["relief"]


def test_holes_in_a_flap_of_film_are_neither_printed_nor_cut() -> None:
    for cutting in cuttings(printed(FLAP), FLAP):
        assert cutting.on(Layer.HOLES) == ()
        assert cutting.on(Layer.POUCH)
    for sheet in printed(FLAP):
        for side in sheet.sides:
            assert within(side.items, "holes") == []
