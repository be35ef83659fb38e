"""Shared and separate cut lines: how many leaves, where they stand, what is printed and cut at their edges.

Outside checks: two A5 fill A4 and two half letters fill letter, with no room for bleed (ISO 216, US sizes); with
crop marks and a printable margin of 5 mm there is room for one of either.
"""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.measures import BLEED, sides_around
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Group, mm
from dotleader.page.extents import Rect, extents
from dotleader.page.imposition import imposition, pieces_to_a_sheet
from dotleader.page.sheet.cut_shapes import Layer, Open, Outline
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.sheets import Sheet, sheets
from dotleader.source.record import replace
from tests.page.leaves import faces, laid, stock_of, stocks

LEAF = "stock\n  leaf .... 90 x 125 mm\n  holes .... none\n  paper .... A4\n"
FOUR = stock_of(f"{LEAF}  cut lines .... shared\n")
LARGE = stock_of("stock\n  leaf .... 82 x 110 mm\n  holes .... none\n  cut lines .... shared\n  paper .... A3\n")
CARDS = tuple(laid(f"Card {number}", kind="emergency", section="3", thumb="fuel") for number in range(36))


def printed(stock: Stock, leaves: int = 18, turning: Turning = "long-edge") -> list[Sheet]:
    made = faces(*CARDS[: 2 * leaves], stock=stock)
    return [sheet for sheet in sheets(made, stock, turning=turning) if sheet.number]


@pytest.mark.parametrize(
    ("rows", "shared", "separate"),
    [
        ("stock A5\n", 2, 1),
        ("stock half letter\n", 2, 1),
        ("stock A6\n", 4, 2),
        ("stock A4\n", 1, 0),
        (LEAF, 4, 2),
        ("stock 6 x 9 in pouch\n", 1, 1),
        ("stock folded card, A6\n", 2, 1),
        ("stock folded card, half letter\n", 1, 0),
    ],
)
def test_how_many_leaves_either_way_puts_on_a_sheet(rows: str, shared: int, separate: int) -> None:
    stock = stock_of(rows)
    assert (pieces_to_a_sheet(stock, "shared"), pieces_to_a_sheet(stock, "separate")) == (shared, separate)
    for lines, count in (("shared", shared), ("separate", separate)):
        chosen = replace(stock, cut_lines=lines)
        assert bool(list(amiss(chosen))) is (count == 0)
        if count:
            assert len(imposition(chosen).pieces) == count


@settings(deadline=None)
@given(stocks(), st.sampled_from(["shared", "separate"]))
def test_separate_leaves_have_room_for_their_bleed_and_shared_ones_stand_edge_to_edge(stock: Stock, lines: str) -> None:
    stock = replace(stock, cut_lines=lines)
    if any(amiss(stock)):
        return
    laid_out = imposition(stock)
    for one, other in combinations(laid_out.pieces, 2):
        assert not one.meets(other)
        if lines == "separate":
            grown = [Rect(r.left - BLEED, r.top - BLEED, r.right + BLEED, r.bottom + BLEED) for r in (one, other)]
            assert not grown[0].meets(grown[1])
    if lines == "separate":
        assert not laid_out.filling
    whole = [f(r[side] for r in laid_out.pieces) for side, f in enumerate((min, min, max, max))]
    area = sum((r.right - r.left) * (r.bottom - r.top) for r in laid_out.pieces)
    if lines == "shared":
        assert area == (whole[2] - whole[0]) * (whole[3] - whole[1])  # a block without gaps
    if not laid_out.filling:
        around = sides_around(stock.printable_margin)
        assert whole[0] >= around - 1
        assert whole[1] >= around - 1
        assert whole[2] <= stock.paper[0] - around + 1
        assert whole[3] <= stock.paper[1] - around + 1


@pytest.mark.parametrize("turning", TURNINGS)
@pytest.mark.parametrize("stock", [FOUR, LARGE, replace(FOUR, bound_at="top")], ids=["four", "nine", "at the top"])
def test_nothing_bleeds_into_a_neighbour_and_all_that_may_bleeds_into_the_waste(stock: Stock, turning: Turning) -> None:
    bled = 0
    for sheet in printed(stock, turning=turning):
        for side in sheet.sides:
            leaves = [place.rect for place in side.leaves]
            for at, group in enumerate(side.items[: len(leaves)]):
                assert isinstance(group, Group)
                for item, ink in extents((group,)):
                    assert not any(ink.meets(leaf) for n, leaf in enumerate(leaves) if n != at)
                    if isinstance(item, Box) and not ink.inside(leaves[at]):
                        over = [abs(a - b) for a, b in zip(ink, leaves[at], strict=True)]
                        assert BLEED in over
                        bled += 1
    assert bled


def test_the_edge_bands_of_two_columns_stand_in_the_waste_and_not_at_the_cut() -> None:
    assert [slot.turn for slot in imposition(FOUR).slots] == [180, 0, 180, 0]
    middle = FOUR.paper[0] // 2
    for sheet in printed(FOUR, 4):
        for side in sheet.sides:
            for group in side.items[: len(side.leaves)]:
                assert isinstance(group, Group)
                for item, ink in extents((group,)):
                    if isinstance(item, Box):
                        assert not ink.left < middle < ink.right
                        assert min(abs(ink.left - middle), abs(ink.right - middle)) > mm(5)


@pytest.mark.parametrize("radius", [0, 3_175])
def test_shared_lines_are_open_and_cut_once_and_separate_outlines_are_closed(radius: int) -> None:
    shared = replace(FOUR, corner_radius=radius)
    (cutting,) = {found.cuts for found in cuttings(printed(shared, 4), shared)}
    paths = [cut.shape for cut in cutting if cut.layer is Layer.OUTLINES]
    assert all(isinstance(path, Open) for path in paths)
    straight = [path for path in paths if isinstance(path, Open) and path.start[0] in (path.parts[0].x,)]
    upright = {path.start[0] for path in straight}
    assert upright == {15_000, 105_000, 195_000}  # 2 x 90 mm in the middle of 210 mm
    assert len(paths) == 6 + (16 if radius else 0)  # three lines each way, each once, and the corners by themselves

    apart = replace(shared, cut_lines="separate")
    found = cuttings(printed(apart, 2), apart)[0].on(Layer.OUTLINES)
    assert len(found) == 2
    assert all(isinstance(path, Outline) for path in found)


@pytest.mark.parametrize("leaves", range(1, 10))
def test_crop_marks_stand_around_the_leaves_that_there_are_and_on_none(leaves: int) -> None:
    (sheet,) = printed(LARGE, leaves)
    for side in sheet.sides:
        (marks,) = (item for item in side.items if isinstance(item, Group) and item.role == "crop")
        inks = [ink for _, ink in extents(marks.items)]
        here = [place.rect for place in side.leaves]
        assert not any(ink.meets(leaf) for ink in inks for leaf in here)
        level = {(ink.top + ink.bottom) // 2 for ink in inks if ink.right - ink.left > mm(1)}
        upright = {(ink.left + ink.right) // 2 for ink in inks if ink.bottom - ink.top > mm(1)}
        assert level == {edge for leaf in here for edge in (leaf.top, leaf.bottom)}
        assert upright == {edge for leaf in here for edge in (leaf.left, leaf.right)}
