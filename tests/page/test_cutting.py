"""Paths to cut by, from the leaves on a sheet. Whole micrometres.

Outside checks: two A5 fill A4 and two half letters fill letter, so that their common side is one cut (ISO 216, US
sizes).
"""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.stocks.measures import FILLING
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Text
from dotleader.page.extents import Rect, extents
from dotleader.page.imposition import imposition
from dotleader.page.sheet.cut_files import cut_by, cut_file
from dotleader.page.sheet.cut_shapes import Arc, Circle, Cutting, Layer, Open, Outline, Point, Straight
from dotleader.page.sheet.cutting import cuttings, outline
from dotleader.page.sheet.sheets import LeafPlace, Sheet, sheets
from dotleader.source.record import replace
from tests.page.leaves import EVERY_KIND, STOCKS, faces, laid, stocks

ALL_STOCKS = pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)
COUNTED = {leaves: tuple(laid(f"Card {number}", 2) for number in range(leaves)) for leaves in range(1, 10)}
SQUARE = {name: replace(stock, corner_radius=0) for name, stock in STOCKS.items()}


def printed(stock: Stock, leaves: int = 0) -> list[Sheet]:
    cards = COUNTED[leaves] if leaves else EVERY_KIND
    return [sheet for sheet in sheets(faces(*cards, stock=stock), stock) if sheet.number]


@st.composite
def cut_sheets(draw: st.DrawFn) -> tuple[Stock, list[Sheet], tuple[Cutting, ...]]:
    stock = draw(stocks())
    stock = replace(stock, corner_radius=draw(st.sampled_from([0, stock.corner_radius])))
    some = printed(stock, draw(st.integers(1, 9)))
    return stock, some, cuttings(some, stock)


def first_of(cutting: Cutting, some: list[Sheet]) -> Sheet:
    return next(sheet for sheet in some if sheet.number == cutting.sheets[0])


def rect_of(place: LeafPlace) -> Rect:
    return Rect(place.x, place.y, place.x + place.w, place.y + place.h)


