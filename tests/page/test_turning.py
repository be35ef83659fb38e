"""Where a page is turned."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from dotleader.page.lay.outline import Hold
from dotleader.page.lay.rows import Row
from dotleader.page.lay.turning import height_of, tops_of, turns

ROWS = st.lists(
    st.builds(
        Row,
        st.just(-1),
        st.sampled_from([*Hold, Hold.STEP + Hold.LEVEL]),
        st.integers(1, 40),
        st.just(0),
        st.integers(0, 10),
        st.integers(0, 1000),
    ),
    min_size=1,
    max_size=60,
)


def starts(holds: list[int], room: int = 10, foot: int = 0) -> list[int]:
    rows = [Row(-1, hold, 1, 0) for hold in holds]
    return turns(rows, tops_of(rows, 0), room, foot, lambda _: 0)


def test_what_fits_is_not_turned() -> None:
    assert starts([Hold.GROUP] * 10) == [0]


def test_a_page_is_turned_at_the_last_group_when_the_rest_is_on_the_next_face() -> None:
    assert starts([3, 3, 3, 0, 3, 3, 0, 3, 3, 3, 3, 3]) == [0, 6]


def test_at_the_outermost_level_where_there_is_no_group() -> None:
    assert starts([3, 3, 3, 3, 3, 1, 13, 13, 13, 13, 13, 13]) == [0, 5]


def test_never_before_what_belongs_to_the_row_above() -> None:
    assert starts([3] * 8 + [1000] * 4) == [0, 7]


def test_memory_items_are_parted_only_where_they_fill_a_face() -> None:
    assert starts([3] * 6 + [1000] + [2000] * 5) == [0, 5]
    assert starts([3] + [2000] * 14) == [0, 10]


def test_a_face_that_goes_on_keeps_its_foot_free() -> None:
    assert starts([3] * 12, foot=2) == [0, 8]


@given(ROWS, st.integers(50, 300), st.integers(0, 20), st.integers(0, 30))
def test_every_face_fits_and_takes_a_row(rows: list[Row], room: int, foot: int, head: int) -> None:
    tops = tops_of(rows, 7)
    found = turns(rows, tops, room, foot, lambda _: head)
    ends = [*found[1:], len(rows)]
    assert found == sorted(set(found))
    for start, end in zip(found, ends, strict=True):
        space = room - (head if start else 0) - (foot if end < len(rows) else 0)
        assert end - start == 1 or height_of(rows, tops, start, end) <= space
