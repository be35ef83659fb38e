"""Long texts in lines."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from dotleader.report.glyphs import width_of
from dotleader.report.terminal import Terminal
from dotleader.report.wrapping import wrapped

UTF8 = Terminal()


def test_breaks_between_words_and_keeps_what_is_quoted_together() -> None:
    text = "Write `Fuel pump .... ON` in its place."
    assert list(wrapped(text, 24, UTF8)) == ["Write", "`Fuel pump .... ON` in", "its place."]


def test_runs_of_spaces_fold_outside_of_quotes_only() -> None:
    assert list(wrapped("a  b `c  d`", 40, UTF8)) == ["a b `c  d`"]


def test_a_line_break_stays_with_the_indentation_after_it() -> None:
    assert list(wrapped("Write\n  normal Taxi\n    A .... B", 40, UTF8)) == ["Write", "  normal Taxi", "    A .... B"]


def test_a_word_longer_than_a_line_is_cut() -> None:
    assert list(wrapped("x" * 25, 10, UTF8)) == ["x" * 10, "x" * 10, "x" * 5]
    assert list(wrapped("`aaaa bbbb cccc`", 10, UTF8)) == ["`aaaa bbbb", "cccc`"]
    assert list(wrapped("燃料燃料燃料", 5, UTF8)) == ["燃料", "燃料", "燃料"]


@given(st.text(max_size=120), st.integers(12, 90))
def test_no_line_is_wider_and_no_word_is_lost(text: str, width: int) -> None:
    lines = list(wrapped(text, width, UTF8))
    assert all(width_of(line, UTF8) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join("".join(wrapped(text, 10_000, UTF8)).split())
