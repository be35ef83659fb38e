"""Punch plans: executed on a leaf that is followed through the punch, and held against every plan there could be.

Outside checks, each named beside its test: ISO 838 (two holes), the unofficial four holes of which ISO 838 is the
middle pair, the spacing of holes on American papers, and of organisers with six and seven rings.
"""

from __future__ import annotations

from itertools import pairwise, product

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn

from dotleader.handbook.punch import Punch
from dotleader.page.bench.nearest import ROUNDING, change, evenly, punching
from dotleader.page.bench.plan import NoPlan, Pattern, Plan
from dotleader.page.bench.punching import MOST_STROKES, TOLERANCE, pattern_of, strokes_for, turns
from dotleader.page.bench.settings import CLEAR, counted_from, pins, reach
from dotleader.source.record import replace
from tests.handbook.texts import resolved
from tests.page.punches import DESK, done, holes_at, placed, row

INCH = 25_400

SAMPLE = """\
stock
  leaf .................. 5.75 x 8.75 in
  pouch ................. 6 x 9 in
  corners ............... 6 mm
  holes ................. 4, 40 mm apart, 6 mm wide, 12 mm from edge
  bound at .............. left
  paper ................. Letter

punch Desk punch
  holes ................. 2, 80 mm apart, 6 mm wide, 12 mm from edge
  stop .................. scale
"""


def planned(pattern: Pattern, punch: Punch = DESK) -> Plan:
    plan = punching(pattern, punch)
    assert isinstance(plan, Plan)
    return plan


def refused(pattern: Pattern, punch: Punch = DESK) -> NoPlan:
    plan = punching(pattern, punch)
    assert isinstance(plan, NoPlan)
    return plan


def test_four_holes_in_two_strokes_the_leaf_turned_over_between_them() -> None:
    handbook, findings = resolved(SAMPLE)
    assert findings == ()
    pattern = pattern_of(handbook.stock)
    on_pouch = placed(228_600, 54_300, 94_300, 134_300, 174_300)  # 9 in long
    assert pattern == replace(on_pouch, filmed=True)
    plan = planned(pattern, handbook.punches[0])
    first, second = plan.strokes
    assert (first.stop, first.front_up, first.start_at_stop, first.makes) == (54_300, True, True, (0, 2))
    assert (second.stop, second.front_up, second.start_at_stop, second.makes) == (54_300, False, False, (1, 3))
    # Of a leaf that is turned over, the hole that was nearest to the stop is made farthest from the head.
    assert done(plan) == [134_300, 54_300, 94_300, 174_300]
    assert (plan.off, turns(plan)) == (0, 1)


@pytest.mark.parametrize("edge", [222_250, 228_600, 215_900, 279_400, 297_000])
def test_four_holes_50_mm_apart_cannot_be_made_and_40_mm_can(edge: int) -> None:
    plan = refused(row(edge, 4, 50_000))
    assert plan.reasons == ("No place of the stop makes holes 2 and 3 without one that is not wanted.",)
    assert [near.pattern.gaps for near in plan.nearest] == [(40_000,) * 3]
    assert sorted(done(plan.nearest[0])) == list(row(edge, 4, 40_000).centres)


def test_on_a_short_edge_the_nearest_takes_more_strokes_than_the_next() -> None:
    # On A5 a hole can be made alone where the other one of the punch misses the leaf: from 58 mm on.
    plan = refused(row(210_000, 4, 50_000))
    assert [(near.pattern.gaps[0], len(near.strokes)) for near in plan.nearest] == [(58_000, 4), (40_000, 2)]


# ISO 838: two holes 80 mm apart, symmetrical on the edge; the places are those of ISO 216 sizes
@pytest.mark.parametrize(
    ("edge", "centres"),
    [(210_000, (65_000, 145_000)), (297_000, (108_500, 188_500)), (148_000, (34_000, 114_000))],
)
def test_iso_838_is_one_stroke_of_a_punch_made_to_it(edge: int, centres: tuple[int, int]) -> None:
    plan = planned(row(edge, 2, 80_000))
    assert plan.pattern.centres == centres
    assert [(stroke.stop, stroke.makes) for stroke in plan.strokes] == [(centres[0], (0, 1))]
    assert centres[0] + counted_from(DESK) == edge // 2  # the scale shows half the edge


