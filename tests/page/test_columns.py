"""The columns of responses: on the grid, with leaders that are neither too short nor too long."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from dotleader.page.drawn import mm
from dotleader.page.lay.columns import Need, challenge_end, columns, first_dot, leader

WIDTH = mm(114)


@st.composite
def needs(draw: st.DrawFn) -> Need:
    left = mm(9) + draw(st.integers(0, 2)) * mm(6)
    end = left + draw(st.integers(0, mm(60)))
    parted = left + (end - left) * 6 // 10
    return Need(draw(st.integers(0, 4)), left, end, parted, WIDTH - draw(st.integers(0, mm(90))))


def need(block: int, end: float, *, response: float = 20) -> Need:
    return Need(block, mm(9), mm(end), mm(9 + (end - 9) * 0.6), WIDTH - mm(response))


@given(st.lists(needs(), min_size=1, max_size=20))
def test_every_block_has_a_column_on_the_grid_of_4_mm(some: list[Need]) -> None:
    found = columns(some, WIDTH)
    assert found.keys() == {one.block for one in some}
    assert all(mm(38) <= column <= mm(74) and (column - mm(38)) % mm(4) == 0 for column in found.values())


@given(st.lists(needs(), min_size=1, max_size=20))
def test_no_leader_is_longer_than_40_mm_and_none_that_follows_its_challenge_has_under_four_dots(
    some: list[Need],
) -> None:
    found = columns(some, WIDTH)
    for one in some:
        column = found[one.block]
        dots = leader(one.end, column)
        if one.end <= challenge_end(column, WIDTH):
            assert dots is not None
            assert mm(6) <= dots[1] - dots[0] <= mm(39.4)
            assert dots[0] - mm(0.3) - one.end >= mm(2.2)


def test_as_far_left_as_the_challenges_allow_and_38_at_least() -> None:
    assert columns([need(0, 12)], WIDTH) == {0: mm(38)}
    assert columns([need(0, 30)], WIDTH) == {0: mm(42)}
    assert columns([need(0, 30), need(0, 12)], WIDTH) == {0: mm(42)}


def test_columns_within_16_mm_join_the_rightmost_one() -> None:
    assert columns([need(0, 20), need(1, 41)], WIDTH) == {0: mm(54), 1: mm(54)}
    assert columns([need(0, 20), need(1, 45)], WIDTH) == {0: mm(38), 1: mm(58)}


def test_a_column_stays_where_a_response_would_break_further_right() -> None:
    assert columns([need(0, 20, response=65), need(1, 41)], WIDTH) == {0: mm(38), 1: mm(54)}


def test_a_challenge_that_is_too_long_by_a_little_moves_the_column_when_responses_are_short() -> None:
    assert columns([need(0, 52, response=20)], WIDTH) == {0: mm(66)}
    assert columns([need(0, 52, response=50)], WIDTH) == {0: mm(46)}  # on two lines, then


def test_a_leader_never_begins_left_of_40_mm_before_its_column() -> None:
    first, last = leader(mm(10), mm(62)) or (0, 0)
    assert (first, last) == (mm(22), mm(60))
    assert first_dot(mm(10)) == mm(14)
    assert leader(mm(60), mm(62)) is None


NARROW_WIDTH = mm(73)
"""Of the text on A6."""


def narrow(end: float, *, response: float = 20) -> Need:
    return Need(0, mm(9), mm(end), mm(9 + (end - 9) * 0.6), NARROW_WIDTH - mm(response))


def test_on_narrow_leaves_columns_stand_every_2_mm_and_leaders_have_two_dots_at_least() -> None:
    for end in range(12, 39):
        column = columns([narrow(end)], NARROW_WIDTH)[0]
        assert (column - mm(38)) % mm(2) == 0
        assert mm(end) <= challenge_end(column, NARROW_WIDTH)
        dots = leader(mm(end), column)
        assert dots is not None
        assert dots[1] - dots[0] >= mm(2)
    # `Fuel selector` in 14 points ends 36 mm from the left, and `OTHER TANK` is 26 mm wide: both stay on one line.
    assert columns([narrow(36, response=28.5)], NARROW_WIDTH) == {0: mm(44)}
