"""A punch plan as it is read at a bench: word for word, and done by nothing but its words."""

from __future__ import annotations

import re

import pytest
from hypothesis import given

from dotleader.handbook.punch import Punch
from dotleader.page.bench.guide import guides
from dotleader.page.bench.nearest import punching
from dotleader.page.bench.plan import Pattern, Plan, Stroke
from dotleader.page.bench.plan_words import plan_text, plan_title
from dotleader.page.bench.punching import TOLERANCE, pattern_of
from dotleader.page.bench.settings import middle
from dotleader.source.record import replace
from tests.handbook.texts import resolved
from tests.page.punches import DESK, done, holes_at, placed, row
from tests.page.test_punching import cases

SAMPLE = row(228_600, 4, 40_000)

ROUNDED = 50
"""Lengths are said in tenths of a millimetre."""


def test_the_sample_reads_so_that_somebody_can_do_it() -> None:
    plan = punching(SAMPLE, DESK)
    assert plan_title(plan) == "Desk punch: 4 holes 40 mm apart, in two strokes."
    assert plan_text(plan) == (
        "1. Do what follows on a piece of paper first: along an edge of 228.6 mm, the holes come 54.3, 94.3, 134.3 "
        "and 174.3 mm from the head, and 12 mm from the edge that is bound.",
        "2. Set the stop on the right to 94.3 mm, counted from the middle of the punch; it then stands 54.3 mm from "
        "the middle of the hole next to it.",
        "3. Take one leaf at a time. Lay it with its front up and its head against the stop, push the edge that "
        "is bound home, and punch: holes 1 and 3, counted from the head.",
        "4. Leave the stop where it is. Turn the leaf over, so that its back is up and its foot against the stop, and "
        "punch: holes 2 and 4.",
    )


def test_a_punch_without_a_scale_takes_a_strip() -> None:
    plan = punching(SAMPLE, replace(DESK, stop="plain", stop_on_right=False))
    assert isinstance(plan, Plan)
    (strip,) = guides(plan)
    assert (strip.length, strip.centres, strip.inset, strip.diameter) == (144_300, (54_300, 134_300), 12_000, 6_000)
    _, step, *_ = plan_text(plan)
    assert (
        "guide A, a strip of stiff paper 144.3 mm long with circles of 6 mm, 54.3 and 134.3 mm from its left end"
        in step
    )
    assert step.endswith("Bring the stop up to the left end of the strip, and take the strip out.")
    marked = plan_text(punching(SAMPLE, replace(DESK, stop="none")))
    assert "Mark where its right end is" in marked[1]
    assert "head at the mark" in marked[2]
    between = plan_text(punching(placed(100_000, 20_000), replace(DESK, stop="none")))
    assert "with a circle of 6 mm, 20 mm from its right end" in between[1]
    assert "the circle can be seen in the hole of the punch farthest to the left. " in between[1]
    assert guides(Plan(SAMPLE, DESK, plan.strokes, 0)) == ()


def test_a_pattern_that_cannot_be_made_is_said_with_the_nearest_that_can() -> None:
    plan = punching(row(228_600, 4, 50_000), DESK)
    assert plan_title(plan) == "Desk punch cannot make 4 holes 50 mm apart on an edge of 228.6 mm."
    assert plan_text(plan) == (
        "No place of the stop makes holes 2 and 3 without one that is not wanted.",
        "The nearest that it makes is 4 holes 40 mm apart (10 mm less), in two strokes. In the stock, write "
        "`holes .... 4, 40 mm apart, 6 mm wide, 12 mm from edge`.",
    )


def test_the_row_that_is_offered_is_one_that_the_punch_makes() -> None:
    stock = "stock\n  leaf .... 5.5 x 8.5 in\n  holes .... 4, 50 mm apart\n"
    wanted = pattern_of(resolved(stock)[0].stock)
    for punch in (DESK, holes_at(0, 31_000), replace(holes_at(0, 93_300), diameter=7_144, depth=(13_500, 13_500))):
        offered = re.findall(r"`(holes [^`]+)`", " ".join(plan_text(punching(wanted, punch))))
        assert offered
        for row_ in offered:
            handbook, findings = resolved(stock.replace("holes .... 4, 50 mm apart", row_))
            assert findings == ()
            assert isinstance(punching(pattern_of(handbook.stock), punch), Plan)


def test_a_hole_that_is_met_twice_is_spoken_of() -> None:
    text = plan_text(punching(row(215_900, 3, 69_850), holes_at(0, 69_850)))
    assert text[-1].endswith("holes 2 and 3; hole 2 is there already, and the punch has to go through without cutting.")


