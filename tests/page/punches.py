"""Punches and patterns for tests, and a leaf that is punched: lengths in whole micrometres."""

from __future__ import annotations

from dotleader.handbook.punch import Punch
from dotleader.page.bench.nearest import evenly
from dotleader.page.bench.plan import Pattern, Plan
from dotleader.source.record import replace
from dotleader.source.text import SourceText, Spot

SPOT = Spot(SourceText("book.cards", ""), 0, 0)

DESK = Punch("Desk punch", (0, 80_000), 6_000, (12_000, 12_000), "scale", True, True, None, SPOT)
"""Two holes to ISO 838 at a stroke."""


def holes_at(*places: int) -> Punch:
    return replace(DESK, holes=places)


def row(edge: int, count: int, apart: int) -> Pattern:
    return evenly(Pattern(edge, (0,) * count, 6_000, 12_000, "left"), apart)


def placed(edge: int, *centres: int) -> Pattern:
    return Pattern(edge, centres, 6_000, 12_000, "left")


def done(plan: Plan) -> list[int]:
    """The holes in a leaf after the plan, counted from the start of its edge, in the order in which they were made.

    The leaf is laid into the punch as it would be on a desk, and where it comes to lie is worked out from the punch's
    own left and right. Raises AssertionError where a hole of the punch comes near an end of the leaf without lying on
    it, or the end that the plan names is not the one at the stop.
    """
    made: list[int] = []
    for stroke in plan.strokes:
        made += _struck(plan.pattern, plan.punch, stroke.stop, stroke.front_up, stroke.start_at_stop)
    return made


def _struck(pattern: Pattern, punch: Punch, stop: int, front_up: bool, start_at_stop: bool) -> list[int]:
    face = punch.holes[-1] + stop if punch.stop_on_right else -stop  # the stop, right of the leftmost hole
    # The bound edge is pushed away. Of a leaf bound at the left the head is then on the right while its front is up;
    # of one bound at the top, the left end stays on the left.
    start_on_right = front_up if pattern.bound_at == "left" else not front_up
    assert start_at_stop is (start_on_right is punch.stop_on_right)
    right_end = face if punch.stop_on_right else face + pattern.edge
    made = []
    for hole in punch.holes:
        at = right_end - hole if start_on_right else hole - (right_end - pattern.edge)
        if at + punch.diameter // 2 > 0 and at - punch.diameter // 2 < pattern.edge:
            assert punch.diameter // 2 <= at <= pattern.edge - punch.diameter // 2, "the leaf's end is nicked"
            made.append(at)
    return made
