"""Where the stop of a punch can stand so that a stroke makes holes of a pattern and no others.

A stroke is good when every pin comes down within the tolerance on a hole that is wanted, or clear of the leaf. For one
choice of what the pins meet, the places of the stop that are good for it are one stretch, and where it begins some pin
just comes within its bounds. There are few such places, and all of them are tried, so that nothing is overlooked.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from operator import neg

from dotleader.handbook.punch import Punch
from dotleader.page.bench.plan import Pattern
from dotleader.source.record import record

CLEAR = 1_000
"""How far from the leaf's end the edge of a hole stays that shall not be punched into it (our own figure)."""

FAR = 10_000_000


@record
class Setting:
    """`pairs` are (pin, hole), the pin counted from the stop; the stop may stand anywhere from `low` to `high`."""

    start_at_stop: bool
    pairs: tuple[tuple[int, int], ...]
    low: int
    high: int

    @property
    def makes(self) -> frozenset[int]:
        return frozenset(hole for _, hole in self.pairs)


def pins(punch: Punch) -> tuple[int, ...]:
    """The holes that the punch makes, counted from the one nearest to its stop."""
    return tuple(punch.holes[-1] - at for at in reversed(punch.holes)) if punch.stop_on_right else punch.holes


def middle(punch: Punch) -> int:
    """From the hole nearest to the stop to the middle of the outer ones."""
    return punch.holes[-1] // 2


def counted_from(punch: Punch) -> int:
    """What is added to the distance from stop to nearest hole to get what the scale shows."""
    return middle(punch) if punch.from_middle else 0


def reach(punch: Punch) -> tuple[int, int]:
    """The least and the greatest distance from the stop to the nearest hole.

    A stop stands outside the holes. Where there is none, a mark stands for it, and may be anywhere.
    """
    if punch.stop == "none":
        return -FAR, FAR
    low, high = punch.diameter // 2, FAR
    if punch.reach is not None:
        low, high = max(low, punch.reach[0] - counted_from(punch)), punch.reach[1] - counted_from(punch)
    return low, high


def settings(pattern: Pattern, punch: Punch, tolerance: int) -> list[Setting]:
    """Every good setting, each with all the places that the stop can take for it."""
    found: list[Setting] = []
    for start_at_stop in (True, False):
        table = _Table(
            from_stop(pattern, start_at_stop), pins(punch), pattern.edge, beyond(punch), tolerance, reach(punch)
        )
        seen: set[tuple[tuple[int, int], ...]] = set()
        for at in _places(table):
            pairs = _met(table, at)
            if pairs and pairs not in seen:
                seen.add(pairs)
                found.append(Setting(start_at_stop, pairs, *_stretch(table, at)))
    return found


def from_stop(pattern: Pattern, start_at_stop: bool) -> tuple[int, ...]:
    """The places of the holes, in the pattern's order, counted from the end that meets the stop."""
    return pattern.centres if start_at_stop else tuple(pattern.edge - at for at in pattern.centres)


def beyond(punch: Punch) -> int:
    """How far past an end of the leaf the centre of a hole has to be to miss it."""
    return -(-punch.diameter // 2) + CLEAR


@record
class _Table:
    """A leaf and a punch, all counted from the stop."""

    wanted: tuple[int, ...]
    pins: tuple[int, ...]
    edge: int
    beyond: int
    tolerance: int
    reach: tuple[int, int]


def _places(table: _Table) -> Iterator[int]:
    """The lower ends of all stretches: there a pin just comes within the tolerance or just clears the leaf."""
    low, high = table.reach
    bounds = {low}
    for pin in table.pins:
        bounds.add(table.edge + table.beyond - pin)
        bounds.update(at - pin - table.tolerance for at in table.wanted)
    yield from sorted(at for at in bounds if low <= at <= high)


def _met(table: _Table, at: int) -> tuple[tuple[int, int], ...]:
    """Pins and the holes that they make; nothing where one of them spoils the leaf."""
    before, after = -table.beyond, table.edge + table.beyond
    pairs: list[tuple[int, int]] = []
    for number, pin in enumerate(table.pins):
        here = at + pin
        if before < here < after:
            hole = _nearest(table.wanted, here)
            if abs(table.wanted[hole] - here) > table.tolerance:
                return ()
            pairs.append((number, hole))
    return tuple(pairs)


def _nearest(wanted: tuple[int, ...], here: int) -> int:
    """The number of the hole that is nearest; the places ascend or, counted from the other end, descend."""
    descend = len(wanted) > 1 and wanted[0] > wanted[1]
    after = bisect_left(wanted, -here, key=neg) if descend else bisect_left(wanted, here)
    if after == len(wanted) or (after and abs(wanted[after - 1] - here) <= abs(wanted[after] - here)):
        return after - 1
    return after


def _stretch(table: _Table, at: int) -> tuple[int, int]:
    """How far the stop can move from `at` with every pin still meeting what it meets there."""
    before, after = -table.beyond, table.edge + table.beyond
    low, high = table.reach
    for pin in table.pins:
        here = at + pin
        if here <= before:
            high = min(high, before - pin)
        elif here >= after:
            low = max(low, after - pin)
        else:
            hole = table.wanted[_nearest(table.wanted, here)]
            low, high = max(low, hole - pin - table.tolerance), min(high, hole - pin + table.tolerance)
    return low, high
