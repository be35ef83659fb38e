"""One line as far as it fits, around its marks."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from dotleader.report.glyphs import width_of
from dotleader.report.terminal import Terminal
from dotleader.report.window import Reach, Window, window

UTF8 = Terminal()
LONG = " ".join(f"w{n:03}" for n in range(200))


def test_a_line_that_fits_is_shown_whole() -> None:
    assert window("  Brakes .... HELD", Reach(2, 8), 40, UTF8) == Window("  Brakes .... HELD", 2, 6)


def test_an_empty_place_gets_one_mark() -> None:
    assert window("normal", Reach(6, 6), 40, UTF8) == Window("normal", 6, 1)


def test_the_beginning_of_a_line_is_kept_where_the_marks_are_near_it() -> None:
    seen = window(LONG, Reach(5, 9), 30, UTF8)
    assert seen == Window("w000 w001 w002 w003 w004 w00…", 5, 4)


def test_far_marks_are_in_sight_between_dots() -> None:
    at = LONG.index("w150")
    seen = window(LONG, Reach(at, at + 4), 30, UTF8)
    assert seen.text.startswith("…")
    assert seen.text.endswith("…")
    assert seen.text[seen.at : seen.at + seen.marks] == "w150"
    last = window(LONG, Reach(len(LONG) - 4, len(LONG)), 30, UTF8)
    assert last.text.endswith("w199")
    assert last.text[last.at : last.at + last.marks] == "w199"


def test_dots_are_ascii_where_they_must_be() -> None:
    assert "..." in window(LONG, Reach(500, 504), 30, Terminal(encoding="ascii")).text


def test_wide_characters_and_tabs_take_their_columns() -> None:
    assert window("燃料 .... ON", Reach(3, 7), 40, UTF8) == Window("燃料 .... ON", 5, 4)
    assert window("a\tb", Reach(1, 2), 40, UTF8) == Window("a→  b", 1, 3)


@given(st.text(max_size=300), st.data(), st.integers(20, 100), st.sampled_from(["utf-8", "ascii"]))
def test_it_always_fits_and_the_marks_lie_in_it(text: str, data: st.DataObject, room: int, encoding: str) -> None:
    line = text.replace("\n", " ")
    start = data.draw(st.integers(0, len(line)))
    end = data.draw(st.integers(start, len(line)))
    terminal = Terminal(encoding=encoding)
    seen = window(line, Reach(start, end), room, terminal)
    assert width_of(seen.text, terminal) <= room
    assert seen.at >= 0
    assert seen.marks >= 1
    assert seen.at + seen.marks <= room + 1  # one more for a mark behind the last character
