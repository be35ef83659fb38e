"""Words and lines: what stays together, where lines break, and how they are set."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.cards import Phrase, Use
from dotleader.page.drawn import Font
from dotleader.page.type.breaking import (
    Line,
    balanced,
    broken,
    ending_before,
    in_two,
    length,
    line_width,
    room_of,
    set_line,
    without_orphan,
)
from dotleader.page.type.metrics import ems, width
from dotleader.page.type.words import plain_words, words_of

from .building import SPOT
from .strategies import SYMBOLS, words

TEXTS = st.lists(words, max_size=12).map(" ".join)
ROOMS = st.integers(1_000, 30_000)


def said(*lines: Line) -> list[str]:
    return [" ".join(word.text for word in line) for line in lines]


def regular(text: str) -> Line:
    return plain_words(text, Font.REGULAR)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("stop at 250 m above ground", ["stop", "at", "250 m", "above", "ground"]),
        ("hold 38 US gal, then go", ["hold", "38 US gal,", "then", "go"]),
        ("10 deg then 20 deg, below 5 degC", ["10 deg", "then", "20 deg,", "below", "5 degC"]),
        ("3 things", ["3", "things"]),
        ("a\u00a0b c", ["a b", "c"]),
        ("-2 A and 3-12", ["−2 A", "and", "3-12"]),
        ("", []),
    ],
)
def test_a_number_and_its_unit_are_one_word(text: str, words: list[str]) -> None:
    assert [word.text for word in regular(text)] == words


def test_what_a_reference_prints_stays_together() -> None:
    use = Use("Oil pressure green", "oil pressure", "55 to 95 psi", SPOT)
    phrase = Phrase(("outside ", use, ", taxi back"), SPOT)
    assert said(words_of(phrase, Font.REGULAR, frozenset())) == ["outside 55 to 95 psi, taxi back"]
    assert [word.text for word in words_of(phrase, Font.REGULAR, frozenset())][1] == "55 to 95 psi,"


@given(TEXTS, ROOMS)
def test_lines_keep_all_words_in_order_and_fit(text: str, room: int) -> None:
    words = plain_words(text, Font.BOLD, SYMBOLS)
    for lines in (broken(words, room), balanced(words, room), without_orphan(words, room)):
        assert "".join(said(*lines)).replace(" ", "") == "".join(said(words)).replace(" ", "")
        assert all(line_width(line) <= room for line in lines)
    assert len(balanced(words, room)) == len(broken(words, room))


@given(TEXTS, ROOMS, ROOMS)
def test_a_line_that_something_follows_leaves_room_for_it(text: str, room: int, last: int) -> None:
    words = plain_words(text, Font.BOLD, SYMBOLS)
    lines = ending_before(words, room, last)
    assert "".join(said(*lines)).replace(" ", "") == "".join(said(words)).replace(" ", "")
    assert all(line_width(line) <= room for line in lines)
    assert not lines or line_width(lines[-1]) <= last


def test_a_long_word_breaks_after_hyphens_first() -> None:
    lines = broken(regular("carburettor-air-temperature"), ems("carburettor-air-t", Font.REGULAR))
    assert said(*lines) == ["carburettor-air-", "temperature"]
    assert said(*broken(regular("x" * 10), ems("xxxx", Font.REGULAR))) == ["xxxx", "xxxx", "xx"]


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("the engine runs, at the latest down to", ["the engine runs,", "at the latest down to"]),
        ("Nav lights + Strobe lights", ["Nav lights +", "Strobe lights"]),
        ("it broke out while the starter was turning", ["it broke out while", "the starter was turning"]),
    ],
)
def test_two_lines_break_by_sense(text: str, lines: list[str]) -> None:
    assert said(*(in_two(regular(text), 15_000, 15_000) or ())) == lines


def test_no_word_stands_alone_on_the_last_line() -> None:
    text = regular("one two three four five")
    room = line_width(text) - 1
    assert said(*broken(text, room)) == ["one two three four", "five"]
    assert said(*without_orphan(text, room)) == ["one two three", "four five"]


@given(TEXTS, st.sampled_from([9_000, 12_000, 15_500]))
def test_a_set_line_is_as_wide_as_it_was_measured(text: str, size: int) -> None:
    words = plain_words(text, Font.REGULAR, SYMBOLS)
    texts = list(set_line(words, 5_000, 0, size))
    assert (
        "".join(one.string for one in texts).replace(" ", "") == text.replace(" ", "").replace("-2", "−2")
        or "-" in text
    )
    if texts:
        right = texts[-1].x + width(texts[-1].string, texts[-1].font, texts[-1].size)
        assert right == pytest.approx(5_000 + length(line_width(words), size), abs=3)


def test_fonts_and_subscripts_are_runs_of_their_own() -> None:
    line = plain_words("When", Font.BOLD) + plain_words("above VNE or VS0.", Font.REGULAR, SYMBOLS)
    runs = [(one.string, one.font, one.size) for one in set_line(line, 0, 0, 10_000)]
    assert runs == [
        ("When", Font.BOLD, 10_000),
        ("above V", Font.REGULAR, 10_000),
        ("NE", Font.REGULAR, 8_000),
        ("or V", Font.REGULAR, 10_000),
        ("S0", Font.REGULAR, 8_000),
        (".", Font.REGULAR, 10_000),
    ]


@given(st.integers(0, 10**6), st.integers(1_000, 40_000))
def test_what_fits_in_thousandths_fits_in_micrometres(micrometres: int, size: int) -> None:
    room = room_of(micrometres, size)
    assert room == 1 or length(room, size) <= micrometres
