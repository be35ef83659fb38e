"""What is said of words that are no lengths, of fractions of one sign, and of holes that are out both ways."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.stocks.hole_rows import holes_of
from dotleader.handbook.stocks.reading import Unread, length_of, size_of
from dotleader.handbook.stocks.thickness import overfull
from dotleader.source.record import replace
from tests.handbook.stock_texts import block, only, read


@pytest.mark.parametrize(
    ("written", "plain"),
    [
        ("8 ½ in", "8.5 in"),
        ("8½ in", "8.5 in"),
        ("½ in", "0.5 in"),
        ("⅛ in", "1/8 in"),
        ("8 1⁄2 in", "8 1/2 in"),  # with the stroke of fractions
        ("5¾ in", "5.75 in"),
        ("½ in", "12.7 mm"),  # 1 in = 25.4 mm exactly (NIST SP 811)
    ],
)
def test_a_fraction_of_one_sign_is_read_as_it_looks(written: str, plain: str) -> None:
    assert length_of(written) == length_of(plain)


def test_letter_in_fractions_is_letter() -> None:
    assert size_of("8 ½ x 11 in") == size_of("Letter")
    assert read(block("leaf .... 5 ½ x 8 ½ in", "paper .... Letter")).value.leaf == (139_700, 215_900)


@given(st.text("0123456789½¼⅛ ./⁄", max_size=8))
def test_a_fraction_never_joins_the_number_before_it(text: str) -> None:
    """`8½` is eight and a half, not 81/2."""
    found = length_of(text + " in")
    if not isinstance(found, Unread) and "½" in text:
        before = text.partition("½")[0].strip()
        assert found == length_of(f"{int(before or 0) * 2 + 1}/2 in")


@pytest.mark.parametrize("row", ["rings .... two", "corners .... round", "read at .... far", "seal .... mm"])
def test_words_are_no_length(row: str) -> None:
    finding = only(read(block("leaf .... A5", row)))
    word = row.partition(" .... ")[2]
    assert (finding.rule, finding.message) == ("unreadable-value", f"`{word}` is no length.")
    assert f"Write it like `{row.partition(' .... ')[0]} .... " in finding.help


@pytest.mark.parametrize(
    ("twice", "said"),
    [
        ("6 mm wide, 7 mm wide", "It is said twice how wide the holes are."),
        ("12 mm from edge, 11 mm from the edge", "It is said twice how far from the edge the holes are."),
        ("80 mm apart", "It is said twice how far apart the holes are."),
    ],
)
def test_what_is_said_twice_of_holes(twice: str, said: str) -> None:
    assert holes_of(f"2, 80 mm apart, {twice}") == Unread(said)


def test_holes_that_are_out_both_ways_are_found_out_both_ways() -> None:
    """One fault that is mended would else uncover the next."""
    outcome = read(block("leaf .... A5", "holes .... 4, 80 mm apart, 6 mm wide, 1 mm from edge"))
    edge, ends = (finding.message for finding in outcome.findings)
    assert edge == "The holes reach 2 mm beyond the edge of the leaf."
    assert ends.startswith("The outermost holes reach 18 mm beyond the ends of the leaf's edge")


def test_rings_that_are_too_narrow_for_a_pile_have_their_place_and_are_told_from_what_is_needed() -> None:
    stock = read(block("leaf .... A5", "holes .... 2, 80 mm apart", "rings .... 2, 12.06 mm")).value
    assert stock.rings_spot is not None
    assert stock.rings_spot.text == "2, 12.06 mm"
    assert read(block("leaf .... A5")).value.rings_spot is None
    said = overfull(replace(stock, paper_thickness=2_000), 1)
    assert said is not None
    assert said.message.startswith("1 leaf is 2 mm thick, ")
    assert "rings of 12.06 mm hold" in said.message
    two = overfull(replace(stock, paper_thickness=900), 2)
    assert two is not None
    assert two.message.startswith("2 leaves are 1.8 mm thick, ")
    assert two.help.endswith("these hold 1 leaf.")
