"""Holes are counted from the edges that a cut leaf really has.

Outside check: ISO 838 (12 mm ± 1 mm from the edge of the sheet, the pair's middle on the middle of it), and the 6.5 mm
of JIS Z 8303; two A5 on A4 (ISO 216) leave 1 mm, which stays on the leaves.
"""

from __future__ import annotations

import pytest

from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.measures import in_flap
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Group
from dotleader.page.extents import Rect, extents
from dotleader.page.face.placement import Side
from dotleader.page.imposition import Slot, on_sheet
from dotleader.page.sheet.cut_shapes import Circle, Layer, Open, Straight
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.duplex import TURNINGS, Turning, behind
from dotleader.page.sheet.holes import up_to_paper
from dotleader.page.sheet.sheets import LeafPlace, SheetSide, sheets
from dotleader.source.record import replace
from tests.page.leaves import EVERY_KIND, faces, stock_of

HOLED = [name for name in STOCK_NAMES if stock_of(f"stock {name}\n").holes]


def marks_on(side: SheetSide) -> list[tuple[int, int]]:
    """The middles of the circles on a side."""
    return [
        ((ink.left + ink.right) // 2, (ink.top + ink.bottom) // 2)
        for item, ink in extents(_with_holes_only(side.items))
        if isinstance(item, Box)
    ]


def _with_holes_only(items: tuple[Drawn, ...]) -> tuple[Group, ...]:
    groups = [item for item in items if isinstance(item, Group)]
    kept = (group if group.role == "holes" else replace(group, items=_with_holes_only(group.items)) for group in groups)
    return tuple(group for group in kept if group.items)


def edge_of(stock: Stock, side: Side, place: LeafPlace) -> tuple[bool, int]:
    """The edge that is bound, as the leaf is cut out of the sheet: whether it is upright, and where it is."""
    width, height = stock.leaf
    front = side is Side.FRONT
    if stock.bound_at == "left":
        line = (0, 0, 0, height) if front else (width, 0, width, height)
    else:
        line = (0, 0, width, 0) if front else (0, height, width, height)
    at = on_sheet(Slot(place.x, place.y, place.w, place.h, place.turn)).rect(*line)
    cut = up_to_paper(place.rect, stock.paper)
    if at.left == at.right:
        return True, cut.left if at.left == place.x else cut.right
    return False, cut.top if at.top == place.y else cut.bottom


@pytest.mark.parametrize("name", HOLED)
@pytest.mark.parametrize("turning", TURNINGS)
def test_marks_are_as_far_from_the_bound_edge_of_the_cut_leaf_as_the_stock_says(name: str, turning: Turning) -> None:
    stock = stock_of(f"stock {name}\n")
    for sheet in sheets(faces(*EVERY_KIND, stock=stock), stock, turning=turning):
        for side in sheet.sides:
            for place in side.leaves:
                upright, edge = edge_of(stock, side.side, place)
                cut = up_to_paper(place.rect, stock.paper)
                own = [(x, y) for x, y in marks_on(side) if Rect(x, y, x + 1, y + 1).meets(cut)]
                assert len(own) == len(stock.holes)
                assert {abs((x if upright else y) - edge) for x, y in own} == {stock.hole_edge}
        # what is on the back is behind what is on the front
        behind_them = sorted(behind(mark, stock.paper, turning) for mark in marks_on(sheet.front))
        assert behind_them == sorted(marks_on(sheet.back))


@pytest.mark.parametrize("name", HOLED)
def test_holes_are_cut_where_they_are_marked(name: str) -> None:
    stock = stock_of(f"stock {name}\n")
    assert not in_flap(stock)
    papers = list(sheets(faces(*EVERY_KIND, stock=stock), stock))
    for cutting in cuttings(papers, stock):
        (sheet,) = (found for found in papers if found.number == cutting.sheets[0])
        cut = [(path.x, path.y) for path in cutting.on(Layer.HOLES) if isinstance(path, Circle)]
        assert sorted(cut) == sorted(marks_on(sheet.front))


def test_holes_of_two_a5_on_a4_are_12_mm_from_the_edge_of_the_paper() -> None:
    stock = stock_of("stock A5\n")
    papers = list(sheets(faces(*EVERY_KIND, stock=stock), stock))
    ys = {y for _, y in marks_on(papers[1].front)}
    assert ys == {12_000, 285_000}
    (cutting, *_) = cuttings(papers, stock)
    (line,) = (path for path in cutting.on(Layer.OUTLINES) if _is_line(path))
    assert isinstance(line, Open)
    assert line.start[1] == 148_500


def test_holes_of_four_a6_on_a4_are_in_the_middle_of_the_side_that_is_bound() -> None:
    stock = stock_of("stock A6\n")
    papers = list(sheets(faces(*EVERY_KIND, stock=stock), stock))
    ys = sorted({y for _, y in marks_on(papers[1].front)})
    assert ys == [34_250, 114_250, 182_750, 262_750]  # (148.5 - 80) / 2


def _is_line(path: object) -> bool:
    return isinstance(path, Open) and len(path.parts) == 1 and isinstance(path.parts[0], Straight)
