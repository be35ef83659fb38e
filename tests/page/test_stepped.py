"""Outlines of leaves with cut tabs: closed, smooth, cut once, and where the tab is printed. Whole micrometres.

Outside checks: that an arc is tangent to what it joins, and on which side its circle lies, follows from geometry.
"""

from __future__ import annotations

from itertools import combinations
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.stocks.measures import BLEED, body_of_leaf, tab_radius
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Group, Text
from dotleader.page.extents import Rect, Turned, extents
from dotleader.page.face.thumb_index import section_slot, slot_span
from dotleader.page.imposition import Slot, imposition, on_sheet
from dotleader.page.sheet.cut_shapes import Arc, Circle, Layer, Open, Outline, Point, Straight
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.duplex import TURNINGS
from dotleader.page.sheet.leaf_order import ORDERS
from dotleader.page.sheet.sheets import LeafPlace, Sheet, SheetSide, sheets
from dotleader.page.sheet.stepped import Stepped
from tests.page.leaves import EVERY_KIND, faces
from tests.page.tabbed import TABBED, tabbed_stocks
from tests.page.test_cutting import arcs, first_of, overlap, rect_of, segments

EVERY_TABBED = pytest.mark.parametrize("stock", TABBED.values(), ids=TABBED)


def slot_of_place(place: LeafPlace) -> Slot:
    return Slot(place.x, place.y, place.w, place.h, place.turn)


def printed(stock: Stock, **how: str) -> list[Sheet]:
    return [one for one in sheets(faces(*EVERY_KIND, stock=stock), stock, **how) if one.number]  # type: ignore[arg-type]


def legs(path: Outline | Open) -> list[tuple[Point, Straight | Arc]]:
    found, here = [], path.start
    for part in path.parts:
        found.append((here, part))
        here = part.x, part.y
    return found


def directions(start: Point, part: Straight | Arc) -> tuple[tuple[float, float], tuple[float, float]]:
    """Which way one sets out and which way one arrives; arcs here are quarters."""
    dx, dy = part.x - start[0], part.y - start[1]
    far = hypot(dx, dy)
    if isinstance(part, Straight):
        return (dx / far, dy / far), (dx / far, dy / far)
    half = 0.5**0.5 * (1 if part.clockwise else -1)  # a quarter's chord lies 45 degrees off both of its ends
    cos = 0.5**0.5
    ux, uy = dx / far, dy / far
    return (ux * cos + uy * half, uy * cos - ux * half), (ux * cos - uy * half, uy * cos + ux * half)


@settings(deadline=None)
@given(tabbed_stocks(), st.integers(0, 6), st.sampled_from([0, 90, 180, 270]))
def test_an_outline_is_closed_smooth_and_within_its_leaf(stock: Stock, tab: int, turn: int) -> None:
    width, height = stock.leaf if turn % 180 == 0 else stock.leaf[::-1]
    slot = Slot(7_000, 9_000, width, height, turn)
    path = Stepped(stock, slot, tab, slot.rect).outline()
    found = legs(path)
    assert (path.parts[-1].x, path.parts[-1].y) == path.start
    xs, ys = [start[0] for start, _ in found], [start[1] for start, _ in found]
    assert Rect(min(xs), min(ys), max(xs), max(ys)) == slot.rect
    corners = 0
    for (start, part), (there, following) in zip(found, [*found[1:], found[0]], strict=True):
        assert (part.x, part.y) == there != start
        if isinstance(part, Arc):
            assert abs(part.x - start[0]) == abs(part.y - start[1]) == part.radius
        arrives, leaves = directions(start, part)[1], directions(there, following)[0]
        if hypot(arrives[0] - leaves[0], arrives[1] - leaves[1]) > 1e-9:
            corners += 1
    assert corners == (0 if stock.corner_radius else 4)
    bends = [part for _, part in found if isinstance(part, Arc)]
    hollow = [arc for arc in bends if not arc.clockwise]
    assert [arc.radius for arc in hollow] == [tab_radius(stock)] * 2
    assert len(bends) == 4 + (4 if stock.corner_radius else 0)
    assert tab_radius(stock) >= 2_000


