"""The two rulers on sheets: as long as they say, in the waste, and a clear distance from every mark."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given

from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Group, Line, Text, mm
from dotleader.page.extents import Rect, extents
from dotleader.page.imposition import imposition, printable
from dotleader.page.sheet.rulers import LEAST_AIR, RULER, SHORT_RULER, rulers
from dotleader.page.sheet.sheets import Sheet, SheetSide, sheets
from tests.page.leaves import EVERY_KIND, STOCKS, faces, stock_of, stocks

SMALL = {
    "two up": "stock\n  leaf .... 90 x 130 mm\n  holes .... none\n  paper .... A4\n",
    "apart": "stock A6\n  cut lines .... separate\n",
    "shared": "stock\n  leaf .... 90 x 130 mm\n  holes .... none\n  cut lines .... shared\n  paper .... A4\n",
    "cut tabs": "stock 6 x 9 in pouch\n  tabs .... cut\n",
}


def first_sheet(stock: Stock) -> Sheet:
    return next(sheet for sheet in sheets(faces(*EVERY_KIND, stock=stock), stock) if sheet.number)


def inks(side: SheetSide, *roles: str) -> Iterator[Rect]:
    for group in side.items:
        if isinstance(group, Group) and group.role in roles:
            yield from (ink for _, ink in extents(group.items))


def around(rect: Rect, air: int) -> Rect:
    return Rect(rect.left - air, rect.top - air, rect.right + air, rect.bottom + air)


def assert_clear(stock: Stock) -> None:
    laid, sheet = imposition(stock), first_sheet(stock)
    assert (rulers(laid) is not None) is any(inks(sheet.front, "rulers"))
    for side in sheet.sides:
        marks = list(inks(side, "crop", "fold", "registration"))
        for ink in inks(side, "rulers"):
            assert ink.inside(Rect(*printable(laid.paper, laid.margin)))
            # half a hairline of the ruler and half of the mark reach into what is between them
            assert not any(around(ink, LEAST_AIR - 100).meets(mark) for mark in marks)
            assert not any(ink.meets(place.rect) for place in side.leaves)


@pytest.mark.parametrize("name", STOCK_NAMES)
def test_no_mark_is_near_a_ruler_on_any_stock_of_the_library(name: str) -> None:
    assert_clear(stock_of(f"stock {name}\n"))


@pytest.mark.parametrize("text", SMALL.values(), ids=list(SMALL))
def test_no_mark_is_near_a_ruler_on_small_leaves_and_with_tabs(text: str) -> None:
    assert_clear(stock_of(text))


@given(stocks())
def test_no_mark_is_near_a_ruler_on_any_stock(stock: Stock) -> None:
    assert_clear(stock)


def test_dashes_of_a_fold_do_not_go_on_in_a_tick_of_the_ruler() -> None:
    stock = stock_of("stock folded card, A6\n")
    front = first_sheet(stock).front
    upright = min(inks(front, "rulers"), key=lambda ink: ink.left)
    dashes = [ink for ink in inks(front, "fold") if ink.right < imposition(stock).pieces[0].left]
    assert min(dash.left for dash in dashes) - upright.right > mm(7)


def test_where_the_long_one_has_no_room_both_are_short_and_say_so() -> None:
    stock = stock_of("stock 95 x 171 mm, six rings\n")
    found = list(sheets(faces(*EVERY_KIND, stock=stock), stock))
    assert found[0].number == 1  # no sheet of rulers
    ruled = rulers(imposition(stock))
    assert ruled is not None
    assert (ruled.length, SHORT_RULER) == (50_000, 50_000)
    drawn = list(ruled.drawn())
    lines = [item for item in drawn if isinstance(item, Line)]
    long = [line for line in lines if max(abs(b - a) for a, b in zip(*line.points, strict=True)) > mm(20)]
    assert [max(abs(b - a) for a, b in zip(*line.points, strict=True)) for line in long] == [50_000, 50_000]
    assert [text.string for text in drawn if isinstance(text, Text)].count("50 mm") == 2


def test_rulers_are_long_where_there_is_room() -> None:
    ruled = rulers(imposition(STOCKS["sample"]))
    assert ruled is not None
    assert ruled.length == RULER == 100_000
