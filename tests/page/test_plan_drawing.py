"""The drawing of a punch plan: to scale, inside its room, and telling strokes apart."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given

from dotleader.handbook.punch import Punch
from dotleader.page.bench.guide import guides
from dotleader.page.bench.nearest import punching
from dotleader.page.bench.plan import Pattern, Plan
from dotleader.page.bench.plan_drawing import draw_guide, draw_plan, drawn_height, plan_scale
from dotleader.page.bench.punching import struck
from dotleader.page.drawn import Box, Group, Ink, Text, mm
from dotleader.page.extents import Rect, extents
from dotleader.source.record import replace
from tests.page.punches import DESK, holes_at, placed, row
from tests.page.test_punching import cases

SAMPLE = row(228_600, 4, 40_000)


def plan_of(pattern: Pattern, punch: Punch) -> Plan:
    plan = punching(pattern, punch)
    assert isinstance(plan, Plan)
    return plan


def middles(drawn: Group, fill: Ink) -> list[int]:
    """Of the circles with that fill, across."""
    boxes = [item for item, _ in extents((drawn,)) if isinstance(item, Box) and item.fill is fill]
    return sorted(box.x + box.radius for box in boxes if box.radius and box.w == box.h == 2 * box.radius)


@pytest.mark.parametrize(("width", "scale"), [(mm(260), 1), (mm(175), 2), (mm(100), 4), (mm(20), 20)])
def test_the_largest_scale_that_fits_is_taken(width: int, scale: int) -> None:
    assert plan_scale(plan_of(SAMPLE, DESK), width) == scale


@pytest.mark.parametrize("on_right", [True, False])
def test_holes_are_drawn_to_scale_from_the_stop(on_right: bool) -> None:
    plan = plan_of(SAMPLE, replace(DESK, stop_on_right=on_right))
    drawn = draw_plan(plan, mm(260))
    first, second = drawn.items[:2]
    assert isinstance(first, Group)
    assert isinstance(second, Group)
    (block,) = [item for item in first.items if isinstance(item, Box) and item.fill is Ink.BLACK and not item.radius]
    face = block.x if on_right else block.x + block.w
    away = -1 if on_right else 1
    assert middles(first, Ink.BLACK) == sorted(face + away * at for at in (54_300, 134_300))
    assert middles(first, Ink.WHITE) == []
    # The leaf is turned over: what was 54.3 and 134.3 mm from the stop is now as far from its other end.
    assert middles(second, Ink.BLACK) == middles(first, Ink.BLACK)
    assert middles(second, Ink.WHITE) == sorted(face + away * (228_600 - at) for at in (54_300, 134_300))


def test_a_hole_of_the_punch_that_misses_the_leaf_is_hollow() -> None:
    plan = plan_of(row(210_000, 4, 58_000), DESK)
    for stroke, drawn in zip(plan.strokes, draw_plan(plan, mm(260)).items, strict=False):
        assert isinstance(drawn, Group)
        assert len(middles(drawn, Ink.BLACK)) == len(struck(plan.pattern, plan.punch, stroke)) == 1
        assert len(middles(drawn, Ink.NONE)) == 1


def test_where_the_leaf_ends_between_the_holes_the_hole_on_it_is_measured() -> None:
    plan = plan_of(placed(100_000, 20_000), replace(DESK, stop="none"))
    said = [item.string for item, _ in extents((draw_plan(plan, mm(180)),)) if isinstance(item, Text)]
    assert "20 mm to the nearest hole" in said


@given(cases())
def test_nothing_is_drawn_outside_and_no_text_on_another(case: tuple[Pattern, Punch]) -> None:
    found = punching(*case)
    for plan in (found,) if isinstance(found, Plan) else found.nearest:
        for width in (mm(120), mm(180)):
            room = Rect(0, 0, width, drawn_height(plan, width))
            inked = list(extents((draw_plan(plan, width),)))
            assert all(rect.inside(room) for _, rect in inked)
            texts = [rect for item, rect in inked if isinstance(item, Text)]
            assert not any(one.meets(other) for one, other in combinations(texts, 2))


@pytest.mark.parametrize("on_right", [True, False])
def test_a_guide_is_as_large_as_it_is_said_to_be(on_right: bool) -> None:
    plan = plan_of(SAMPLE, replace(DESK, stop="plain", stop_on_right=on_right))
    (guide,) = guides(plan)
    drawn = draw_guide(guide, 0, on_right)
    outline = drawn.items[0]
    assert isinstance(outline, Box)
    assert (outline.w, outline.h) == (144_300, 24_000)
    places = (54_300, 134_300) if not on_right else (144_300 - 134_300, 144_300 - 54_300)
    assert middles(drawn, Ink.NONE) == list(places)
    texts = [rect for item, rect in extents((drawn,)) if isinstance(item, Text)]
    assert len(texts) == 2
    assert not texts[0].meets(texts[1])


def test_a_short_guide_holds_its_words() -> None:
    (guide,) = guides(plan_of(row(40_000, 1, 0), replace(holes_at(0), stop="none")))
    words = [rect for item, rect in extents((draw_guide(guide, 0, True),)) if isinstance(item, Text)]
    assert (guide.length, guide.centres) == (80_000, (20_000,))
    assert all(rect.left >= 0 and rect.right <= guide.length for rect in words)