@settings(deadline=None)
@given(tabbed_stocks(), st.integers(0, 6))
def test_a_tab_stands_where_the_thumb_index_has_it_and_the_edge_is_back_by_the_recess(stock: Stock, tab: int) -> None:
    slot = Slot(0, 0, *stock.leaf, 0)
    edge, _ = body_of_leaf(stock)
    levels = {
        y
        for start, part in legs(Stepped(stock, slot, tab, slot.rect).outline())
        for y in (start[1], part.y)
        if min(start[0], part.x) > edge
    }
    top, low = slot_span(stock, tab)
    assert (min(levels), max(levels)) == (top, low)
    assert edge == stock.leaf[0] - stock.recess


@settings(deadline=None, max_examples=40)
@given(tabbed_stocks(), st.sampled_from(ORDERS))
def test_all_of_an_outline_is_cut_once_or_is_the_edge_of_the_paper(stock: Stock, order: str) -> None:
    some = printed(stock, order=order)
    for cutting in cuttings(some, stock):
        lines, bends = segments(cutting), arcs(cutting)
        assert not any(overlap(one, other) for one, other in combinations(lines, 2))
        assert len(set(bends)) == len(bends)
        wanted: set[tuple[Point, Arc]] = set()
        ends_of_lines: set[Point] = set()
        for place in first_of(cutting, some).front.leaves:
            whole = Stepped(stock, slot_of_place(place), place.tab, snapped(rect_of(place), stock)).outline()
            left, top, right, bottom = snapped(rect_of(place), stock)
            ends_of_lines |= {(x, y) for x in (left, right) for y in (top, bottom)}
            for start, part in legs(whole):
                ends_of_lines.add(start)
                if isinstance(part, Arc):
                    wanted.add((start, part))
                    continue
                ends = min(start, (part.x, part.y)), max(start, (part.x, part.y))
                if at_edge(ends, stock.paper):
                    assert not any(overlap(ends, line) for line in lines)
                else:
                    assert any(overlap(ends, line) and line[0] <= ends[0] and ends[1] <= line[1] for line in lines)
        assert wanted == set(bends)
        assert {end for line in lines for end in line} <= ends_of_lines


def snapped(rect: Rect, stock: Stock) -> Rect:
    (width, height), near = stock.paper, 1_500
    return Rect(
        0 if rect.left <= near else rect.left,
        0 if rect.top <= near else rect.top,
        width if width - rect.right <= near else rect.right,
        height if height - rect.bottom <= near else rect.bottom,
    )


def at_edge(ends: tuple[Point, Point], paper: tuple[int, int]) -> bool:
    return any({end[axis] for end in ends} in ({0}, {paper[axis]}) for axis in (0, 1))


@settings(deadline=None, max_examples=40)
@given(tabbed_stocks())
def test_what_is_cut_goes_through_no_hole_and_no_other_leaf(stock: Stock) -> None:
    some = printed(stock)
    for cutting in cuttings(some, stock):
        places = first_of(cutting, some).front.leaves
        holes = [hole for hole in cutting.on(Layer.HOLES) if isinstance(hole, Circle)]
        for path in cutting.on(Layer.OUTLINES):
            assert not isinstance(path, Circle)
            for (x, y), part in legs(path):
                box = Rect(min(x, part.x), min(y, part.y), max(x, part.x) + 1, max(y, part.y) + 1)
                for hole in holes:
                    r = hole.radius
                    assert not box.meets(Rect(hole.x - r, hole.y - r, hole.x + r, hole.y + r))
                if isinstance(part, Straight):
                    assert not any(crosses(box, body(stock, place)) for place in places)


def crosses(box: Rect, inner: Rect) -> bool:
    return box.meets(inner)


def body(stock: Stock, place: LeafPlace) -> Rect:
    """A leaf but for the strip of its tabs, a little inside of its edges."""
    edge, height = body_of_leaf(stock)
    left, top, right, bottom = on_sheet(slot_of_place(place)).rect(0, 0, edge, height)
    return Rect(left + 2, top + 2, right - 2, bottom - 2)


