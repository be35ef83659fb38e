"""How a back is righted: whatever a printer does to it, within limits, the righted one lands where it belongs.

Outside check: the back of a sheet that is turned about its long edge has (x, y) behind (W - x, y) of the front, about
its short edge behind (x, H - y) (derived; the trade's left offset, which moves backs the other way, agrees).
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.page.sheet.alignment import (
    MOST_MOVED,
    MOST_STRETCHED,
    Moved,
    Righting,
    beyond,
    further,
    righting,
    said,
)
from dotleader.page.sheet.duplex import TURNINGS, Turning

LETTER = (215_900, 279_400)
SHIFTS = st.integers(-MOST_MOVED, MOST_MOVED)
STRETCHES = st.integers(-MOST_STRETCHED // 10, MOST_STRETCHED // 10).map(lambda tens: tens * 10)
ANY = st.builds(Moved, SHIFTS, SHIFTS, STRETCHES, STRETCHES)
POINTS = st.tuples(st.integers(0, LETTER[0]), st.integers(0, LETTER[1]))


def printed(moved: Moved, x: float, y: float, turning: Turning) -> tuple[float, float]:
    """Where a printer puts a point of the back's page, as seen from the front."""
    middle_x, middle_y = LETTER[0] / 2, LETTER[1] / 2
    x, y = behind(x, y, turning)
    return (
        middle_x + (x - middle_x) * (1 + moved.wider / 1e6) + moved.right,
        middle_y + (y - middle_y) * (1 + moved.longer / 1e6) + moved.down,
    )


def behind(x: float, y: float, turning: Turning) -> tuple[float, float]:
    """From a point of one side to that of the other, both upright."""
    return (LETTER[0] - x, y) if turning == "long-edge" else (x, LETTER[1] - y)


def drawn(by: Righting, x: float, y: float) -> tuple[float, float]:
    return by.across * x + by.right, by.along * y + by.down


@given(ANY, POINTS, st.sampled_from(TURNINGS))
def test_a_righted_back_lands_behind_its_front(moved: Moved, point: tuple[int, int], turning: Turning) -> None:
    by = righting(moved, LETTER, turning)
    landed = printed(moved, *drawn(by, *behind(*point, turning)), turning)
    assert landed == pytest.approx(point, abs=0.001)


@given(ANY, ANY, POINTS)
def test_what_is_left_is_added(before: Moved, rest: Moved, point: tuple[int, int]) -> None:
    """A printer that leaves `rest` after `before` was righted is righted by both together."""
    both = further(before, rest)
    x, y = drawn(righting(before, LETTER), *drawn(righting(rest, LETTER), *point))
    assert drawn(righting(both, LETTER), *point) == pytest.approx((x, y), abs=3)


@pytest.mark.parametrize(
    ("moved", "words"),
    [
        (Moved(800, 300), "0.8 mm right, 0.3 mm down"),
        (Moved(-50, -1_250, 1_200, -850), "0.05 mm left, 1.25 mm up, 0.12 % wider, 0.085 % shorter"),
        (Moved(0, 0, -10_000, 0), "0 mm right, 0 mm down, 1 % narrower"),
    ],
)
def test_it_is_said(moved: Moved, words: str) -> None:
    assert said(moved) == words


def test_what_is_too_much_is_said() -> None:
    assert not list(beyond(Moved(MOST_MOVED, -MOST_MOVED, MOST_STRETCHED, -MOST_STRETCHED)))
    assert list(beyond(Moved(0, -5_001, 10_010))) == [
        "The back is moved 0 mm right, 5.001 mm up, and more than 5 mm is not righted.",
        "The back is 1.001 % wider, and more than 1 % is not righted.",
    ]
