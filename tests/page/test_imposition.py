"""Where leaves stand on a sheet, and what lies behind them. Positions in micrometres.

Outside checks: turned about its long edge, (x, y) of an upright sheet lies behind (W - x, y), about its short edge
behind (x, H - y), which follows from geometry (IPP's `two-sided-long-edge` and `two-sided-short-edge`);
two A5 fill A4 and two half letters fill letter with no room for bleed (ISO 216, US sizes).
"""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import mm
from dotleader.page.extents import Rect
from dotleader.page.imposition import Slot, imposition, on_sheet
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.sheets import behind
from tests.page.leaves import STOCKS, stocks


def rect_of(slot: Slot, more: int = 0) -> Rect:
    return Rect(slot.x - more, slot.y - more, slot.x + slot.w + more, slot.y + slot.h + more)


@given(stocks(), st.sampled_from(TURNINGS), st.data())
def test_a_point_of_a_front_and_the_one_behind_it_print_on_the_same_spot(
    stock: Stock, turning: Turning, data: st.DataObject
) -> None:
    laid_out = imposition(stock)
    slot = data.draw(st.sampled_from(laid_out.slots))
    x, y = data.draw(st.integers(0, stock.leaf[0])), data.draw(st.integers(0, stock.leaf[1]))
    back = behind(laid_out, slot, stock, turning)
    # A leaf bound at the left is turned over like a page, one bound at the top over its head.
    seen = (stock.leaf[0] - x, y) if stock.bound_at == "left" else (x, stock.leaf[1] - y)
    front_x, front_y = on_sheet(slot).point(x, y)
    width, height = stock.paper
    there = {"long-edge": (width - front_x, front_y), "short-edge": (front_x, height - front_y)}
    assert on_sheet(back).point(*seen) == there[turning]


@given(stocks(), st.sampled_from(TURNINGS))
def test_front_to_back_to_front_is_the_identity(stock: Stock, turning: Turning) -> None:
    laid_out = imposition(stock)
    for slot in laid_out.slots:
        assert behind(laid_out, behind(laid_out, slot, stock, turning), stock, turning) == slot


@given(stocks())
def test_leaves_stand_apart_on_the_paper(stock: Stock) -> None:
    laid_out = imposition(stock)
    paper = Rect(0, 0, *stock.paper)
    assert laid_out.slots
    for slot in laid_out.slots:
        assert sorted((slot.w, slot.h)) == sorted(stock.leaf)
        assert rect_of(slot).inside(paper)
    for one, other in combinations(laid_out.slots, 2):
        bleed = 0 if laid_out.filling else mm(3)
        assert not rect_of(one, bleed).meets(rect_of(other, bleed))


@pytest.mark.parametrize(
    ("name", "leaves", "filling"),
    [
        ("A5", 2, True),  # 2 x 148 of 297 mm: no room for bleed
        ("half letter", 2, True),  # 2 x 5.5 of 11 in: no slack at all
        ("A6", 4, True),
        ("A4", 1, True),
        ("sample", 1, False),
        ("two across", 2, False),
        ("four to a sheet", 4, False),
    ],
)
def test_as_many_leaves_stand_on_a_sheet_as_fit(name: str, leaves: int, filling: bool) -> None:
    laid_out = imposition(STOCKS[name])
    assert (len(laid_out.slots), laid_out.filling) == (leaves, filling)


def test_two_a5_share_the_cut_in_the_middle_of_a4() -> None:
    first, second = imposition(STOCKS["A5"]).slots
    assert (first.y + first.h, second.y) == (148_500, 148_500)
    assert (first.turn, second.turn) == (270, 90)  # right edges, where the bands are, at the cut