@EVERY_TABBED
@pytest.mark.parametrize("turning", TURNINGS)
def test_tabs_are_printed_where_they_are_cut_on_both_sides(stock: Stock, turning: str) -> None:
    (width, height), reached = stock.paper, imposition(stock).margin
    for sheet in printed(stock, turning=turning):
        for place, front, back in zip(sheet.front.leaves, black_tabs(sheet.front), black_tabs(sheet.back), strict=True):
            top, low = slot_span(stock, place.tab)
            tab = on_sheet(slot_of_place(place)).rect(stock.leaf[0] - stock.recess, top, stock.leaf[0], low)
            within = tab.common(Rect(reached, reached, width - reached, height - reached))
            seen = (
                back if turning == "short-edge" else Rect(width - back.right, back.top, width - back.left, back.bottom)
            )
            seen = (
                Rect(back.left, height - back.bottom, back.right, height - back.top)
                if turning == "short-edge"
                else seen
            )
            assert within.inside(front)
            assert within.inside(seen)
            assert seen == front
            if not imposition(stock).filling and len(imposition(stock).slots) == 1:
                # it bleeds past the outline, and over the round inner corners
                assert front.right - front.left + front.bottom - front.top == (
                    tab.right - tab.left + tab.bottom - tab.top + 3 * BLEED
                )


def black_tabs(side: SheetSide) -> list[Rect]:
    """The black ground of each leaf's tab: the box that its section's word stands on."""
    found = []
    for group in side.items:
        if isinstance(group, Group) and group.role == "leaf":
            place = Turned(group.x, group.y, group.turn)
            (edge,) = (inner for inner in group.items if isinstance(inner, Group) and inner.role == "edge")
            drawn = list(extents(edge.items, place.then(edge)))
            at = next(n for n, (item, _) in enumerate(drawn) if isinstance(item, Text) and item.string[:1].isdigit())
            found.append(next(ink for item, ink in reversed(drawn[:at]) if isinstance(item, Box)))
    return found


@EVERY_TABBED
@pytest.mark.parametrize("order", ORDERS)
def test_sheets_are_cut_alike_only_where_their_tabs_are_in_the_same_places(stock: Stock, order: str) -> None:
    some = printed(stock, order=order)
    tabs = {sheet.number: tuple(place.tab for place in sheet.front.leaves) for sheet in some}
    sections = {sheet.number: [place.label.partition("-")[0] for place in sheet.front.leaves] for sheet in some}
    for sheet in some:
        assert tabs[sheet.number] == tuple(section_slot(section) for section in sections[sheet.number])
        assert tabs[sheet.number] == tuple(place.tab for place in sheet.back.leaves)
        for other in some:
            alike = tabs[sheet.number] == tabs[other.number]
            assert (sheet.arrangement == other.arrangement) is alike
    for cutting in cuttings(some, stock):
        assert len({tabs[number] for number in cutting.sheets}) == 1


@EVERY_TABBED
def test_crop_marks_say_where_the_edge_is_cut_back_and_where_the_tab_ends(stock: Stock) -> None:
    if imposition(stock).filling:
        return
    for sheet in printed(stock):
        for side in sheet.sides:
            marks = {
                ink
                for group in side.items
                if isinstance(group, Group) and group.role == "crop"
                for _, ink in extents(group.items)
            }
            for place, front in zip(side.leaves, sheet.front.leaves, strict=True):
                upright = slot_of_place(front)
                edge, height = body_of_leaf(stock)
                top, low = slot_span(stock, front.tab)
                for x, y, dx, dy in (
                    (edge, 0, 0, -1),
                    (edge, height, 0, 1),
                    (stock.leaf[0], top, 1, 0),
                    (stock.leaf[0], low, 1, 0),
                ):
                    near, far = (on_sheet(upright).point(x + dx * off, y + dy * off) for off in (3_500, 8_500))
                    if side is sheet.back:
                        near, far = ((stock.paper[0] - px, py) for px, py in (near, far))
                    box = Rect(min(near[0], far[0]), min(near[1], far[1]), max(near[0], far[0]), max(near[1], far[1]))
                    assert any(
                        abs(box.left + box.right - ink.left - ink.right) <= 2
                        and abs(box.top + box.bottom - ink.top - ink.bottom) <= 2
                        for ink in marks
                    )
                assert place.tab == front.tab


@EVERY_TABBED
def test_where_no_mark_can_stand_the_setting_up_sheet_says_where_tabs_are(stock: Stock) -> None:
    first = next(iter(sheets(faces(*EVERY_KIND, stock=stock), stock)))
    said = " ".join(item.string for item, _ in extents(first.front.items) if isinstance(item, Text))
    said = said.replace("\u00a0", " ")
    assert (f"back by {stock.recess // 1000} mm" in said) is imposition(stock).filling
    if imposition(stock).filling:
        for section in ("2", "3", "3A", "4"):
            top, low = (round(end / 1000, 1) for end in slot_span(stock, section_slot(section)))
            assert f"{section} from {top:g} mm to {low:g} mm" in said
