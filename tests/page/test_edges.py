"""The outer edge of a face: bands by kind, thumb marks by group. Positions in micrometres."""

from __future__ import annotations

import pytest

from dotleader.handbook.phases import PHASES
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Text, mm
from dotleader.page.extents import Rect, extents
from dotleader.page.face.faces import Face
from dotleader.page.face.thumb_index import SLOTS, slot_heights, slot_of
from dotleader.page.frames import frame_of
from tests.page.leaves import STOCKS, faces, laid, role, said

ALL_STOCKS = pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)


def bands(face: Face) -> list[Rect]:
    return [ink for item, ink in extents(role(face, "edge")) if isinstance(item, Box)]


def test_an_emergency_band_is_solid_six_wide_and_runs_into_the_bleed() -> None:
    front, back = faces(laid("A", 1, "emergency", "3"), laid("B", 1, "emergency", "3"))
    width, height = STOCKS["sample"].leaf
    assert bands(front) == [Rect(width - mm(6), -mm(3), width + mm(3), height + mm(3))]
    assert bands(back) == [Rect(-mm(3), -mm(3), mm(6), height + mm(3))]


def test_abnormal_blocks_are_centred_on_every_twelve_millimetres_from_half_a_block_at_the_head() -> None:
    front, back = faces(laid("A", 1, "abnormal", "3A"), laid("B", 1, "abnormal", "3A"))
    blocks = bands(front)
    assert [(block.top + block.bottom) // 2 for block in blocks] == [mm(12 * n) for n in range(len(blocks))]
    assert {block.bottom - block.top for block in blocks} == {mm(6)}
    assert blocks[-1].bottom <= STOCKS["sample"].leaf[1] + mm(3)
    assert [(block.top, block.bottom) for block in bands(back)] == [(b.top, b.bottom) for b in blocks]


def test_normal_cards_have_no_band_and_a_thumb_mark_where_they_have_a_word() -> None:
    plain, marked = faces(laid("A"), laid("B", thumb="cruise"))
    assert bands(plain) == []
    first, height = slot_heights(STOCKS["sample"])
    assert (first, height) == (mm(36), mm(24))
    top = first + slot_of("cruise") * height
    assert bands(marked) == [Rect(-mm(3), top, mm(6), top + height)]
    assert said(marked, "edge") == ["CRUISE"]


@ALL_STOCKS
@pytest.mark.parametrize("kind", ["emergency", "abnormal", "normal"])
def test_the_marks_of_both_sides_fall_on_each_other(stock: Stock, kind: str) -> None:
    section = {"emergency": "3", "abnormal": "3A", "normal": "4"}[kind]
    front, back = faces(
        laid("A", 1, kind, section, thumb="fuel"), laid("B", 1, kind, section, thumb="fuel"), stock=stock
    )
    width, height = stock.leaf
    if stock.bound_at == "left":
        seen = {Rect(width - ink.right, ink.top, width - ink.left, ink.bottom) for ink in bands(back)}
    else:
        seen = {Rect(ink.left, height - ink.bottom, ink.right, height - ink.top) for ink in bands(back)}
    assert seen == set(bands(front))


@pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)
@pytest.mark.parametrize("word", ["engine", "before takeoff", "a very long word for so small a mark as this"])
def test_a_thumb_word_stays_inside_its_mark(stock: Stock, word: str) -> None:
    for face in faces(laid("A", thumb=word), laid("B", thumb=word), stock=stock):
        (mark,) = bands(face)
        (text,) = (ink for item, ink in extents(role(face, "edge")) if isinstance(item, Text))
        assert mark.top <= text.top
        assert text.bottom <= mark.bottom
        assert text.left >= -mm(1)
        assert text.right <= stock.leaf[0] + mm(1)


def test_phases_stand_in_their_order_from_the_top_and_words_by_their_own_alone() -> None:
    slots = [slot_of(phase) for phase in PHASES]
    assert slots == sorted(slots)
    assert set(slots) == set(range(SLOTS))
    assert slot_of("Engine") == slot_of("engine failure") == 0
    assert slot_of("electrical fire") == slot_of("electrical")
    assert [slot_of(word) for word in ("Aardvark", "Towing", "Zebra", "")] == [0, 5, 6, 6]


@pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)
def test_the_seven_thumb_marks_stand_between_head_and_foot(stock: Stock) -> None:
    first, height = slot_heights(stock)
    assert first >= frame_of(stock).top
    assert first + SLOTS * height <= frame_of(stock).bottom
    assert height >= mm(8)