def around(path: Outline | Open) -> Rect:
    """The corners of a path whose arcs are quarters, or the rectangle it is in."""
    points = [path.start, *((part.x, part.y) for part in path.parts)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Rect(min(xs), min(ys), max(xs), max(ys))


def segments(cutting: Cutting) -> list[tuple[Point, Point]]:
    """Every straight stretch that is cut, from its upper or left end."""
    found = []
    for path in cutting.on(Layer.OUTLINES):
        assert not isinstance(path, Circle)
        here = path.start
        for part in path.parts:
            if isinstance(part, Straight):
                found.append((min(here, (part.x, part.y)), max(here, (part.x, part.y))))
            here = part.x, part.y
    return found


def arcs(cutting: Cutting) -> list[tuple[Point, Arc]]:
    found = []
    for path in cutting.on(Layer.OUTLINES):
        assert not isinstance(path, Circle)
        here = path.start
        for part in path.parts:
            if isinstance(part, Arc):
                found.append((here, part))
            here = part.x, part.y
    return found


def overlap(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    for along in (0, 1):
        across = 1 - along
        if len({point[across] for point in (*one, *other)}) == 1:
            return max(one[0][along], other[0][along]) < min(one[1][along], other[1][along])
    return False


@settings(deadline=None)
@given(cut_sheets())
def test_holes_lie_within_their_leaf_and_each_is_cut_once(made: tuple[Stock, list[Sheet], tuple[Cutting, ...]]) -> None:
    stock, some, found = made
    for cutting in found:
        leaves = [rect_of(place) for place in first_of(cutting, some).front.leaves]
        holes = [hole for hole in cutting.on(Layer.HOLES) if isinstance(hole, Circle)]
        assert len(set(holes)) == len(cutting.on(Layer.HOLES)) == len(stock.holes) * len(leaves)
        for x, y, radius in ((hole.x, hole.y, hole.radius) for hole in holes):
            assert sum(Rect(x - radius, y - radius, x + radius, y + radius).inside(leaf) for leaf in leaves) == 1


@settings(deadline=None)
@given(cut_sheets())
def test_every_outline_is_closed_and_has_its_leaf_in_the_same_place_on_both_sides(
    made: tuple[Stock, list[Sheet], tuple[Cutting, ...]],
) -> None:
    stock, some, found = made
    width = stock.paper[0]
    for cutting in found:
        sheet = first_of(cutting, some)
        outlines = [path for path in cutting.on(Layer.OUTLINES) if isinstance(path, Outline)]
        for path in outlines:
            assert (path.parts[-1].x, path.parts[-1].y) == path.start
        seen = {around(path) for path in outlines}
        assert len(seen) == len(outlines)
        backs = {Rect(width - r, top, width - left, low) for left, top, r, low in map(rect_of, sheet.back.leaves)}
        if imposition(stock).filling:
            assert seen == set()
        else:
            assert seen == {rect_of(place) for place in sheet.front.leaves} == backs


@settings(deadline=None)
@given(cut_sheets())
def test_every_side_of_a_leaf_is_cut_or_is_the_edge_of_the_paper(
    made: tuple[Stock, list[Sheet], tuple[Cutting, ...]],
) -> None:
    stock, some, found = made
    radius = stock.corner_radius
    for cutting in found:
        lines = segments(cutting)
        for left, top, right, bottom in (rect_of(place) for place in first_of(cutting, some).front.leaves):
            sides = {
                left: ((left, top + radius), (left, bottom - radius)),
                stock.paper[0] - right: ((right, top + radius), (right, bottom - radius)),
            }
            level = {
                top: ((left + radius, top), (right - radius, top)),
                stock.paper[1] - bottom: ((left + radius, bottom), (right - radius, bottom)),
            }
            for waste, (start, end) in (*sides.items(), *level.items()):
                cut = any(overlap((start, end), line) and line[0] <= start and end <= line[1] for line in lines)
                assert cut is (waste > FILLING)


@settings(deadline=None)
@given(cut_sheets())
def test_nothing_is_cut_twice(made: tuple[Stock, list[Sheet], tuple[Cutting, ...]]) -> None:
    _, _, found = made
    for cutting in found:
        assert len(set(cutting.cuts)) == len(cutting.cuts)
        assert not any(overlap(one, other) for one, other in combinations(segments(cutting), 2))
        assert len(set(arcs(cutting))) == len(arcs(cutting))


@settings(deadline=None)
@given(cut_sheets())
def test_corners_are_quarters_of_circles_that_bulge_outwards(
    made: tuple[Stock, list[Sheet], tuple[Cutting, ...]],
) -> None:
    stock, some, found = made
    for cutting in found:
        leaves = len(first_of(cutting, some).front.leaves)
        assert len(arcs(cutting)) == (4 * leaves if stock.corner_radius else 0)
        for (x, y), arc in arcs(cutting):
            assert abs(arc.x - x) == abs(arc.y - y) == arc.radius == stock.corner_radius
            assert arc.clockwise


@settings(deadline=None)
@given(cut_sheets())
def test_inner_paths_are_cut_before_outer_ones(made: tuple[Stock, list[Sheet], tuple[Cutting, ...]]) -> None:
    _, _, found = made
    order = list(Layer)
    for cutting in found:
        layers = [order.index(cut.layer) for cut in cutting.cuts]
        assert layers == sorted(layers)
        kinds = [isinstance(path, Outline) for path in cutting.on(Layer.OUTLINES)]
        assert kinds == sorted(kinds)
        open_paths = [path for path in cutting.on(Layer.OUTLINES) if isinstance(path, Open)]
        rounded = [isinstance(path.parts[0], Arc) for path in open_paths]
        assert rounded == sorted(rounded, reverse=True)


@settings(deadline=None)
@given(cut_sheets())
def test_each_sheet_has_the_cutting_of_its_arrangement(made: tuple[Stock, list[Sheet], tuple[Cutting, ...]]) -> None:
    stock, some, found = made
    assert [cutting.number for cutting in found] == list(range(1, len(found) + 1))
    assert sorted(number for cutting in found for number in cutting.sheets) == [sheet.number for sheet in some]
    places = [
        tuple((place.x, place.y, place.w, place.h, place.turn) for place in first_of(cutting, some).front.leaves)
        for cutting in found
    ]
    assert len(set(places)) == len(places)
    for cutting in found:
        for sheet in some:
            if sheet.number in cutting.sheets:
                assert sheet.arrangement == cutting.number
                assert tuple(cuttings([sheet], stock)[0].cuts) == cutting.cuts


@pytest.mark.parametrize(
    ("name", "lines"),
    [
        ("A5", {((0, 148_500), (210_000, 148_500))}),
        ("half letter", {((0, 139_700), (215_900, 139_700))}),
        ("A6", {((0, 148_500), (210_000, 148_500)), ((105_000, 0), (105_000, 297_000))}),
        ("A4", set()),
    ],
)
def test_leaves_that_fill_their_paper_share_lines_which_are_open_and_cut_once(
    name: str, lines: set[tuple[Point, Point]]
) -> None:
    for stock in (STOCKS[name], SQUARE[name]):
        first, *_ = cuttings(printed(stock), stock)
        paths = first.on(Layer.OUTLINES)
        assert all(isinstance(path, Open) for path in paths)
        assert set(segments(first)) == lines
        assert len(paths) == len(lines) + len(arcs(first))


def test_a_leaf_that_is_its_paper_with_square_corners_and_no_holes_has_nothing_to_cut() -> None:
    stock = replace(SQUARE["A4"], holes=())
    (cutting,) = cuttings(printed(stock), stock)
    assert cutting.is_empty
    assert [cut.layer for cut in cutting.cuts] == [Layer.PAPER]
    assert not cuttings(printed(STOCKS["A4"]), STOCKS["A4"])[0].is_empty


@ALL_STOCKS
def test_the_pouch_stands_around_its_leaf_for_reference(stock: Stock) -> None:
    for cutting in cuttings(printed(stock), stock):
        pouches = [around(path) for path in cutting.on(Layer.POUCH) if isinstance(path, Outline)]
        leaves = next(sheet for sheet in printed(stock) if sheet.number in cutting.sheets).front.leaves
        assert len(pouches) == (0 if stock.pouch == (0, 0) else len(leaves))
        for pouch, leaf in zip(pouches, map(rect_of, leaves), strict=False):
            assert (leaf.left - pouch.left, leaf.top - pouch.top) == (3_175, 3_175)
            assert (pouch.right - leaf.right, pouch.bottom - leaf.bottom) == (3_175, 3_175)
        (paper,) = cutting.on(Layer.PAPER)
        assert paper == outline(Rect(0, 0, *stock.paper))


def test_a_pouch_lies_across_with_its_leaf() -> None:
    stock = replace(STOCKS["two across"], pouch=(106_000, 148_000))
    (first, *_) = cuttings(printed(stock), stock)
    (left, top, right, bottom), *_ = (around(path) for path in first.on(Layer.POUCH) if isinstance(path, Outline))
    assert (right - left, bottom - top) == (148_000, 106_000)


def test_what_the_files_are_called_and_which_sheet_has_which() -> None:
    assert [cut_file(1), cut_file(2), cut_file(2, "dxf")] == ["cut.svg", "cut-2.svg", "cut-2.dxf"]
    assert cut_by([1, 1, 1]) == "A machine cuts every sheet by cut.svg."
    assert cut_by([1, 1, 2]) == "A machine cuts sheets 1 and 2 by cut.svg and sheet 3 by cut-2.svg."
    assert cut_by([1, 1, 1, 2]) == "A machine cuts sheets 1 to 3 by cut.svg and sheet 4 by cut-2.svg."
    assert cut_by([1, 2, 1]) == "A machine cuts sheets 1 and 3 by cut.svg and sheet 2 by cut-2.svg."


def test_a_sheet_says_by_which_file_it_is_cut() -> None:
    stock = STOCKS["two across"]
    *full, last = printed(stock)
    assert (full[0].arrangement, last.arrangement) == (1, 2)
    for sheet, name in ((full[0], "cut.svg"), (last, "cut-2.svg")):
        said = [item.string for item, _ in extents(sheet.front.items) if isinstance(item, Text)]
        assert any(text.startswith("Sheet ") and text.endswith(f" Cut by {name}.") for text in said)
        assert not any("Cut by" in item.string for item, _ in extents(sheet.back.items) if isinstance(item, Text))


@pytest.mark.parametrize("name", ["A5", "A6", "half letter", "A4"])
def test_where_leaves_fill_the_paper_the_sheet_of_rulers_says_it(name: str) -> None:
    stock = STOCKS[name]
    first, *others = sheets(faces(*EVERY_KIND, stock=stock), stock)
    words = " ".join(item.string for item, _ in extents(first.front.items) if isinstance(item, Text))
    words = words.replace("\u00a0", " ")
    for number in {sheet.arrangement for sheet in others}:
        assert cut_file(number) in words
    bare = replace(SQUARE["A4"], holes=())
    first, *_ = sheets(faces(*EVERY_KIND, stock=bare), bare)
    assert not any("cut.svg" in item.string for item, _ in extents(first.front.items) if isinstance(item, Text))
