"""Sheets: leaves on the paper, front and back. Positions in micrometres.

Outside checks: where the back of a sheet lands, (x, y) to (W - x, y) when it is turned about its long edge, follows
from geometry and agrees with the trade's left offset that moves backs the other way (a printer language's manual);
(x, y) to (x, H - y) when it is turned about its short edge (IPP `two-sided-short-edge`), from geometry;
two A5 fill A4 and two half letters fill letter with no room for bleed (ISO 216, US sizes); crop marks stand
outside the bleed (common practice of print shops).
"""

from __future__ import annotations

import pytest

from dotleader.handbook.stocks.measures import PRINTABLE_MARGIN, hole_strip
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Group, Line, Link, Text, mm
from dotleader.page.extents import HERE, Rect, Turned, extents
from dotleader.page.face.placement import Side
from dotleader.page.imposition import Slot, imposition, on_sheet
from dotleader.page.laid import LaidCard
from dotleader.page.sheet.cut_files import cut_file
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.holes import hole_centres
from dotleader.page.sheet.sheet_marks import HOLE_CROSS
from dotleader.page.sheet.sheets import LeafPlace, Sheet, SheetSide, sheet_count, sheets
from tests.page.leaves import EVERY_KIND, STOCKS, faces, laid

BOTH_TURNINGS = pytest.mark.parametrize("turning", TURNINGS)
ALL_STOCKS = pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)
MANY = tuple(laid(f"Card {number}", kind="emergency", section="3", thumb="fuel") for number in range(30))


def printed(stock: Stock, *cards: LaidCard, turning: Turning = "long-edge") -> list[Sheet]:
    return list(sheets(faces(*(cards or EVERY_KIND), stock=stock), stock, turning=turning))


def leaf_sheets(stock: Stock, turning: Turning = "long-edge") -> list[Sheet]:
    return [sheet for sheet in printed(stock, turning=turning) if sheet.number]


def through(stock: Stock, turning: Turning, rect: Rect) -> Rect:
    """A rectangle of one side, as it is seen through the paper from the other."""
    (width, height), (left, top, right, bottom) = stock.paper, rect
    if turning == "long-edge":
        return Rect(width - right, top, width - left, bottom)
    return Rect(left, height - bottom, right, height - top)


def role(side: SheetSide, name: str) -> list[Group]:
    return [item for item in side.items if isinstance(item, Group) and item.role == name]


def rect_of(place: LeafPlace | Slot, more: int = 0) -> Rect:
    return Rect(place.x - more, place.y - more, place.x + place.w + more, place.y + place.h + more)


def within(groups: tuple[Drawn, ...], name: str, at: Turned = HERE) -> list[tuple[Drawn, Rect]]:
    """What stands in groups of that role, in the coordinates of the sheet."""
    found: list[tuple[Drawn, Rect]] = []
    for item in groups:
        if isinstance(item, Group):
            there = at.then(item)
            found += extents(item.items, there) if item.role == name else within(item.items, name, there)
    return found


def holes(side: SheetSide) -> set[Rect]:
    return {ink for item, ink in within(side.items, "holes") if isinstance(item, Box)}


@ALL_STOCKS
@BOTH_TURNINGS
def test_holes_of_both_sides_lie_behind_each_other(stock: Stock, turning: Turning) -> None:
    for sheet in leaf_sheets(stock, turning):
        seen = {through(stock, turning, hole) for hole in holes(sheet.back)}
        assert seen == holes(sheet.front)
        assert len(seen) == len(stock.holes) * len(sheet.front.leaves)


@ALL_STOCKS
@BOTH_TURNINGS
def test_leaves_of_both_sides_lie_behind_each_other(stock: Stock, turning: Turning) -> None:
    for sheet in leaf_sheets(stock, turning):
        for front, back in zip(sheet.front.leaves, sheet.back.leaves, strict=True):
            assert through(stock, turning, rect_of(back)) == rect_of(front)


@ALL_STOCKS
@BOTH_TURNINGS
def test_crop_marks_of_both_sides_lie_behind_each_other(stock: Stock, turning: Turning) -> None:
    for sheet in leaf_sheets(stock, turning):
        front, back = ({ink for group in role(s, "crop") for _, ink in extents(group.items)} for s in sheet.sides)
        assert {through(stock, turning, ink) for ink in back} == front
        assert bool(front) is not imposition(stock).filling


@ALL_STOCKS
def test_every_leaf_is_printed_once_with_its_back_behind_it(stock: Stock) -> None:
    made = faces(*EVERY_KIND, stock=stock)
    found = leaf_sheets(stock)
    fronts = [place.label for sheet in found for place in sheet.front.leaves]
    backs = [place.label for sheet in found for place in sheet.back.leaves]
    assert fronts == [str(face.label) for face in made[::2]]
    assert backs == [str(face.label) for face in made[1::2]]
    assert [sheet.number for sheet in found] == list(range(1, len(found) + 1))
    assert all((sheet.front.side, sheet.back.side) == (Side.FRONT, Side.BACK) for sheet in found)
    assert sheet_count(len(made), stock) == len(printed(stock))


