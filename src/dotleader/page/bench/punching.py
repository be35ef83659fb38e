"""From the holes that are wanted and the punch on the desk to the strokes that make them.

The search is complete for up to four strokes. The fewest strokes are taken; among those the plan with the fewest
settings of the stop, because with one setting every leaf can be finished before the next is taken, and a stop that
stands a little off leaves the holes symmetrical; then the fewest turns of the leaf, the fewest holes that are punched
twice, and the least distance of any hole from its place.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

from dotleader.handbook.punch import Punch
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.bench.plan import Pattern, Plan, Stroke
from dotleader.page.bench.settings import Setting, beyond, counted_from, from_stop, pins, settings

MOST_STROKES = 4

TOLERANCE = 500
"""How far a hole may be from its place, in width as in distance from the edge: what ISO 838 allows for the distance
of its two holes and for their width."""

SCALE_STEP = 100
"""Settings are given in tenths of a millimetre, where one of them is good."""


def pattern_of(stock: Stock) -> Pattern:
    """The holes of a stock, along the edge of the pouch where there is one: it is punched with the leaf in it."""
    along, across = (1, 0) if stock.bound_at == "left" else (0, 1)
    filmed = stock.pouch != (0, 0)
    seal_along = (stock.pouch[along] - stock.leaf[along]) // 2 if filmed else 0
    seal_across = (stock.pouch[across] - stock.leaf[across]) // 2 if filmed else 0
    return Pattern(
        edge=stock.pouch[along] if filmed else stock.leaf[along],
        centres=tuple(sorted(at + seal_along for at in stock.holes)),
        diameter=stock.hole_diameter,
        inset=stock.hole_edge + seal_across,
        bound_at=stock.bound_at,
        filmed=filmed,
    )


def strokes_for(pattern: Pattern, punch: Punch, tolerance: int = TOLERANCE, most: int = MOST_STROKES) -> Plan | None:
    """The best plan of at most `most` strokes; None where there is none. Width and depth are not looked at here."""
    if not pattern.centres or len(pattern.centres) > most * len(punch.holes):
        return None
    offered = settings(pattern, punch, tolerance)
    missing = frozenset(range(len(pattern.centres)))
    if missing.difference(*(one.makes for one in offered)):
        return None
    for count in range(1, most + 1):
        plans = [_ordered(pattern, punch, parts) for parts in _fewest_groups(_covers(offered, missing, count))]
        if plans:
            return min(plans, key=_worth)
    return None


def _fewest_groups(covers: Iterable[tuple[Setting, ...]]) -> list[tuple[tuple[Setting, ...], ...]]:
    """The strokes of each cover in groups that share one place of the stop: those with the fewest groups of all."""
    best: list[tuple[tuple[Setting, ...], ...]] = []
    for cover in covers:
        for parts in _parted(cover):
            if best and len(parts) < len(best[0]):
                best.clear()
            if not best or len(parts) == len(best[0]):
                best.append(parts)
    return best


def struck(pattern: Pattern, punch: Punch, stroke: Stroke) -> tuple[int, ...]:
    """The centres of the holes that a stroke makes in the leaf, counted from the start of its edge, ascending."""
    places = [stroke.stop + pin for pin in pins(punch)]
    if not stroke.start_at_stop:
        places = [pattern.edge - at for at in places]
    out = beyond(punch)
    return tuple(sorted(at for at in places if -out < at < pattern.edge + out))


def _covers(offered: list[Setting], missing: frozenset[int], count: int) -> Iterator[tuple[Setting, ...]]:
    """Every choice of `count` settings that makes all the missing holes; each of them is needed."""
    if not missing:
        yield ()
        return
    if not count:
        return
    first = min(missing)
    for setting in offered:
        if first in setting.makes:
            for rest in _covers(offered, missing - setting.makes, count - 1):
                yield (setting, *rest)


def _parted(cover: tuple[Setting, ...]) -> Iterator[tuple[tuple[Setting, ...], ...]]:
    """Every way to do the strokes in groups that share one place of the stop."""
    if not cover:
        yield ()
        return
    first, *rest = cover
    for parts in _parted(tuple(rest)):
        yield ((first,), *parts)
        for number, part in enumerate(parts):
            together = (first, *part)
            if max(one.low for one in together) <= min(one.high for one in together):
                yield (*parts[:number], together, *parts[number + 1 :])


def _ordered(pattern: Pattern, punch: Punch, parts: tuple[tuple[Setting, ...], ...]) -> Plan:
    """The strokes in the order with the fewest turns: one-sided groups first and last, front up before back up."""
    groups: list[tuple[int, list[Stroke]]] = []
    for part in parts:
        stop = _stop_for(pattern, punch, part)
        strokes = [
            Stroke(stop, one.start_at_stop, _front_up(pattern, punch, one.start_at_stop), tuple(sorted(one.makes)))
            for one in part
        ]
        groups.append((stop, sorted(strokes, key=lambda stroke: (not stroke.front_up, stroke.makes))))
    groups.sort(key=lambda group: (group[0], group[1][0].makes))
    fronts = [group for _, group in groups if group[-1].front_up]
    backs = [group for _, group in groups if not group[0].front_up]
    both = [group for _, group in groups if group[0].front_up and not group[-1].front_up]
    strokes = [stroke for group in (*fronts, *both[:1], *backs) for stroke in group]
    for group in both[1:]:
        strokes += group if strokes[-1].front_up else group[::-1]
    return Plan(pattern, punch, tuple(strokes), _off(pattern, punch, strokes))


def _stop_for(pattern: Pattern, punch: Punch, part: tuple[Setting, ...]) -> int:
    """Where the stop stands for a group: as near to all of its holes as can be, by a scale in tenths if it can."""
    low, high = max(one.low for one in part), min(one.high for one in part)
    offsets = [
        from_stop(pattern, one.start_at_stop)[hole] - pins(punch)[pin] for one in part for pin, hole in one.pairs
    ]
    best = min(max((min(offsets) + max(offsets)) // 2, low), high)
    if punch.stop != "scale":
        return best  # a guide is drawn as exactly as it is wanted
    shown = best + counted_from(punch)
    for stepped in sorted(
        (shown // SCALE_STEP * SCALE_STEP, -(-shown // SCALE_STEP) * SCALE_STEP), key=lambda near: abs(near - shown)
    ):
        if low <= stepped - counted_from(punch) <= high:
            return stepped - counted_from(punch)
    return best


def _front_up(pattern: Pattern, punch: Punch, start_at_stop: bool) -> bool:
    """Pushed away with its front up, a leaf bound at the left has its head on the right, one bound at the top its
    left end on the left."""
    on_right = start_at_stop == punch.stop_on_right
    return on_right if pattern.bound_at == "left" else not on_right


def _off(pattern: Pattern, punch: Punch, strokes: list[Stroke]) -> int:
    places = [at for stroke in strokes for at in struck(pattern, punch, stroke)]
    return max(min(abs(at - wanted) for wanted in pattern.centres) for at in places)


def _worth(plan: Plan) -> tuple[object, ...]:
    """Less is better, among plans with as many strokes and settings."""
    strokes = plan.strokes
    made = [hole for stroke in strokes for hole in stroke.makes]
    return (
        turns(plan),
        len(made) - len(set(made)),
        plan.off,
        not strokes[0].front_up,
        tuple((stroke.stop, not stroke.front_up) for stroke in strokes),
    )


def turns(plan: Plan) -> int:
    """How often a leaf is turned over between strokes."""
    strokes = plan.strokes
    return sum(before.front_up != after.front_up for before, after in pairwise(strokes))
