"""The steps of the thumb index, printed or cut: clear of holes, corners, head and foot, and of each other."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.stocks.measures import (
    FREE_EDGE,
    HOLE_CLEARANCE,
    LEAST_TAB,
    TABS_FROM_ENDS,
    body_of_leaf,
    hole_strip,
    tab_radius,
)
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Ink, Text, mm
from dotleader.page.extents import Rect, extents
from dotleader.page.face.edges import shown_areas
from dotleader.page.face.faces import Face
from dotleader.page.face.margins import margins
from dotleader.page.face.placement import Side
from dotleader.page.face.thumb_index import SLOTS, leaf_area, section_slot, section_word, slot_of, slot_span
from dotleader.page.frames import band_width, frame_of
from dotleader.page.imposition import lost_at_outer_edge
from dotleader.page.labels import SECTIONS
from dotleader.page.sheet.holes import hole_centres
from dotleader.page.sheet.reading import reading_pages
from dotleader.source.record import replace
from tests.page.leaves import EVERY_KIND, faces, laid, role, stocks
from tests.page.tabbed import EVERY_STOCK, TABBED, tabbed_stocks

ALL = EVERY_STOCK | TABBED
EVERY_TABBED = pytest.mark.parametrize("stock", TABBED.values(), ids=TABBED)


def steps(stock: Stock) -> list[Rect]:
    """What each step takes on a front, with the rounding beside a tab that is cut."""
    width, _ = stock.leaf
    around = tab_radius(stock)
    reach = stock.recess or band_width(stock)
    spans = [slot_span(stock, slot) for slot in range(SLOTS)]
    return [Rect(width - reach, top - around, width, low + around) for top, low in spans]


@pytest.mark.parametrize("stock", ALL.values(), ids=ALL)
def test_no_step_of_a_known_stock_meets_a_hole_or_a_corner(stock: Stock) -> None:
    check_clear(stock)


@given(stocks() | tabbed_stocks())
def test_no_step_of_any_stock_meets_a_hole_or_a_corner(stock: Stock) -> None:
    check_clear(stock)


def check_clear(stock: Stock) -> None:
    height, corner = stock.leaf[1], stock.corner_radius
    edge, _ = body_of_leaf(stock)
    clear = -(-stock.hole_diameter // 2) + HOLE_CLEARANCE
    holes = [Rect(x - clear, y - clear, x + clear, y + clear) for x, y in hole_centres(stock, Side.FRONT)]
    for step in steps(stock):
        assert step.top >= max(corner, TABS_FROM_ENDS - tab_radius(stock))
        assert step.bottom <= height - max(corner, TABS_FROM_ENDS - tab_radius(stock))
        assert not any(step.meets(hole) for hole in holes)
        assert step.top >= 0
    assert all(hole.right <= edge + HOLE_CLEARANCE for hole in holes)
    spans = [slot_span(stock, slot) for slot in range(SLOTS)]
    assert all(one[1] == other[0] for one, other in pairwise(spans))
    assert all(low - top >= (LEAST_TAB if stock.recess else mm(5)) for top, low in spans)
    if stock.bound_at == "top":
        assert spans[0][0] >= hole_strip(stock)


def test_sections_stand_in_their_order_and_those_used_in_flight_have_a_step_to_themselves() -> None:
    slots = [section_slot(section) for section in SECTIONS]
    assert slots == sorted(slots)
    assert set(slots) == set(range(SLOTS))
    assert all(slots.count(section_slot(section)) == 1 for section in ("3", "3A", "4"))
    assert len({section_word(section) for section in SECTIONS}) == len(SECTIONS)


def shown_words(face: Face) -> list[tuple[Text, Rect]]:
    return [(item, ink) for item, ink in extents(role(face, "edge")) if isinstance(item, Text)]


@given(tabbed_stocks(), st.sampled_from(["emergency", "abnormal", "normal"]))
def test_the_words_of_a_section_stand_on_its_tab_where_a_printer_reaches(stock: Stock, kind: str) -> None:
    section = {"emergency": "3", "abnormal": "3A", "normal": "4"}[kind]
    for face in faces(
        laid("A", 1, kind, section, thumb="fuel"), laid("B", 1, kind, section, thumb="fire"), stock=stock
    ):
        at = margins(stock, face.side)
        body, tab = shown_areas(stock, at, section)
        on_tab = [(text, ink) for text, ink in shown_words(face) if text.string.split()[0] == section]
        ((text, ink),) = on_tab
        lost = lost_at_outer_edge(stock)
        reached = Rect(
            tab.left + (0 if at.outer_right else lost), tab.top, tab.right - (lost if at.outer_right else 0), tab.bottom
        )
        middle, along = (ink.left + ink.right) // 2, (ink.top, ink.bottom)
        assert reached.left < middle < reached.right
        assert reached.top <= along[0]
        assert along[1] <= reached.bottom
        assert text.ink is Ink.WHITE
        assert text.turn == (90 if at.outer_right else 270)
        words = [text.string for text, _ in shown_words(face)]
        assert len(words) == 2  # the card's own word stays in the band
        for text, ink in shown_words(face):
            if text.string.split()[0] != section:
                assert body.left < (ink.left + ink.right) // 2 < body.right


@given(tabbed_stocks())
def test_text_keeps_off_the_edge_that_is_cut_back(stock: Stock) -> None:
    plain = replace(stock, tabs="printed", recess=0)
    assert frame_of(stock).width == frame_of(plain).width - max(0, stock.recess - lost_at_outer_edge(stock))
    for face in faces(*EVERY_KIND, stock=stock):
        body, _ = shown_areas(stock, margins(stock, face.side), face.label.section)
        free = Rect(body.left + FREE_EDGE - mm(1), body.top, body.right - FREE_EDGE + mm(1), body.bottom)
        for group in face.groups:
            if group.role not in ("edge", "links"):
                assert all(ink.inside(free) for item, ink in extents((group,)) if isinstance(item, Text))


@EVERY_TABBED
def test_every_leaf_has_its_tab_on_both_sides_blanks_too(stock: Stock) -> None:
    for face in faces(laid("A"), stock=stock):
        assert [text.string.split()[0] for text, _ in shown_words(face)] == ["4"]
    front, back = faces(laid("A"), stock=stock)
    (one,), (other,) = (boxes(face) for face in (front, back))
    width, height = stock.leaf
    if stock.bound_at == "left":
        assert other == Rect(width - one.right, one.top, width - one.left, one.bottom)
    else:
        assert other == Rect(one.left, height - one.bottom, one.right, height - one.top)


def boxes(face: Face) -> list[Rect]:
    return [ink for item, ink in extents(role(face, "edge")) if isinstance(item, Box)]


@EVERY_TABBED
def test_the_reading_copy_shows_a_leaf_as_it_is_cut(stock: Stock) -> None:
    made = faces(*EVERY_KIND, stock=stock)
    for page, face in zip(reading_pages(made, stock), made, strict=True):
        areas = shown_areas(stock, margins(stock, face.side), face.label.section)
        assert all(any(ink.inside(area) for area in areas) for ink in black(page.items))
        assert any(ink.inside(areas[1]) for ink in black(page.items))


def black(items: tuple[Drawn, ...]) -> list[Rect]:
    """The black grounds along the edge; the tabs of labels are narrower than a step is high."""
    edges = [item for item in items if getattr(item, "role", "") == "edge"]
    return [ink for item, ink in extents(edges) if isinstance(item, Box)]


@pytest.mark.parametrize("word", ["fuel", "zebra"])
def test_no_tabs_is_no_marks_and_the_band_stays(word: str) -> None:
    stock = replace(EVERY_STOCK["A5"], tabs="none")
    front, _ = faces(laid("A", 1, "emergency", "3", thumb=word), laid("B", 1, "emergency", "3"), stock=stock)
    assert shown_words(front) == []
    assert len(boxes(front)) == 1
    assert slot_of(word) in range(SLOTS)


@given(tabbed_stocks() | stocks())
def test_the_area_of_a_leaf_is_what_is_left_of_it(stock: Stock) -> None:
    at = margins(stock, Side.FRONT)
    areas = shown_areas(stock, at, "4")
    assert leaf_area(stock) == sum((area.right - area.left) * (area.bottom - area.top) for area in areas)
