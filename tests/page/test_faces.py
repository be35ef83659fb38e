"""Faces: what stands around the text, on both sides of every kind of leaf. Positions in micrometres.

Outside checks: the strip that is kept free of ink follows ISO 838 (holes 12 mm from the edge, 6 mm wide) with the
clearance that design asks for; text stays at least 5 mm inside the trim (common practice of print shops).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import pytest
from hypothesis import given

from dotleader.handbook.stocks.measures import BLEED, hole_strip
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Font, Group, Ink, Line, Link, Text, mm, pt
from dotleader.page.extents import Rect, extents
from dotleader.page.face.faces import NO_LABEL, Face, faces_of
from dotleader.page.face.furniture import BLANK, NOT_ISSUED, OPEN_FLAT
from dotleader.page.face.margins import margins
from dotleader.page.face.placement import Side, place
from dotleader.page.frames import CAUTION, FOOT_MARGIN, frame_of
from dotleader.page.laid import LaidCard
from dotleader.page.tabs import NOT_HERE
from dotleader.page.type.metrics import STAND_IN, ascent, cap_height, width
from dotleader.source.record import replace
from tests.page.leaves import EVERY_KIND, IMPRINT, STOCKS, by_title, cards, faces, laid, role, said, stocks, texts

ALL_STOCKS = pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)


def strip(stock: Stock, side: Side) -> Rect:
    """Where the holes are: at the left of a front and the right of a back, or at the head and the foot."""
    width, height = stock.leaf
    deep = hole_strip(stock)
    if stock.bound_at == "left":
        return Rect(0, 0, deep, height) if side is Side.FRONT else Rect(width - deep, 0, width, height)
    return Rect(0, 0, width, deep) if side is Side.FRONT else Rect(0, height - deep, width, height)


def dressed(stock: Stock, draft: int | None = None, some: tuple[LaidCard, ...] = EVERY_KIND) -> Iterator[Face]:
    """Faces of every kind, the body as wide and as high as its frame."""
    frame = frame_of(stock)
    body = (
        Box(0, frame.top, frame.width, frame.bottom - frame.top, stroke=0, fill=Ink.MEMORY),
        Line(((0, frame.top), (frame.width, frame.bottom)), 0),
    )
    filled = [replace(c, faces=tuple(replace(face, items=body) for face in c.faces)) for c in some]
    return faces_of(place(filled), IMPRINT, stock, draft)


@ALL_STOCKS
@pytest.mark.parametrize("draft", [None, 3], ids=["final", "draft"])
def test_nothing_is_drawn_outside_the_leaf_or_in_the_hole_strip(stock: Stock, draft: int | None) -> None:
    check_kept_free(stock, draft)


@given(stocks())
def test_nothing_is_drawn_outside_any_leaf_or_in_its_hole_strip(stock: Stock) -> None:
    check_kept_free(stock, 12)


def check_kept_free(stock: Stock, draft: int | None) -> None:
    leaf = Rect(0, 0, *stock.leaf)
    bled = Rect(-BLEED, -BLEED, stock.leaf[0] + BLEED, stock.leaf[1] + BLEED)
    safe = Rect(mm(5), mm(5), stock.leaf[0] - mm(5), stock.leaf[1] - mm(5))
    for face in dressed(stock, draft):
        held = strip(stock, face.side)
        for group in face.groups:
            for item, ink in extents((group,)):
                if group.role == "edge":
                    assert ink.inside(bled)
                    assert isinstance(item, Text) or not ink.meets(held)
                else:
                    assert ink.inside(leaf)
                    printed = ink_of_capitals(item, ink) if isinstance(item, Text) else ink
                    assert not printed.meets(held)
                    assert not isinstance(item, Text) or printed.inside(safe)


def ink_of_capitals(text: Text, ink: Rect) -> Rect:
    """The extent of a level text without what it keeps free for accents."""
    over = ascent(text.font, text.size) - cap_height(text.font, text.size)
    return Rect(ink.left, ink.top + over, ink.right, ink.bottom)


@ALL_STOCKS
def test_the_parts_of_a_face_do_not_overlap(stock: Stock) -> None:
    for face in dressed(stock):
        apart = [
            (group.role, ink_of_capitals(item, ink) if isinstance(item, Text) else ink)
            for group in face.groups
            if group.role in ("head", "label", "body", "foot", "issue", "edge")
            for item, ink in extents((group,))
        ]
        for (one, first), (other, second) in combinations(apart, 2):
            if one != other and {one, other} != {"head", "label"}:
                assert not first.meets(second), (one, other, face.label)
        words = [ink for text, ink in extents(role(face, "head")) if isinstance(text, Text)]
        own = [ink for box, ink in extents(role(face, "label")) if isinstance(box, Box)]
        assert not any(word.meets(tab) for word in words for tab in own)
        capitals = [ink_of_capitals(t, ink) for t, ink in extents(role(face, "head")) if isinstance(t, Text)]
        assert not any(first.meets(second) for first, second in combinations(capitals, 2))


@ALL_STOCKS
def test_text_keeps_seven_millimetres_off_the_edge_band(stock: Stock) -> None:
    for face in dressed(stock):
        bands = [ink for item, ink in extents(role(face, "edge")) if isinstance(item, Box)]
        for group in face.groups:
            if group.role != "edge":
                for _, ink in extents((group,)):
                    for band in bands:
                        assert band.left - ink.right >= mm(7) or ink.left - band.right >= mm(7)


@ALL_STOCKS
def test_the_frame_is_the_same_on_both_sides_and_stands_at_its_margins(stock: Stock) -> None:
    frame = frame_of(stock)
    front, back = margins(stock, Side.FRONT), margins(stock, Side.BACK)
    if stock.bound_at == "left":
        assert front.left >= mm(18)
        assert stock.leaf[0] - front.left - frame.width >= mm(14)
        assert back.left == stock.leaf[0] - front.left - frame.width
        assert front.down == back.down == 0
    else:
        assert front.left == back.left
        # The lowest line of a back ends above the strip, as the highest of a front begins below it.
        assert stock.leaf[1] - (stock.leaf[1] - FOOT_MARGIN + back.down) >= hole_strip(stock)


def test_the_frame_of_the_leaf_that_was_tried() -> None:
    frame = frame_of(STOCKS["sample"])
    assert (frame.width, frame.height) == (146_050 - 18_000 - 14_000, 222_250)
    assert (frame.top, frame.bottom) == (17_000, 204_500)
    assert frame.smallest == 12_000


def test_the_head_rule_tells_the_kind_by_its_weight() -> None:
    found = by_title(faces(*EVERY_KIND))
    for title, weight in (("Forced landing", 2.4), ("Flap failure", 1.2), ("Cruise", 0.6), ("Airspeeds", 0.6)):
        (rule,) = (item for item, _ in extents(role(found[title], "head")) if isinstance(item, Line))
        assert rule.width == pt(weight)
        assert rule.points[0][1] == mm(16)


def test_the_head_says_kind_and_registration_and_the_tab_the_label() -> None:
    found = by_title(faces(*EVERY_KIND))
    assert said(found["Forced landing"], "head") == ["EMERGENCY", "N0STL"]
    assert said(found["Engine failure, explained"], "head") == ["EMERGENCY, AMPLIFIED", "N0STL"]
    assert said(found["Fire in flight"], "head") == ["EMERGENCY", "N0STL", OPEN_FLAT]
    assert said(found["Airspeeds"], "head") == ["LIMITATIONS", "N0STL"]
    (label,) = texts(role(found["Forced landing"], "label"))
    assert (label.string, label.size, label.ink, label.font) == ("3-4", 16_000, Ink.WHITE, Font.BOLD)


def test_the_label_stands_in_the_outer_corner_and_the_rest_of_the_head_at_the_binding() -> None:
    stock = STOCKS["sample"]
    for face in faces(laid("A"), laid("B")):
        tab = next(ink for item, ink in extents(role(face, "label")) if isinstance(item, Box))
        words = [ink for item, ink in extents(role(face, "head")) if isinstance(item, Text)]
        left, right = margins(stock, face.side).left, margins(stock, face.side).left + frame_of(stock).width
        if face.side is Side.FRONT:
            assert tab.right == right
            assert min(ink.left for ink in words) == left
        else:
            assert tab.left == left
            assert max(ink.right for ink in words) == right


def test_the_foot_says_handbook_issue_and_the_caution() -> None:
    (face, _) = faces(laid("Cruise"))
    assert said(face, "foot") == ["Ostrel Two flight handbook", CAUTION]
    assert said(face, "issue") == [NOT_ISSUED]
    (narrow, _) = faces(laid("Cruise"), stock=STOCKS["A6"])
    title, registration, *caution = said(narrow, "foot")
    assert (title, registration, " ".join(caution)) == ("Ostrel Two flight handbook", "N0STL", CAUTION)


def test_a_long_handbook_title_and_registration_are_cut_where_they_would_run_into_something() -> None:
    imprint = replace(IMPRINT, handbook="The flight handbook of an aircraft " * 8, registration="N0" * 60)
    for stock in STOCKS.values():
        for face in faces(laid("Cruise"), laid("Climb", 2), stock=stock, imprint=imprint):
            assert said(face, "foot")[0].endswith("…")
            (cut,) = (word for word in (*said(face, "head"), *said(face, "foot")) if word.startswith("N0"))
            assert cut.endswith("…")
            at, frame = margins(stock, face.side), frame_of(stock)
            inside = Rect(at.left, 0, at.left + frame.width, stock.leaf[1])
            assert all(ink.inside(inside) for _, ink in extents((*role(face, "foot"), *role(face, "head"))))


@ALL_STOCKS
def test_every_face_says_the_registration_once(stock: Stock) -> None:
    for face in faces(*EVERY_KIND, stock=stock):
        assert [*said(face, "head"), *said(face, "foot")].count("N0STL") == 1


def test_in_a_draft_a_box_stands_for_a_character_that_no_font_has() -> None:
    (face, _) = faces_of(place([laid("Cruise", says="Mixture \ua66e")]), IMPRINT, STOCKS["sample"], 1)
    assert said(face, "body") == [f"Mixture {STAND_IN}"]
    (face, _) = faces(laid("Cruise", says="Mixture \ua66e"))
    assert said(face, "body") == ["Mixture \ua66e"]


@ALL_STOCKS
def test_a_blank_face_says_so_and_nothing_else(stock: Stock) -> None:
    (_, blank) = faces(laid("Cruise"), stock=stock)
    assert blank.blank
    assert blank.says == ()
    assert " ".join(said(blank, "body")) == BLANK
    assert role(blank, "edge") == ()


def test_a_go_to_bears_the_label_of_the_face_where_its_card_begins_and_leads_there() -> None:
    found = by_title(faces(*EVERY_KIND))
    face, at = found["Engine failure"], margins(STOCKS["sample"], Side.FRONT)
    (label,) = texts(role(face, "tabs"))
    assert (label.string, label.size, label.ink) == ("3-4", 14_000, Ink.WHITE)
    tab = next(ink for item, ink in extents(role(face, "tabs")) if isinstance(item, Box))
    assert (tab.left, tab.top, tab.bottom) == (at.left + 30_000, 70_000, 76_200)
    (group,) = role(face, "links")
    assert isinstance(group, Group)
    (link,) = group.items
    assert isinstance(link, Link)
    assert link.label == "3-4"
    assert tab == Rect(group.x + link.x, group.y + link.y, group.x + link.x + link.w, group.y + link.y + link.h)


def test_a_go_to_that_leads_nowhere_has_a_question_mark_and_no_link() -> None:
    card = laid("A", to="Nowhere")
    nowhere = replace(card.faces[0], slots=tuple(replace(slot, target="") for slot in card.faces[0].slots))
    (face, _) = faces(replace(card, faces=(nowhere,)))
    assert said(face, "tabs") == [NO_LABEL]
    assert role(face, "links") == ()


def test_a_go_to_to_a_card_that_is_not_in_the_book_says_so_and_has_no_link() -> None:
    (face, _) = faces(laid("A", to="Elsewhere"))
    assert said(face, "tabs") == list(NOT_HERE)
    assert role(face, "links") == ()
    items = [item for item, _ in extents(role(face, "tabs"))]
    box = next(item for item in items if isinstance(item, Box))
    upper, lower = (item for item in items if isinstance(item, Text))
    assert lower.y - upper.y >= pt(upper.size / 1000)
    for line in (upper, lower):
        assert box.y < line.y - cap_height(Font.BOLD, line.size) < line.y < box.y + box.h
        assert line.x + width(line.string, Font.BOLD, line.size) < box.x + box.w


@pytest.mark.parametrize(("errors", "words"), [(0, "DRAFT"), (1, "DRAFT: 1 ERROR"), (3, "DRAFT: 3 ERRORS")])
def test_a_draft_says_so_in_its_head_and_across_the_face(errors: int, words: str) -> None:
    for stock in STOCKS.values():
        for face in faces_of(place(EVERY_KIND), IMPRINT, stock, errors):
            head, *across = texts(role(face, "draft"))
            assert head.string == words
            assert len(across) >= 3
            assert {text.string for text in across} == {"DRAFT"}
            assert all(text.hollow > 0 and 44_000 <= text.size <= 120_000 for text in across)


def test_no_draft_marks_without_a_draft() -> None:
    assert all(role(face, "draft") == () for face in faces(*EVERY_KIND))


@given(cards())
def test_every_face_is_made_in_order_with_its_texts(some: tuple[LaidCard, ...]) -> None:
    made = faces(*some)
    stands = place(some).stands
    assert [face.label for face in made] == [stand.label for stand in stands]
    expected = sorted(said for card in some for one in card.faces for said in one.says)
    assert sorted(said for face in made for said in face.says) == expected
