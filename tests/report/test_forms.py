"""The three forms of findings, and the last line."""

from __future__ import annotations

import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.report.brief import brief
from dotleader.report.full import full
from dotleader.report.glyphs import width_of
from dotleader.report.json_list import json_list
from dotleader.report.summary import summary
from dotleader.report.terminal import Terminal
from dotleader.source.finding import Finding, Related
from dotleader.source.text import SourceText, Spot
from tests.report.samples import FACTS, SOURCE, TEXT, UNKNOWN, finding, spot

UTF8 = Terminal()
ASCII = Terminal(encoding="ascii")


def shown(*findings: Finding, terminal: Terminal = UTF8) -> str:
    return "\n".join(full(findings, FACTS, terminal))


def test_full() -> None:
    assert (
        shown(UNKNOWN)
        == """\
error unknown-value .................................... books/normal.cards:6:27
  No value `VGG` is declared.
    2 │ normal Before takeoff
    ⋮ │
    6 │     Airspeed ............ {VGG}
      │                           ▔▔▔▔▔
  help    Mend it.
  reason  A blank is no speed.
  source  common practice, no source
  see     books/normal.cards:11:3 `VG` is declared here.
   11 │   VG .................... 82 KIAS
      │   ▔▔▔▔▔▔▔▔▔
"""
    )


def test_full_in_ascii() -> None:
    lines = shown(finding("near-name", "ON é"), terminal=ASCII).splitlines()
    assert lines[4] == r"    8 |     \u71c3\u6599\u30dd\u30f3\u30d7 \u202e\x07 .......... ON \xe9"
    assert lines[5] == "      | " + " " * 57 + "^^^^^^^"
    assert all(line.isascii() for line in lines)


def test_marks_stand_below_wide_characters_and_tabs() -> None:
    lines = shown(finding("near-name", "ポンプ"), finding("near-name", "HELD")).splitlines()
    assert "    7 │     Brakes→ →   HELD" in lines
    assert "      │                 ▔▔▔▔" in lines
    assert "      │         ▔▔▔▔▔▔" in lines


def test_a_span_over_many_lines_is_shown_by_its_ends() -> None:
    start = TEXT.index("group")
    lines = shown(finding("near-name", Spot(SOURCE, start, TEXT.index("\n\nspeeds")))).splitlines()
    assert [line for line in lines if "│" in line] == [
        "    2 │ normal Before takeoff",
        "    ⋮ │",
        "    4 │   group Controls",
        "      │   ▔▔▔▔▔▔▔▔▔▔▔▔▔▔",
        "    ⋮ │",
        "    8 │     燃料ポンプ \\u202e\\x07 .......... ON é",
        "      │     ▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔",
    ]


def test_a_span_of_two_lines_that_takes_the_line_end_with_it() -> None:
    start = TEXT.index("  when")
    lines = shown(finding("near-name", Spot(SOURCE, start, TEXT.index("    Flight")))).splitlines()
    assert [line for line in lines if "│" in line][1:] == [
        "    3 │   when holding short",
        "      │ ▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔",
        "    4 │   group Controls",
        "      │   ▔▔▔▔▔▔▔▔▔▔▔▔▔▔",
    ]


def test_an_empty_file_and_a_place_behind_its_end() -> None:
    empty = SourceText("-", "")
    assert shown(finding("near-name", Spot(empty, 0, 0))).splitlines()[:3] == [
        "warning near-name " + "." * 56 + " -:1:1",
        "  It is so.",
        "  help    Mend it.",
    ]
    short = SourceText("-", "normal Taxi")
    assert "▔" in shown(finding("near-name", Spot(short, 11, 40)))


def test_a_long_place_has_a_line_of_its_own() -> None:
    source = SourceText("a/" * 40 + "b.cards", "x")
    assert shown(finding("near-name", Spot(source, 0, 1))).splitlines()[:2] == [
        "warning near-name ...",
        "  " + "a/" * 40 + "b.cards:1:1",
    ]


def test_many_places_are_all_named_but_only_the_first_are_shown() -> None:
    places = tuple(Related(Spot(SOURCE, n, n + 1), f"Place {n}.") for n in range(20))
    text = shown(Finding("near-name", spot("HELD"), "It is so.", "Mend it.", places))
    assert all(f"Place {n}." in text for n in range(20))
    assert text.count("▔\n") == 4 + 1


def test_what_a_rule_says_again_of_one_place_is_shorter() -> None:
    more = [finding("near-name", "HELD", f"It is {word}.") for word in ("so", "thus")]
    once = shown(finding("long-list", "HELD")) + "\n" + shown(more[0])
    assert shown(*more, finding("long-list", "HELD")) == once + (
        "\nwarning near-name ...................................... books/normal.cards:7:13\n"
        "  It is thus.\n"
        "  help    Mend it.\n"
    )


