"""The plan for a pattern, or what a punch makes instead."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.punch import Punch
from dotleader.handbook.stocks.fault import millimetres
from dotleader.page.bench.plan import NoPlan, Pattern, Plan, Punching
from dotleader.page.bench.punching import MOST_STROKES, SCALE_STEP, TOLERANCE, strokes_for
from dotleader.page.bench.settings import beyond, counted_from, pins, reach, settings
from dotleader.source.record import replace

ROUNDING = 20
"""What is lost where spacings are whole micrometres: less than one for each hole."""


MOST_TRIED = 1_000
"""Spacings that are tried, nearest first; only a punch with more than ten uneven holes has so many."""


def punching(pattern: Pattern, punch: Punch) -> Punching:
    """How a punch makes a pattern, or why not and what it makes instead."""
    reasons = list(_unlike(pattern, punch))
    plan = strokes_for(pattern, punch)
    if plan is not None and not reasons:
        return plan
    if plan is None:
        reasons.insert(0, _no_strokes(pattern, punch))
    return NoPlan(pattern, punch, tuple(reasons), tuple(_nearest(pattern, punch)))


def _unlike(pattern: Pattern, punch: Punch) -> Iterator[str]:
    """What no stroke can change: how wide the holes are, and how far from the edge."""
    if abs(pattern.diameter - punch.diameter) > TOLERANCE:
        yield f"It makes holes of {millimetres(punch.diameter)}, and {millimetres(pattern.diameter)} are wanted."
    if depth_for(pattern, punch) is None:
        least, most = punch.depth
        makes = millimetres(least) if least == most else f"{millimetres(least)} to {millimetres(most)}"
        yield f"It makes them {makes} from the edge, and {millimetres(pattern.inset)} are wanted."


def _no_strokes(pattern: Pattern, punch: Punch) -> str:
    count, at_once = len(pattern.centres), len(punch.holes)
    if not count:
        return "There is nothing to punch."
    if count > MOST_STROKES * at_once:
        return f"{count} holes take more than {MOST_STROKES} strokes of {at_once}."
    if far := _out_of_reach(pattern, punch):
        return far
    missing = set(range(count)).difference(*(one.makes for one in settings(pattern, punch, TOLERANCE)))
    if not missing:
        return f"It takes more than {MOST_STROKES} strokes."
    numbers = [str(hole + 1) for hole in sorted(missing)]
    holes = f"holes {', '.join(numbers[:-1])} and {numbers[-1]}" if len(numbers) > 1 else f"hole {numbers[0]}"
    return f"No place of the stop makes {holes} without one that is not wanted."


def _out_of_reach(pattern: Pattern, punch: Punch) -> str:
    """What is said where nothing but the limits of the stop is in the way; '' where more is."""
    if punch.stop == "none" or punch.reach is None:
        return ""
    free = strokes_for(pattern, replace(punch, reach=None))
    if free is None:
        return ""
    low, high = reach(punch)
    wanted = [stop for stop in dict.fromkeys(one.stop for one in free.strokes) if not low <= stop <= high]
    at = " and ".join(millimetres(stop + counted_from(punch)) for stop in wanted)
    least, most = (millimetres(limit) for limit in punch.reach)
    return f"The stop would have to stand at {at}, and it goes from {least} to {most}."


def depth_for(pattern: Pattern, punch: Punch) -> int | None:
    """What the depth is set to; None where that cannot be."""
    near = min(max(pattern.inset, punch.depth[0]), punch.depth[1])
    return near if abs(near - pattern.inset) <= TOLERANCE else None


def change(pattern: Pattern, other: Pattern) -> int:
    """By how much a spacing changes at most from one pattern to another of as many holes."""
    return max((abs(a - b) for a, b in zip(pattern.gaps, other.gaps, strict=True)), default=0)


def _nearest(pattern: Pattern, punch: Punch) -> Iterator[Plan]:
    """The nearest pattern of equal spacing about the middle of the edge, and the nearest that takes fewer strokes.

    With equal spacing, a choice of strokes is possible at single spacings, where two holes of the punch meet two of the
    pattern, or on stretches of spacings that begin and end where a hole of the punch just clears the leaf or the
    stop is at its limit. All of these are tried, nearest first.
    """
    count = len(pattern.centres)
    if not count or count > MOST_STROKES * len(punch.holes):
        return
    at_depth = min(max(pattern.inset, punch.depth[0]), punch.depth[1])
    like = replace(pattern, diameter=punch.diameter, inset=at_depth)
    tried = [like, *(evenly(like, apart) for apart in _spacings(like, punch))]
    best: Plan | None = None
    for other in sorted(tried, key=lambda other: change(pattern, other))[:MOST_TRIED]:
        if other == pattern:
            continue
        most = MOST_STROKES if best is None else len(best.strokes) - 1
        plan = strokes_for(other, punch, TOLERANCE if other is like else ROUNDING, most)
        if plan is not None:
            yield plan
            if best is not None or len(plan.strokes) == 1:
                return
            best = plan


def evenly(pattern: Pattern, apart: int) -> Pattern:
    """As many holes with equal spacing, about the middle of the edge."""
    count = len(pattern.centres)
    first = pattern.edge - (count - 1) * apart
    return replace(pattern, centres=tuple((first + 2 * n * apart) // 2 for n in range(count)))


def _spacings(pattern: Pattern, punch: Punch) -> list[int]:
    """Spacings among which the nearest that can be made is, each once."""
    count = len(pattern.centres)
    if count == 1:
        return [0]
    found: set[int] = set()
    offsets = pins(punch)
    for gap in {there - here for here in offsets for there in offsets if there > here}:
        for holes in range(1, count):
            found.update((gap // holes, -(-gap // holes)))
    for double in _doubled_places(pattern, punch):  # twice the distance of a hole from the middle
        for steps in range(1 - count, count):
            if steps and double // steps > 0:
                exact = double // steps
                found.update(near // SCALE_STEP * SCALE_STEP for near in (exact, exact + SCALE_STEP))
    found.add((min(pattern.gaps) + max(pattern.gaps)) // 2)
    least = punch.diameter + beyond(punch) - punch.diameter // 2
    most = (pattern.edge - 2 * beyond(punch)) // (count - 1)
    return [apart for apart in sorted(found) if least <= apart <= most]


def _doubled_places(pattern: Pattern, punch: Punch) -> Iterator[int]:
    """Twice how far from the middle of the edge a hole is where one of the bounds on its stroke is just met."""
    low, high = reach(punch)
    offsets = pins(punch)
    for pin in offsets:
        bounds = [low + pin, high + pin]
        for other in offsets:
            bounds += [pattern.edge + beyond(punch) - (other - pin), -beyond(punch) - (other - pin)]
        for at in bounds:
            yield 2 * at - pattern.edge
