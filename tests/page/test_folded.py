"""Cards that are folded once: which face stands where, on the card, on the sheet and in what is cut.

Outside checks: of a sheet that is folded once like a book, the outside shows pages 4 and 1 from left to right, the
inside pages 2 and 3 (bookbinders' imposition of four pages); (x, y) of a front lies behind (W - x, y) of a back that is
turned about the long edge, behind (x, H - y) about the short edge, which follows from geometry.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.stocks.measures import MARK_LENGTH, MARK_OFFSET
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Group, Line, Text
from dotleader.page.extents import Rect, extents
from dotleader.page.face.folded import FACES, place_folded
from dotleader.page.face.placement import CHECKLISTS, Side
from dotleader.page.imposition import imposition, on_sheet
from dotleader.page.laid import LaidCard
from dotleader.page.sheet.cut_shapes import Arc, Layer, Open, Outline, Straight
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.leaf_order import ORDERS, Order
from dotleader.page.sheet.sheets import LeafPlace, Sheet, SheetSide, behind, sheet_count, sheets
from dotleader.source.record import replace
from tests.page.leaves import EVERY_KIND, cards, faces, laid, stock_of

FOLDED = {
    "A6": stock_of("stock folded card, A6\n"),
    "A6 at the top": stock_of("stock\n  leaf .... A6\n  folded .... once\n  bound at .... top\n  paper .... A3\n"),
    "A5, the whole of A4": stock_of("stock folded card, A5\n"),
    "quarter letter": stock_of("stock folded card, quarter letter\n"),
    "half letter": stock_of("stock folded card, half letter\n"),
    "two to a sheet": stock_of(
        "stock\n  leaf .... 80 x 100 mm\n  folded .... once\n  bound at .... top\n  paper .... A4\n"
    ),
    "shared": stock_of(
        "stock\n  leaf .... 100 x 140 mm\n  folded .... once\n  cut lines .... shared\n  paper .... A3\n"
    ),
    "shared, filling": stock_of("stock folded card, A6\n  cut lines .... shared\n  paper .... A3\n"),
}
ALL = pytest.mark.parametrize("stock", FOLDED.values(), ids=FOLDED)
MARKED = pytest.mark.parametrize(
    "stock", [stock for stock in FOLDED.values() if not imposition(stock).filling], ids=lambda stock: stock.name
)
BOTH = pytest.mark.parametrize("turning", TURNINGS)
FOUR = tuple(laid(f"Card {number}", thumb="fuel", kind="emergency", section="3") for number in range(1, 5))


def printed(stock: Stock, *some: LaidCard, turning: Turning = "long-edge", order: Order = "sequence") -> list[Sheet]:
    made = faces(*(some or FOUR), stock=stock)
    return [sheet for sheet in sheets(made, stock, order=order, turning=turning) if sheet.number]


def by_label(side: SheetSide) -> dict[str, LeafPlace]:
    return {place.label: place for place in side.leaves}


def upright(rect: Rect, about: LeafPlace, stock: Stock) -> tuple[str, str]:
    """Where `rect` is as seen by somebody who reads the face at `about`: to its left or right, above or below."""
    here = on_sheet_of(about)
    back = {0: (1, 0, 0, 1), 90: (0, -1, 1, 0), 180: (-1, 0, 0, -1), 270: (0, 1, -1, 0)}[about.turn]
    dx = (rect.left + rect.right - here.left - here.right) // 2
    dy = (rect.top + rect.bottom - here.top - here.bottom) // 2
    x, y = dx * back[0] + dy * back[1], dx * back[2] + dy * back[3]
    level = "left" if x < 0 else "right" if x > 0 else ""
    return level, "above" if y < 0 else "below" if y > 0 else ""


def on_sheet_of(place: LeafPlace) -> Rect:
    return Rect(place.x, place.y, place.x + place.w, place.y + place.h)


@ALL
@BOTH
def test_outside_are_four_and_one_and_inside_two_and_three(stock: Stock, turning: Turning) -> None:
    (sheet,) = printed(stock, turning=turning)
    outside, inside = by_label(sheet.front), by_label(sheet.back)
    assert (set(outside), set(inside)) == ({"3-1", "3-4"}, {"3-2", "3-3"})
    four_from_one = upright(on_sheet_of(outside["3-4"]), outside["3-1"], stock)
    three_from_two = upright(on_sheet_of(inside["3-3"]), inside["3-2"], stock)
    if stock.bound_at == "left":
        assert (four_from_one, three_from_two) == (("left", ""), ("right", ""))
    else:
        assert (four_from_one, three_from_two) == (("", "above"), ("", "below"))
    # Both faces of a side are read the same way up: nothing is turned about while the card lies open.
    assert outside["3-1"].turn == outside["3-4"].turn
    assert inside["3-2"].turn == inside["3-3"].turn


@ALL
@BOTH
def test_behind_the_front_is_the_second_face_and_behind_the_back_the_third(stock: Stock, turning: Turning) -> None:
    width, height = stock.paper
    (sheet,) = printed(stock, turning=turning)
    outside, inside = by_label(sheet.front), by_label(sheet.back)
    for front, back in (("3-1", "3-2"), ("3-4", "3-3")):
        left, top, right, bottom = on_sheet_of(outside[front])
        through = {
            "long-edge": Rect(width - right, top, width - left, bottom),
            "short-edge": Rect(left, height - bottom, right, height - top),
        }
        assert on_sheet_of(inside[back]) == through[turning]


@ALL
@BOTH
def test_the_inner_edge_of_every_face_is_the_fold(stock: Stock, turning: Turning) -> None:
    """A point of the fold on each of the four faces comes to the same line of the sheet."""
    laid_out = imposition(stock)
    width, height = stock.leaf
    at_left = stock.bound_at == "left"
    for slot, other in zip(laid_out.slots[::2], laid_out.slots[1::2], strict=True):
        fold = slot.rect.common(other.rect)
        assert (fold.left == fold.right) is not (fold.top == fold.bottom)
        for place, back in ((slot, False), (other, True)):
            assert place.back_up is back
            # the fold, on a front at its left or top, on a back at its right or foot
            ends = ((0, 0), (0, height)) if at_left else ((0, 0), (width, 0))
            if back:
                ends = ((width, 0), (width, height)) if at_left else ((0, height), (width, height))
            (x1, y1), (x2, y2) = (on_sheet(place).point(*end) for end in ends)
            assert Rect(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)) == fold
        assert behind(laid_out, behind(laid_out, other, stock, turning), stock, turning) == replace(
            other, back_up=False
        )


@MARKED
@BOTH
def test_dashes_stand_at_both_ends_of_the_fold_on_both_sides(stock: Stock, turning: Turning) -> None:
    for sheet in printed(stock, *EVERY_KIND, turning=turning):
        for side in sheet.sides:
            (marks,) = (item for item in side.items if isinstance(item, Group) and item.role == "fold")
            leaves = [on_sheet_of(place) for place in side.leaves]
            lines = {one.common(other) for one, other in zip(leaves[::2], leaves[1::2], strict=True)}
            for dash in marks.items:
                assert isinstance(dash, Line)
                (x1, y1), (x2, y2) = dash.points
                assert any({x1, x2} == {fold.left, fold.right} or {y1, y2} == {fold.top, fold.bottom} for fold in lines)
                off = min(
                    max(leaf.left - x2, x1 - leaf.right, leaf.top - y2, y1 - leaf.bottom)
                    for leaf in leaves  # of the nearest leaf
                )
                assert off >= MARK_OFFSET
                assert off + abs(x2 - x1) + abs(y2 - y1) <= MARK_OFFSET + MARK_LENGTH
            through = {fold.left if fold.left == fold.right else fold.top for fold in lines}
            between = 0 if stock.cut_lines == "shared" else 3 * (len(lines) - len(through))
            assert len(set(marks.items)) == len(marks.items) == 6 * len(through) + between


@ALL
def test_the_fold_is_scored_from_edge_to_edge_and_the_open_card_cut_out_round_it(stock: Stock) -> None:
    for cutting in cuttings(printed(stock, *EVERY_KIND), stock):
        sheet = next(sheet for sheet in printed(stock, *EVERY_KIND) if sheet.number in cutting.sheets)
        leaves = [on_sheet_of(place) for place in sheet.front.leaves]
        folds = [fold for fold in cutting.on(Layer.FOLDS) if isinstance(fold, Open)]
        wanted = [one.common(other) for one, other in zip(leaves[::2], leaves[1::2], strict=True)]
        for fold, line in zip(folds, wanted, strict=True):
            (end,) = fold.parts
            assert isinstance(end, Straight)
            assert (*fold.start, end.x, end.y) == line
            # nothing is cut along it
            for path in cutting.on(Layer.OUTLINES):
                assert isinstance(path, Open | Outline)
                here = path.start
                for part in path.parts:
                    if isinstance(part, Straight) and line.left == line.right == here[0] == part.x:
                        assert max(min(here[1], part.y), line.top) >= min(max(here[1], part.y), line.bottom)
                    here = part.x, part.y
        arcs = sum(
            isinstance(part, Arc)
            for path in cutting.on(Layer.OUTLINES)
            if isinstance(path, Open | Outline)
            for part in path.parts
        )
        assert arcs == 4 * len(folds)  # the four outer corners of each open card
        layers = [cut.layer for cut in cutting.cuts]
        assert layers == sorted(layers, key=list(Layer).index)
        assert list(Layer).index(Layer.HOLES) < list(Layer).index(Layer.FOLDS) < list(Layer).index(Layer.OUTLINES)
    assert Layer.FOLDS.is_scored
    assert not Layer.FOLDS.is_cut


@ALL
def test_what_is_printed_at_an_edge_never_goes_over_the_fold(stock: Stock) -> None:
    for sheet in printed(stock):
        for side in sheet.sides:
            for group, place in zip(side.items, side.leaves, strict=False):
                assert isinstance(group, Group)
                other = next(leaf for leaf in side.leaves if leaf != place)
                for item, ink in extents((group,)):
                    if isinstance(item, Box):
                        assert not ink.meets(on_sheet_of(other))


def test_a_card_whose_outer_corners_are_square_has_still_its_fold_to_score() -> None:
    stock = replace(FOLDED["A5, the whole of A4"], corner_radius=0)
    (cutting,) = cuttings(printed(stock), stock)
    assert not cutting.is_empty
    assert {cut.layer for cut in cutting.cuts} == {Layer.FOLDS, Layer.PAPER}
    first, *_ = sheets(faces(*FOUR, stock=stock), stock)
    words = " ".join(item.string for item, _ in extents(first.front.items) if isinstance(item, Text))
    assert "148.5" in words
    assert "Fold across" in words
    assert "cut.svg" in words


@pytest.mark.parametrize("order", ORDERS)
def test_the_two_leaves_of_a_card_stay_together_in_every_order(order: Order) -> None:
    stock = FOLDED["two to a sheet"]
    made = [laid(f"Card {number}") for number in range(12)]
    found = printed(stock, *made, order=order)
    for sheet in found:
        some = [int(place.label.split("-")[1]) for place in sheet.front.leaves]
        for one, four in zip(some[::2], some[1::2], strict=True):
            assert (one % 4, four) == (1, one + 3)
    assert sheet_count(12, stock) == len(list(sheets(faces(*made, stock=stock), stock)))


# Which card stands on which face


def standing(*some: LaidCard) -> list[str]:
    return [stand.card.title if stand.card else "" for stand in place_folded(some).stands]


def test_four_cards_of_one_face_take_the_four_faces_and_nothing_else_does() -> None:
    some = (laid("Fire", 1, "emergency", "3"), laid("Start"), laid("Takeoff"), laid("Landing"))
    assert standing(*some) == ["Fire", "Start", "Takeoff", "Landing"]
    assert [str(stand.label) for stand in place_folded(some).stands] == ["3-1", "4-1", "4-2", "4-3"]
    assert [stand.side for stand in place_folded(some).stands] == [Side.FRONT, Side.BACK, Side.FRONT, Side.BACK]


def test_a_checklist_of_two_faces_stands_inside_and_one_of_one_face_comes_before_it() -> None:
    some = (laid("Fire", 2, "emergency", "3"), laid("Start"), laid("Landing"))
    assert standing(*some) == ["Start", "Fire", "Fire", "Landing"]
    stands = place_folded(some).stands
    assert [str(stand.label) for stand in stands] == ["4-1", "3-1", "3-2", "4-2"]
    assert [stand.open_flat for stand in stands] == [False, True, True, False]


@pytest.mark.parametrize(
    ("counts", "titles"),
    [
        ((4,), ["0", "0", "0", "0"]),
        ((3,), ["0", "0", "0", ""]),
        ((3, 1), ["0", "0", "0", "1"]),
        ((1, 3), ["0", "1", "1", "1"]),
        ((2,), ["", "0", "0", ""]),
        ((2, 2), ["", "0", "0", "", "", "1", "1", ""]),
        ((1, 4), ["0", "", "", "", "1", "1", "1", "1"]),
        ((), []),
    ],
)
def test_how_many_faces_a_checklist_has_says_where_it_may_begin(counts: tuple[int, ...], titles: list[str]) -> None:
    assert standing(*(laid(str(number), count) for number, count in enumerate(counts))) == titles


@settings(deadline=None)
@given(cards())
def test_every_face_of_every_card_stands_once_on_whole_cards_and_labels_are_one_of_a_kind(
    some: tuple[LaidCard, ...],
) -> None:
    stands = place_folded(some).stands
    assert len(stands) % FACES == 0
    found = [(stand.card.key, stand.part) for stand in stands if stand.card]
    assert sorted(found) == sorted((card.key, part) for card in some for part in range(len(card.faces)))
    labels = [str(stand.label) for stand in stands]
    assert len(set(labels)) == len(labels)
    for at, stand in enumerate(stands):
        if stand.open_flat:
            assert at % FACES == 1 + stand.part
        if stand.card and stand.part:
            before = stands[at - 1]
            assert (before.card, before.part) == (stand.card, stand.part - 1)
    whole = [stands[at : at + FACES] for at in range(0, len(stands), FACES)]
    assert all(any(stand.card for stand in card) for card in whole)
    for card in some:
        if card.kind in CHECKLISTS and len(card.faces) <= FACES:
            on = {at // FACES for at, stand in enumerate(stands) if stand.card == card}
            assert len(on) == 1


@given(st.integers(1, 9))
def test_each_book_fills_its_sheets(count: int) -> None:
    stock = FOLDED["A6"]
    some = [laid(f"Card {number}") for number in range(count)]
    assert len(printed(stock, *some)) == -(-count // FACES)