def test_reason_and_source_of_a_rule_stand_with_its_first_finding_only() -> None:
    found = [finding("near-name", "HELD"), UNKNOWN, finding("near-name", "ON é"), finding("near-name", "{VGG}")]
    lines = shown(*found).splitlines()
    assert [line for line in lines if line.startswith(("error", "warning", "  reason"))] == [
        "warning near-name ...................................... books/normal.cards:6:27",
        "  reason  Two names look like two things.",
        "error unknown-value .................................... books/normal.cards:6:27",
        "  reason  A blank is no speed.",
        "warning near-name ...................................... books/normal.cards:7:13",
        "warning near-name ...................................... books/normal.cards:8:25",
    ]
    assert sum(line.startswith("  source") for line in lines) == 2
    assert sum("▔" in line for line in lines) == 4 + 1, "the lines of every finding are shown, and of what it refers to"
    assert all(one["reason"] for one in json.loads(json_list(found, FACTS)))


def test_colour_is_only_paint() -> None:
    painted = shown(UNKNOWN, terminal=Terminal(colour=True))
    assert "\x1b[1;31merror\x1b[0m" in painted
    assert re.sub(r"\x1b\[[0-9;]*m", "", painted) == shown(UNKNOWN)


def test_brief() -> None:
    odd = finding("near-name", "HELD", "Two\nlines with \x07.")
    assert list(brief([odd, UNKNOWN], FACTS, UTF8)) == [
        "books/normal.cards:6:27: error unknown-value: No value `VGG` is declared.",
        "books/normal.cards:7:13: warning near-name: Two lines with \\x07.",
    ]


def test_json() -> None:
    assert json.loads(json_list([UNKNOWN], FACTS)) == [
        {
            "rule": "unknown-value",
            "severity": "error",
            "message": "No value `VGG` is declared.",
            "help": "Mend it.",
            "reason": "A blank is no speed.",
            "file": "books/normal.cards",
            "line": 6,
            "column": 27,
            "end_line": 6,
            "end_column": 32,
            "related": [
                {
                    "file": "books/normal.cards",
                    "line": 11,
                    "column": 3,
                    "end_line": 11,
                    "end_column": 12,
                    "message": "`VG` is declared here.",
                }
            ],
            "confidence": "high",
            "fix": None,
            "suppressed": None,
        }
    ]
    assert json_list([], FACTS) == "[]"


def test_json_counts_code_points_and_is_ascii() -> None:
    text = json_list([finding("near-name", "ON é")], FACTS)
    assert text.isascii()
    assert (json.loads(text)[0]["column"], json.loads(text)[0]["end_column"]) == (25, 29)


@pytest.mark.parametrize(
    ("rules", "said"),
    [
        ([], "no findings: 40 cards in 6 files"),
        (["unknown-value"], "1 error in 1 file"),
        (["near-name", "near-name"], "2 warnings in 1 file"),
        (["near-name", "unknown-value", "unknown-value"], "2 errors and 1 warning in 1 file"),
        (["near-name", "unknown-value", "long-list", "long-list"], "1 error, 1 warning and 2 notes in 1 file"),
    ],
)
def test_summary(rules: list[str], said: str) -> None:
    found = [finding(rule, Spot(SOURCE, n, n + 1)) for n, rule in enumerate(rules)]
    assert summary(found, FACTS, 40, 6) == said


def test_summary_counts_files_and_single_things() -> None:
    found = [finding("near-name", Spot(SourceText(name, "x"), 0, 1)) for name in ("a", "b")]
    assert summary(found, FACTS, 1, 2) == "2 warnings in 2 files"
    assert summary([], FACTS, 1, 1) == "no findings: 1 card in 1 file"


@given(st.text(max_size=200), st.data(), st.integers(40, 100), st.sampled_from(["utf-8", "ascii", "cp1252"]))
def test_no_line_is_wider_than_the_terminal(text: str, data: st.DataObject, width: int, encoding: str) -> None:
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, len(text)))
    source = SourceText("a.cards", text)
    found = Finding(
        "near-name", Spot(source, start, end), text, text, (Related(Spot(source, 0, len(text)), "Here too."),)
    )
    terminal = Terminal(width, False, encoding)
    for line in full([found], FACTS, terminal):
        line.encode(encoding)
        assert width_of(line, terminal) <= width + 1  # a mark may stand behind the last character of a full line
    list(brief([found], FACTS, terminal))
    json.loads(json_list([found], FACTS))