@ALL_STOCKS
@BOTH_TURNINGS
def test_no_ink_in_the_hole_strip_of_a_sheet_but_the_marks_of_the_holes(stock: Stock, turning: Turning) -> None:
    for sheet in leaf_sheets(stock, turning):
        for side in sheet.sides:
            for place in side.leaves:
                strip = strip_on_sheet(stock, side.side, place)
                marks = {ink for _, ink in within(side.items, "holes")}
                for _, ink in extents(side.items):
                    if ink.meets(strip):
                        assert ink in marks


def strip_on_sheet(stock: Stock, side: Side, place: LeafPlace) -> Rect:
    width, height, deep = *stock.leaf, hole_strip(stock)
    if stock.bound_at == "left":
        left = 0 if side is Side.FRONT else width - deep
        strip = (left, 0, left + deep, height)
    else:
        top = 0 if side is Side.FRONT else height - deep
        strip = (0, top, width, top + deep)
    return on_sheet(Slot(place.x, place.y, place.w, place.h, place.turn)).rect(*strip)


@ALL_STOCKS
def test_a_hole_is_marked_by_a_circle_of_its_width_and_a_cross(stock: Stock) -> None:
    for side in (Side.FRONT, Side.BACK):
        for x, y in hole_centres(stock, side):
            assert 0 < x < stock.leaf[0]
            assert 0 < y < stock.leaf[1]
    first = leaf_sheets(stock)[0].front
    marks = within(first.items, "holes")
    for item, _ in marks:
        if isinstance(item, Box):
            assert item.w == item.h == 2 * item.radius == stock.hole_diameter
        else:
            assert isinstance(item, Line)
            assert sum(abs(b - a) for a, b in zip(*item.points, strict=True)) == 2 * HOLE_CROSS
    assert len(marks) == 3 * len(stock.holes) * len(first.leaves)


@ALL_STOCKS
@BOTH_TURNINGS
def test_ink_of_a_leaf_stays_on_it_but_for_the_bleed(stock: Stock, turning: Turning) -> None:
    laid_out = imposition(stock)
    paper = Rect(0, 0, *stock.paper)
    reached = Rect(mm(5), mm(5), stock.paper[0] - mm(5), stock.paper[1] - mm(5))
    for sheet in printed(stock, *MANY, turning=turning):
        for side in sheet.sides:
            for place, group in zip(side.leaves, role(side, "leaf"), strict=True):
                room = rect_of(place) if laid_out.filling else rect_of(place, mm(3))
                for _, ink in extents((group,)):
                    assert ink.inside(room)
            for item, ink in within(side.items, "edge"):
                assert isinstance(item, Text) or ink.inside(reached)
            assert all(ink.inside(paper) for _, ink in extents(side.items))


@pytest.mark.parametrize("name", ["A5", "A6", "half letter", "A4", "letter"])
def test_where_leaves_fill_the_paper_bands_are_seen_and_end_where_the_printer_does(name: str) -> None:
    stock = STOCKS[name]
    for sheet in printed(stock, *MANY)[1:]:
        for side in sheet.sides:
            bands = [ink for item, ink in within(side.items, "edge") if isinstance(item, Box)]
            assert bands
            for band in bands:
                assert min(band.right - band.left, band.bottom - band.top) == mm(6)
            longest = max(max(band.right - band.left, band.bottom - band.top) for band in bands)
            ends = 2 * PRINTABLE_MARGIN if len(imposition(stock).slots) < 4 else PRINTABLE_MARGIN
            assert abs(longest - (stock.leaf[1] - ends)) <= mm(1)


@ALL_STOCKS
@BOTH_TURNINGS
def test_crop_marks_stand_outside_the_bleed_of_every_leaf(stock: Stock, turning: Turning) -> None:
    laid_out = imposition(stock)
    reached = Rect(mm(5), mm(5), stock.paper[0] - mm(5), stock.paper[1] - mm(5))
    for sheet in leaf_sheets(stock, turning):
        for side in sheet.sides:
            marks = [(item, ink) for group in role(side, "crop") for item, ink in extents(group.items)]
            if laid_out.filling:
                assert marks == []
                continue
            assert len(marks) >= 8
            for item, ink in marks:
                assert isinstance(item, Line)
                (x1, y1), (x2, y2) = item.points
                assert abs(x2 - x1) + abs(y2 - y1) == mm(5)
                assert Rect(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)).inside(reached)
                for place in side.leaves:
                    assert not ink.meets(rect_of(place, mm(3)))
            for place in side.leaves:
                for x in (place.x, place.x + place.w):
                    assert Rect(x - 44, place.y - 8_500, x + 44, place.y - 3_500) in {ink for _, ink in marks}


