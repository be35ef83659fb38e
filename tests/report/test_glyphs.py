"""Characters as they are shown. Widths follow Unicode Standard Annex 11 (East Asian Width)."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from dotleader.report.glyphs import Glyph, escaped, glyphs, width_of
from dotleader.report.terminal import Terminal

UTF8 = Terminal()
ASCII = Terminal(encoding="ascii")


def test_plain_wide_and_combining() -> None:
    assert glyphs("aé燃ｦ", UTF8) == [Glyph("a", 1), Glyph("é", 1), Glyph("燃", 2), Glyph("ｦ", 1)]
    assert glyphs("e\u0301", UTF8) == [Glyph("e", 1), Glyph("\u0301", 0)]
    assert glyphs("\u00a0\u3000", UTF8) == [Glyph(" ", 1), Glyph("  ", 2)]


def test_tabs_reach_to_the_next_fourth_column() -> None:
    assert [glyph.text for glyph in glyphs("ab\tc\t", UTF8)] == ["a", "b", "→ ", "c", "→  "]
    assert [glyph.text for glyph in glyphs("燃\t", ASCII)] == ["\\u71c3", "> "]


def test_what_would_confuse_a_terminal_is_written_out() -> None:
    assert escaped("a\x07b\x1b[31m", UTF8) == "a\\x07b\\x1b[31m"
    assert escaped("\u202eab\u200b\ufeff\n", UTF8) == "\\u202eab\\u200b\\ufeff\\x0a"
    assert escaped("\udce9", UTF8) == "\\udce9"
    assert escaped("\U000e0041", UTF8) == "\\U000e0041"
    assert escaped("20 °C → é", ASCII) == "20 \\xb0C \\u2192 \\xe9"


@given(st.text(max_size=40))
def test_what_is_shown_can_be_encoded_and_is_as_wide_as_it_says(text: str) -> None:
    for terminal in (UTF8, ASCII, Terminal(encoding="cp1252")):
        shown = glyphs(text, terminal)
        joined = "".join(glyph.text for glyph in shown)
        joined.encode(terminal.encoding)
        assert len(shown) == len(text)
        assert width_of(joined, terminal) == sum(glyph.width for glyph in shown)
        assert not any(character < " " for character in joined)