def test_four_holes_around_iso_838_are_two_strokes_at_one_setting() -> None:
    # Two more holes 80 mm outside those of ISO 838 (not in the standard): on A4 28.5, 108.5, 188.5 and 268.5 mm
    plan = planned(row(297_000, 4, 80_000))
    assert plan.pattern.centres == (28_500, 108_500, 188_500, 268_500)
    assert [(stroke.stop, stroke.makes) for stroke in plan.strokes] == [(28_500, (0, 1)), (28_500, (2, 3))]
    assert sorted(done(plan)) == list(plan.pattern.centres)


# American papers: three holes 4.25 in apart on letter, 2.75 in apart on half letter
@pytest.mark.parametrize(("edge", "apart"), [(11 * INCH, INCH * 17 // 4), (17 * INCH // 2, INCH * 11 // 4)])
def test_three_holes_are_one_stroke_of_three_or_two_of_two(edge: int, apart: int) -> None:
    pattern = row(edge, 3, apart)
    assert len(planned(pattern, holes_at(0, apart, 2 * apart)).strokes) == 1
    plan = planned(pattern, holes_at(0, apart))
    assert [stroke.makes for stroke in plan.strokes] == [(0, 1), (1, 2)]
    assert len({stroke.stop for stroke in plan.strokes}) == 1
    assert plan.off <= 50  # the scale is set to tenths of a millimetre


def test_six_rings_are_two_strokes_of_three_holes() -> None:
    # Six rings on A5: 32, 51, 70, 140, 159 and 178 mm
    plan = planned(placed(210_000, 32_000, 51_000, 70_000, 140_000, 159_000, 178_000), holes_at(0, 19_000, 38_000))
    assert [stroke.makes for stroke in plan.strokes] == [(0, 1, 2), (3, 4, 5)]
    assert turns(plan) == 1


def test_seven_rings_are_not_made_by_a_punch_of_three() -> None:
    # Seven rings on half letter: 1.5, 2.5, 3.5, 4.25, 5, 6 and 7 in; the punch is for the three holes among them
    seven = placed(17 * INCH // 2, *(INCH * quarters // 4 for quarters in (6, 10, 14, 17, 20, 24, 28)))
    assert refused(seven, holes_at(0, 11 * INCH // 4, 11 * INCH // 2)).nearest
    assert not refused(seven, holes_at(0)).nearest  # one hole at a stroke: seven strokes


def test_a_second_setting_begins_with_the_face_that_is_up() -> None:
    plan = planned(row(297_000, 4, 60_000), holes_at(0))
    assert [(stroke.stop, stroke.front_up) for stroke in plan.strokes] == [
        (58_500, True), (58_500, False), (118_500, False), (118_500, True)
    ]  # fmt: skip
    assert turns(plan) == 2


def test_width_and_depth_are_those_of_the_punch() -> None:
    pattern = row(228_600, 4, 40_000)
    assert planned(replace(pattern, diameter=6_500, inset=12_500))
    wide = refused(replace(pattern, diameter=7_144))
    assert wide.reasons == ("It makes holes of 6 mm, and 7.1 mm are wanted.",)
    assert [near.pattern for near in wide.nearest] == [pattern]
    deep = refused(replace(pattern, inset=14_000))
    assert deep.reasons == ("It makes them 12 mm from the edge, and 14 mm are wanted.",)
    assert [near.pattern for near in deep.nearest] == [pattern]
    assert planned(replace(pattern, inset=14_000), replace(DESK, depth=(8_000, 14_000)))


def test_a_stop_that_does_not_go_so_far_is_not_set_there() -> None:
    pattern = row(228_600, 4, 40_000)
    assert planned(pattern, replace(DESK, reach=(60_000, 94_300)))
    assert refused(pattern, replace(DESK, reach=(60_000, 94_299 - TOLERANCE)))
    near = replace(DESK, from_middle=False, reach=(10_000, 54_300))
    assert planned(pattern, near).strokes[0].stop == 54_300


def test_by_a_stop_without_a_scale_no_hole_is_off_because_scales_have_tenths() -> None:
    # Half letter: 1.5, 4.25 and 7 in from the head; the middle hole is at 107.95 mm, which no tenth is.
    pattern, punch = row(215_900, 3, 69_850), holes_at(0, 69_850, 139_700)
    assert planned(pattern, punch).off == 50
    for stop in ("plain", "none"):
        plan = planned(pattern, replace(punch, stop=stop))
        assert (plan.off, plan.strokes[0].stop) == (0, 38_100)


def test_without_a_stop_a_leaf_may_end_between_the_holes() -> None:
    pattern = placed(100_000, 20_000)
    assert refused(pattern, replace(DESK, reach=(45_000, 60_000)))
    assert sorted(done(planned(pattern, replace(DESK, stop="none")))) == [20_000]


def test_a_leaf_without_holes_has_no_plan() -> None:
    assert refused(row(210_000, 0, 0)).nearest == ()


@st.composite
def punches(draw: DrawFn) -> Punch:
    gaps = draw(st.lists(st.integers(8_000, 90_000), max_size=3))
    holes = tuple(sum(gaps[:n]) for n in range(len(gaps) + 1))
    stop = draw(st.sampled_from(("scale", "plain", "none")))
    far = draw(st.sampled_from((None, (0, 150_000), (40_000, 200_000))))
    sides = draw(st.booleans()), draw(st.booleans())
    return replace(DESK, holes=holes, stop=stop, stop_on_right=sides[0], from_middle=sides[1], reach=far)


@st.composite
def cases(draw: DrawFn) -> tuple[Pattern, Punch]:
    """A punch and a pattern that it makes in a few strokes, but for small or large errors."""
    punch, edge = draw(punches()), draw(st.integers(100_000, 300_000))
    wanted: set[int] = set()
    for _ in range(draw(st.integers(1, 3))):
        stop, start = draw(st.integers(10_000, 100_000)), draw(st.booleans())
        for pin in pins(punch):
            at = stop + pin if start else edge - stop - pin
            wanted.add(at + draw(st.sampled_from((0, 0, 0, 200, -400))))
    assume(all(4_000 <= at <= edge - 4_000 for at in wanted))
    centres = tuple(sorted(wanted))
    assume(all(after - before > 6_000 for before, after in pairwise(centres)))
    bound_at = draw(st.sampled_from(("left", "top")))
    return Pattern(edge, centres, 6_000, 12_000, bound_at), punch


@given(cases())
@settings(max_examples=300)
def test_a_plan_makes_exactly_the_holes_that_are_wanted(case: tuple[Pattern, Punch]) -> None:
    pattern, punch = case
    found = punching(pattern, punch)
    for plan in (found,) if isinstance(found, Plan) else found.nearest:
        made = done(plan)
        assert len(plan.strokes) <= MOST_STROKES
        assert all(min(abs(at - wanted) for at in made) <= TOLERANCE for wanted in plan.pattern.centres)
        assert all(min(abs(at - wanted) for wanted in plan.pattern.centres) <= plan.off <= TOLERANCE for at in made)
        assert all(reach(punch)[0] <= stroke.stop <= reach(punch)[1] for stroke in plan.strokes)
        assert {hole for stroke in plan.strokes for hole in stroke.makes} == set(range(len(plan.pattern.centres)))


Stroke = tuple[int, bool]


@st.composite
def small(draw: DrawFn) -> tuple[Pattern, Punch]:
    """On a grid of millimetres and a short edge, so that every place of the stop can be tried."""
    gaps = draw(st.lists(st.integers(3, 14), max_size=2))
    punch = replace(
        DESK,
        holes=tuple(1_000 * sum(gaps[:n]) for n in range(len(gaps) + 1)),
        diameter=2_000,
        stop=draw(st.sampled_from(("plain", "none"))),
        stop_on_right=draw(st.booleans()),
    )
    edge = draw(st.integers(20, 34))
    good = sorted(_strokes(edge, punch, frozenset(range(edge + 1))).values(), key=sorted)
    some = draw(st.lists(st.sampled_from(good), min_size=1, max_size=3)) if good else [frozenset({edge // 2})]
    wanted = frozenset().union(*some) ^ draw(st.sampled_from((frozenset(), frozenset(), frozenset({edge // 2}))))
    places = sorted(wanted)
    assume(places and places[0] >= 2 and places[-1] <= edge - 2)
    assume(all(after - before >= 3 for before, after in pairwise(places)))
    return Pattern(1_000 * edge, tuple(1_000 * at for at in places), 2_000, 12_000, "left"), punch


def _strokes(edge: int, punch: Punch, wanted: frozenset[int]) -> dict[Stroke, frozenset[int]]:
    """By trial of every millimetre: the strokes that make nothing that is not wanted, and what they make."""
    clear = 1 + CLEAR // 1_000
    least = 1 if punch.stop == "plain" else -punch.holes[-1] // 1_000
    found = {}
    for stop, start in product(range(least, edge + 1), (True, False)):
        at = [stop + pin // 1_000 for pin in pins(punch)]
        on = [place if start else edge - place for place in at if -clear < place < edge + clear]
        if on and wanted.issuperset(on):
            found[stop, start] = frozenset(on)
    return found


@given(small())
@settings(max_examples=200, deadline=None)
def test_no_plan_is_overlooked_and_none_is_better(case: tuple[Pattern, Punch]) -> None:
    pattern, punch = case
    wanted = frozenset(at // 1_000 for at in pattern.centres)
    strokes = _strokes(pattern.edge // 1_000, punch, wanted)
    plan = strokes_for(pattern, punch, 0)
    best = _best(strokes, wanted)
    if plan is None or best is None:
        assert plan is None
        assert best is None
        return
    changes = sum(before.stop != after.stop for before, after in pairwise(plan.strokes))
    assert (len(plan.strokes), changes, turns(plan)) == best
    assert plan.off == 0
    assert sorted(set(done(plan))) == list(pattern.centres)


def _best(strokes: dict[Stroke, frozenset[int]], wanted: frozenset[int]) -> tuple[int, int, int] | None:
    """The fewest strokes, then changes of the stop, then turns: over all orders of all choices."""
    # From the holes made, the stop and the end at it, to the least changes and turns; one more stroke at a time.
    reached = {(made, stop, start): (0, 0) for (stop, start), made in strokes.items()}
    for count in range(1, MOST_STROKES + 1):
        full = [cost for (made, _, _), cost in reached.items() if made == wanted]
        if full:
            return (count, *min(full))
        longer: dict[tuple[frozenset[int], int, bool], tuple[int, int]] = {}
        for (made, stop, start), (changes, turned) in reached.items():
            for (then, end), more in strokes.items():
                state = (made | more, then, end)
                cost = (changes + (then != stop), turned + (end != start))
                longer[state] = min(cost, longer.get(state, cost))
        reached = longer
    return None


@given(punches(), st.integers(120_000, 240_000), st.integers(2, 5), st.integers(9_000, 70_000))
@settings(max_examples=40, deadline=None)
def test_no_spacing_that_can_be_made_is_nearer(punch: Punch, edge: int, count: int, apart: int) -> None:
    assume(row(edge, count, apart).centres[0] >= 4_000)
    pattern = row(edge, count, apart)
    found = punching(pattern, punch)
    assume(isinstance(found, NoPlan))
    assert isinstance(found, NoPlan)
    nearest = [(change(pattern, near.pattern), len(near.strokes)) for near in found.nearest]
    assert nearest == sorted(nearest)
    bounds = [*nearest, *[(60_000, 1)] * (2 - len(nearest))] if nearest else [(60_000, MOST_STROKES + 1)]
    for other in range(7_000, (edge - 8_000) // (count - 1), 500):
        plan = strokes_for(evenly(pattern, other), punch, ROUNDING)
        for number, (far, _) in enumerate(bounds):
            if plan is not None and abs(other - apart) < far - 100:
                assert number, f"{other} is nearer than {nearest}"
                assert len(plan.strokes) >= bounds[0][1], f"{other} is nearer than {nearest}, with fewer strokes"
