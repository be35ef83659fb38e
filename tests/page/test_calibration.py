"""The calibration sheet as geometry: it fits, nothing stands on anything else, and lines meet where figures say so."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.stocks.measures import PRINTABLE_MARGIN
from dotleader.handbook.stocks.sizes import PAPERS, SIZES
from dotleader.page.drawn import Box, Drawn, Group, Line, Text, mm
from dotleader.page.extents import Rect, extents
from dotleader.page.sheet.alignment import MOST_STRETCHED, Moved
from dotleader.page.sheet.calibration import BACK_STEP, FRONT_STEP, Arm, apart, arms, calibration, measured, signed
from dotleader.page.sheet.duplex import TURNINGS, Turning

ALL_PAPERS = pytest.mark.parametrize("paper", PAPERS)
BOTH_TURNINGS = pytest.mark.parametrize("turning", TURNINGS)
LONG_NAME = "W" * 60


def sides(paper: str, turning: Turning) -> tuple[tuple[Drawn, ...], tuple[Drawn, ...]]:
    corrected = f"{LONG_NAME} (0.125 mm right, 0.125 mm down, 0.125 % wider, 0.125 % longer)"
    return calibration(SIZES[paper], paper, corrected, turning)


def seen(paper: str, items: tuple[Drawn, ...], turning: Turning) -> list[tuple[Drawn, Rect]]:
    """What stands on the back, as seen from the front."""
    width, height = SIZES[paper]
    if turning == "short-edge":
        return [(item, Rect(r.left, height - r.bottom, r.right, height - r.top)) for item, r in extents(items)]
    return [(item, Rect(width - r.right, r.top, width - r.left, r.bottom)) for item, r in extents(items)]


def places(arm: Arm, ink: list[tuple[Drawn, Rect]], front: bool) -> list[float]:
    """Where along an arm its lines are that end at it (front) or reach over it (back), from zero."""
    found = []
    for item, r in ink:
        if not isinstance(item, Line) or len(item.points) != 2 or item.closed:
            continue
        across = (r.left, r.right) if arm.down else (r.top, r.bottom)
        along = ((r.top + r.bottom) / 2 - arm.y) if arm.down else ((r.left + r.right) / 2 - arm.x)
        off = arm.x if arm.down else arm.y
        ends = across[1] == off if front else across[0] == off - mm(2)
        if ends and across[1] - across[0] >= mm(6) and abs(along) <= arm.lines * FRONT_STEP:
            found.append(along)
    return sorted(found)


@ALL_PAPERS
@BOTH_TURNINGS
def test_everything_is_where_a_printer_reaches(paper: str, turning: Turning) -> None:
    width, height = SIZES[paper]
    margin = PRINTABLE_MARGIN
    for side in sides(paper, turning):
        for _, ink in extents(side):
            assert ink.inside(Rect(margin, margin, width - margin, height - margin))


@ALL_PAPERS
@BOTH_TURNINGS
def test_words_stand_on_nothing_else(paper: str, turning: Turning) -> None:
    for side in sides(paper, turning):
        words = [ink for item, ink in extents(side) if isinstance(item, Text)]
        others = [ink for item, ink in extents(side) if isinstance(item, Line)]
        slots = [ink for item, ink in extents(side) if isinstance(item, Box)]
        assert not [pair for pair in combinations(words, 2) if pair[0].meets(pair[1])]
        assert not [(a, b) for a in words for b in others if a.meets(b)]
        assert not [(a, b) for a in words for b in slots if a.meets(b) and not a.inside(b)]


@ALL_PAPERS
@BOTH_TURNINGS
def test_words_of_both_sides_do_not_stand_behind_each_other(paper: str, turning: Turning) -> None:
    front, back = sides(paper, turning)
    paragraphs = [group for group in front if isinstance(group, Group) and group.role == "words"]
    behind = [r for item, r in seen(paper, back, turning) if isinstance(item, Text) and item.size > 7_000]
    assert behind
    assert not [(a, b) for _, a in extents(paragraphs) for b in behind if a.meets(b)]


@ALL_PAPERS
@BOTH_TURNINGS
def test_a_back_that_is_out_by_so_many_tenths_meets_the_line_of_that_figure(paper: str, turning: Turning) -> None:
    front, back = sides(paper, turning)
    for arm in arms(SIZES[paper]):
        fixed = places(arm, list(extents(front)), front=True)
        shining = places(arm, seen(paper, back, turning), front=False)
        assert fixed == [n * FRONT_STEP for n in range(-arm.lines, arm.lines + 1)]
        assert shining == [n * BACK_STEP for n in range(-arm.lines, arm.lines + 1)]
        for n in range(-arm.lines, arm.lines + 1):
            assert shining[n + arm.lines] + 100 * n == fixed[n + arm.lines]


@ALL_PAPERS
def test_scales_stand_far_apart_on_the_middle_lines(paper: str) -> None:
    width, height = SIZES[paper]
    a, b, c, d = arms(SIZES[paper])
    assert (a.y, b.y, c.x, d.x) == (height // 2, height // 2, width // 2, width // 2)
    assert (b.x - a.x, d.y - c.y) == apart(SIZES[paper])
    assert a.x + b.x == width
    assert c.y + d.y == height
    assert apart(SIZES[paper])[0] >= width // 2
    assert a.lines >= 13  # 1.3 mm on the smallest paper
    assert paper == "A5" or {arm.lines for arm in (a, b, c, d)} == {20}


@given(
    st.sampled_from(PAPERS),
    *[st.integers(-1_100, 1_100)] * 2,
    *[st.integers(-MOST_STRETCHED // 20, MOST_STRETCHED // 20).map(lambda tens: tens * 10)] * 2,
)
def test_what_is_read_tells_what_a_printer_does(paper: str, right: int, down: int, wider: int, longer: int) -> None:
    """A back line that is n tenths of a millimetre from where it belongs is read as n tenths."""

    def read(arm: Arm, shift: int, stretch: int) -> int:
        """Solves s = shift + stretch * place, where the line that is read stands 19 s from the zero."""
        zero = (arm.y if arm.down else arm.x) - SIZES[paper][arm.down] // 2
        return round((shift + stretch / 1e6 * zero) / (1 - 19 * stretch / 1e6))

    a, b, c, d = arms(SIZES[paper])
    across = read(a, right, wider), read(b, right, wider)
    along = read(c, down, longer), read(d, down, longer)
    found = measured(across, along, SIZES[paper])
    assert (found.right, found.down) == (pytest.approx(right, abs=7), pytest.approx(down, abs=7))
    assert (found.wider, found.longer) == (pytest.approx(wider, abs=25), pytest.approx(longer, abs=25))


def test_equal_readings_are_a_shift_alone() -> None:
    assert measured((800, 800), (-275, -275), SIZES["A4"]) == Moved(800, -280)


def test_figures() -> None:
    assert [signed(n) for n in (-20, -5, 0, 5, 15)] == ["−2", "−0.5", "0", "0.5", "1.5"]


def test_it_says_whether_it_is_corrected() -> None:
    for corrected, words in (("", "without a correction"), ("Desk", "corrected for Desk")):
        _, back = calibration(SIZES["A4"], "A4", corrected)
        text = " ".join(item.string for item, _ in extents(back) if isinstance(item, Text))
        assert words in text


@BOTH_TURNINGS
def test_it_says_on_which_edge_it_is_turned_and_what_is_typed_then(turning: Turning) -> None:
    front, _ = calibration(SIZES["A4"], "A4", "", turning)
    text = " ".join(item.string for item, _ in extents(front) if isinstance(item, Text)).replace("\u00a0", " ")
    other = next(each for each in TURNINGS if each != turning)
    assert f"turned on the {turning.replace('-', ' ')}" in text
    assert other.replace("-", " ") not in text
    assert ("--turn short-edge" in text) is (turning == "short-edge")