def test_a_depth_that_can_be_set_is_set() -> None:
    text = plan_text(punching(SAMPLE, replace(DESK, depth=(8_000, 14_000))))
    assert text[1] == "2. Set the depth of the punch to 12 mm."


def test_a_stop_that_does_not_go_so_far_is_the_reason() -> None:
    plan = punching(SAMPLE, replace(DESK, reach=(45_000, 60_000)))
    assert plan_text(plan)[0] == "The stop would have to stand at 94.3 mm, and it goes from 45 mm to 60 mm."
    impossible = punching(row(228_600, 4, 50_000), replace(DESK, reach=(45_000, 60_000)))
    assert plan_text(impossible)[0].startswith("No place of the stop makes holes ")


def test_film_is_sealed_before_it_is_punched() -> None:
    bare, filmed = (plan_text(punching(replace(SAMPLE, filmed=film), DESK)) for film in (False, True))
    assert filmed[0].startswith("1. Laminate the leaves first, and let them cool: ")
    assert [step[2:] for step in filmed[1:]] == [step[2:] for step in bare]


def test_sides_are_those_of_the_front_whichever_face_is_seen() -> None:
    *_, first, turned = plan_text(punching(replace(SAMPLE, bound_at="top"), DESK))
    assert "Lay it with its front up and its right edge against the stop, " in first
    assert "so that its back is up and the left edge of its front against the stop, " in turned


def test_a_leaf_without_holes_is_said_to_have_none() -> None:
    plan = punching(placed(210_000), DESK)
    assert (plan_title(plan), plan_text(plan)) == (
        "Desk punch: the leaf has no holes.",
        ("There is nothing to punch.",),
    )


@pytest.mark.parametrize("bound_at", ["left", "top"])
def test_what_is_said_of_two_settings_is_in_an_order_to_work_by(bound_at: str) -> None:
    pattern = replace(row(297_000, 4, 60_000), bound_at=bound_at)
    text = " ".join(plan_text(punching(pattern, holes_at(0))))
    assert text.count("et the stop on the right to") == 2
    assert text.count("When every leaf has had this: ") == 1
    assert text.count("Turn the leaf over") == 2


_SETTING = re.compile(
    r"et the stop on the (?P<side>right|left) to (?P<at>[\d.]+) mm, counted from the (?P<zero>middle of the|hole of)"
)
_STRIP = re.compile(r"circles? of [\d.]+ mm, (?P<at>[\d., and]+) mm from its (?P<side>\w+) end")
_LAID = re.compile(
    r"its (?P<face>front|back) (?:is )?up and (?:its|the) (?P<end>head|foot|left edge|right edge)"
    r"(?P<front> of its front)? (?:against|at)"
)


@given(cases())
def test_whoever_does_what_is_said_gets_the_holes_that_are_wanted(case: tuple[Pattern, Punch]) -> None:
    pattern, punch = case
    found = punching(pattern, punch)
    for plan in (found,) if isinstance(found, Plan) else found.nearest:
        as_read = _read(plan_text(plan), plan)
        assert len(as_read.strokes) == len(plan.strokes)
        made = done(as_read)
        for wanted in plan.pattern.centres:
            assert min(abs(at - wanted) for at in made) <= TOLERANCE + ROUNDED
        for at in made:
            assert min(abs(at - wanted) for wanted in plan.pattern.centres) <= TOLERANCE + ROUNDED


def _read(text: tuple[str, ...], plan: Plan) -> Plan:
    """The strokes that the words lead to; of the plan itself only pattern and punch are known."""
    side = "right" if plan.punch.stop_on_right else "left"
    strokes: list[Stroke] = []
    stop: int | None = None
    for step in text[1:]:
        if found := _SETTING.search(step):
            assert found["side"] == side
            stop = round(float(found["at"]) * 1_000) - (middle(plan.punch) if found["zero"] == "middle of the" else 0)
        elif found := _STRIP.search(step):
            assert found["side"] == side
            farthest = re.findall(r"[\d.]+", found["at"])[-1]
            stop = round(float(farthest) * 1_000) - plan.punch.holes[-1]
        elif found := _LAID.search(step):
            assert stop is not None
            assert bool(found["front"]) is (found["face"] == "back" and "edge" in found["end"])
            strokes.append(Stroke(stop, found["end"] in ("head", "left edge"), found["face"] == "front", ()))
    return Plan(plan.pattern, plan.punch, tuple(strokes), 0)