@ALL_STOCKS
@BOTH_TURNINGS
def test_every_print_has_two_rulers_of_exactly_100_mm_at_right_angles_in_the_waste(
    stock: Stock, turning: Turning
) -> None:
    first = printed(stock, turning=turning)[0]
    reached = Rect(mm(5), mm(5), stock.paper[0] - mm(5), stock.paper[1] - mm(5))
    for side in first.sides:
        if first.number:
            (group,) = role(side, "rulers")
            drawn = tuple(extents(group.items))
        else:
            assert side.leaves == ()
            drawn = tuple(extents(side.items))
        long = [item for item, _ in drawn if isinstance(item, Line) and length(item) >= mm(60)]
        assert sorted(direction(line) for line in long) == ["level", "upright"]
        assert all(length(line) == 100_000 for line in long)
        for _, ink in drawn:
            assert ink.inside(reached)
            assert not any(ink.meets(rect_of(place, mm(3))) for place in side.leaves)
        crops = [ink for group in role(side, "crop") for _, ink in extents(group.items)]
        if first.number:
            assert not any(ink.meets(crop) for _, ink in drawn for crop in crops)


def length(line: Line) -> int:
    (x1, y1), (x2, y2) = line.points
    return abs(x2 - x1) + abs(y2 - y1)


def direction(line: Line) -> str:
    (x1, _), (x2, _) = line.points
    return "upright" if x1 == x2 else "level"


@pytest.mark.parametrize("name", ["A5", "A6", "A4", "half letter", "letter", "bound at the top"])
@BOTH_TURNINGS
def test_where_there_is_no_waste_a_sheet_of_rulers_comes_first_and_says_where_to_cut(
    name: str, turning: Turning
) -> None:
    first, second, *_ = printed(STOCKS[name], turning=turning)
    assert (first.number, second.number) == (0, 1)
    words = " ".join(item.string for item, _ in extents(first.front.items) if isinstance(item, Text))
    assert "100 %" in words
    assert f"turned on the {turning.replace('-', ' ')}." in words.replace("\u00a0", " ")
    cut = {"A5": "148.5 mm", "A6": "148.5 mm", "half letter": "139.7 mm", "bound at the top": "148.5 mm"}
    assert cut.get(name, "nothing is cut") in words.replace("\u00a0", " ")
    assert role(second.front, "note") == []


@ALL_STOCKS
@BOTH_TURNINGS
def test_a_sheet_says_its_number_side_and_edge_in_the_waste(stock: Stock, turning: Turning) -> None:
    how = f"Print at 100 %. Turn on the {'long' if turning == 'long-edge' else 'short'} edge."
    for sheet in leaf_sheets(stock, turning):
        for side in sheet.sides:
            notes = role(side, "note")
            assert bool(notes) is not imposition(stock).filling
            for group in notes:
                ((text, ink),) = extents(group.items)
                assert isinstance(text, Text)
                said = f"Sheet {sheet.number}, {side.side.value} side. {how}"
                assert text.string.removesuffix(f" Cut by {cut_file(sheet.arrangement)}.") == said
                others = [i for g in side.items if g is not group for _, i in extents((g,))]
                assert not any(ink.meets(other) for other in others)
                assert not any(ink.meets(rect_of(place, mm(3))) for place in side.leaves)


def test_with_one_leaf_to_a_sheet_the_cut_pile_is_in_order() -> None:
    labels = [sheet.front.leaves[0].label for sheet in leaf_sheets(STOCKS["sample"])]
    assert labels == [str(face.label) for face in faces(*EVERY_KIND)[::2]]


def test_sheets_bear_no_links() -> None:
    def links(items: tuple[Drawn, ...]) -> int:
        return sum(isinstance(i, Link) + (links(i.items) if isinstance(i, Group) else 0) for i in items)

    assert sum(links(side.items) for sheet in printed(STOCKS["sample"]) for side in sheet.sides) == 0


@ALL_STOCKS
@BOTH_TURNINGS
def test_backs_say_as_much_as_they_have_room_for(stock: Stock, turning: Turning) -> None:
    sayings = (
        "Corrected for a printer with a very long name, which moves backs: 0.8 mm right, 0.3 mm down.",
        "Corrected.",
    )
    found = list(sheets(faces(*EVERY_KIND, stock=stock), stock, backs_say=sayings, turning=turning))
    for sheet in found:
        said = " ".join(text.string for text, _ in extents(sheet.back.items) if isinstance(text, Text))
        assert ("Corrected" in said) is not (imposition(stock).filling and sheet.number > 0)
        for group in role(sheet.back, "note"):
            ((_, ink),) = extents(group.items)
            first = imposition(stock).slots[0]
            assert ink.right <= first.x + first.w
            assert (sayings[0] in said) is (first.w > mm(150))
            others = [i for g in sheet.back.items if g is not group for _, i in extents((g,))]
            assert not any(ink.meets(other) for other in others)
    assert "Corrected" not in str([sheet.front for sheet in found])
