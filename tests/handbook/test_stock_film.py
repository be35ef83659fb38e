"""Seal, film, corners, rings and the thickness of a pile.

Outside checks: the pouches and thicknesses of film makers' tables (1/8 in of seal on every side; a 5 mil pouch on 4 mil
paper is 14 mil thick, a 10 mil one 24 mil), and a ream of American bond paper (500 sheets of 17 x 22 in).
"""

from __future__ import annotations

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.measures import OUTER_MARGIN, seals
from dotleader.handbook.stocks.reading import Unread, weight_of
from dotleader.handbook.stocks.stock import Stock
from dotleader.handbook.stocks.thickness import (
    hole_from_edge,
    narrowest_ring,
    overfull,
    ring_capacity,
    stack_thickness,
)
from tests.handbook.stock_texts import block, only, read

POUCH = ("leaf .... 5.75 x 8.75 in", "pouch .... 6 x 9 in", "paper .... Letter")


def stock(*rows: str) -> Stock:
    outcome = read(block(*rows))
    assert outcome.findings == ()
    return outcome.value


def test_an_eighth_of_an_inch_is_enough() -> None:
    assert seals(stock(*POUCH)) == (3_175, 3_175)


def test_a_seal_says_how_large_the_pouch_is() -> None:
    found = stock("leaf .... 5.75 x 8.75 in", "seal .... 1/8 in", "paper .... Letter")
    assert found.pouch == (152_400, 228_600)
    assert stock(*POUCH, "seal .... 1/8 in").pouch == found.pouch
    assert stock("leaf .... A5", "seal .... none").pouch == (0, 0)


def test_a_pouch_in_whole_millimetres_is_doubted_and_taken() -> None:
    outcome = read(block("leaf .... A5", "pouch .... 154 x 216 mm"))
    finding = only(outcome)
    assert (finding.rule, finding.spot.text) == ("narrow-seal", "154 x 216 mm")
    assert "0.2 mm less than 1/8 in" in finding.message
    assert outcome.value.pouch == (154_000, 216_000)


@pytest.mark.parametrize(
    ("rows", "marked", "said"),
    [
        (("leaf .... A5", "pouch .... 152 x 216 mm"), "152 x 216 mm", "2 mm wide, 1.2 mm less than the 1/8 in"),
        (("leaf .... A5", "seal .... 1 mm"), "1 mm", "1 mm wide, 2.2 mm less than the 1/8 in"),
        ((*POUCH, "seal .... 5 mm"), "5 mm", "3.2 mm, 1.9 mm less than is written here"),
        ((*POUCH, "seal .... 3.1 mm"), "3.1 mm", "3.2 mm, 0.1 mm more than is written here"),
        (("leaf .... A5", "film .... 5 mil"), "5 mil", "no pouch"),
        ((*POUCH, "film .... 5 mm"), "5 mm", "Film of 5 mm is 4 mm thicker"),
        (("paper thickness .... 3 mm",), "3 mm", "Paper of 3 mm is 2 mm thicker"),
        # The most is seal and margin: 3.175 + 14 mm.
        ((*POUCH, "corners .... 18 mm"), "18 mm", "0.9 mm larger than a seal of 3.2 mm and a margin of 14 mm"),
        (("leaf .... A5", "corners .... 15 mm"), "15 mm", "1 mm larger than a margin of 14 mm"),
        (("rings .... 2, 10 mm",), "2, 10 mm", "2.1 mm too narrow to close around the 12 mm"),
        (("rings .... 3, 25 mm",), "3, 25 mm", "3 rings, and no more than 2 holes"),
        (("holes .... none", "rings .... 3, 25 mm"), "3, 25 mm", "no holes for them"),
        (
            ("leaf .... A5", "seal .... 5 mm", "holes .... 2, 80 mm apart, 8 mm wide, 2 mm from edge"),
            "2, 80 mm apart, 8 mm wide, 2 mm from edge",
            "2 mm beyond the edge of the film",
        ),
        (
            ("leaf .... A5", "seal .... 5 mm", "holes .... 2, 80 mm apart, 6 mm wide, 6 mm from edge"),
            "2, 80 mm apart, 6 mm wide, 6 mm from edge",
            "2 mm beyond the edge of the leaf, into the seal",
        ),
        (
            ("leaf .... A5", "seal .... 5 mm", "holes .... 4, 80 mm apart"),
            "4, 80 mm apart",
            "18 mm beyond the ends of the leaf's edge, which is 210 mm long, and 13 mm beyond the film",
        ),
    ],
)
def test_what_cannot_be_is_said_with_its_millimetres(rows: tuple[str, ...], marked: str, said: str) -> None:
    outcome = read(block(*rows))
    finding = only(outcome)
    assert (finding.rule, finding.spot.text) == ("impossible-stock", marked)
    assert said in finding.message
    assert list(amiss(outcome.value)) == []


def test_a_pouch_that_lies_across_is_told_from_one_that_is_too_small() -> None:
    finding = only(read(block("leaf .... 5.75 x 8.75 in", "pouch .... 9 x 6 in", "paper .... Letter")))
    assert "69.9 mm smaller" in finding.message
    assert "width first" in finding.help


def test_a_pouch_is_found_at_fault_where_its_leaf_was_changed() -> None:
    finding = only(read(block("leaf .... 149 x 224 mm", name="6 x 9 in pouch")))
    assert finding.spot.text == "149 x 224 mm"
    assert "1.7 mm wide" in finding.message


def test_a_pouch_that_is_said_anew_takes_the_place_of_a_seal() -> None:
    assert read(block("pouch .... none", name="6 x 9 in pouch")).value.film == 0
    assert read(block("seal .... 5 mm", name="6 x 9 in pouch")).value.pouch == (156_050, 232_250)


def test_the_rounded_corner_of_the_film_leaves_the_seal_around_the_corner_of_the_leaf() -> None:
    """Both are cut to one radius: along the diagonal the film is wider than along the sides, whatever the radius."""
    found = stock(*POUCH, "corners .... 17 mm")
    seal, radius = min(seals(found)), found.corner_radius
    middle_of_leaf, middle_of_film = seal + radius, radius
    film = hypot(middle_of_film, middle_of_film) - radius
    leaf = hypot(middle_of_leaf, middle_of_leaf) - radius
    assert leaf - film > seal
    assert radius < seal + OUTER_MARGIN


@pytest.mark.parametrize(
    ("film", "paper", "thick"),
    # A film maker's table: 5 mil and 10 mil pouches on 4 mil paper are 14 and 24 mil; 3 mil ones 10 mil.
    [("5 mil", "4 mil", 356), ("10 mil", "4 mil", 610), ("3 mil", "4 mil", 254), ("125 micron", "0.1 mm", 350)],
)
def test_a_leaf_is_as_thick_as_paper_and_film_on_both_sides(film: str, paper: str, thick: int) -> None:
    found = stock(*POUCH, f"film .... {film}", f"paper thickness .... {paper}")
    assert stack_thickness(found, 1) == thick
    assert stack_thickness(found, 20) == 20 * thick


def test_without_a_word_the_film_is_five_mil_and_the_paper_four() -> None:
    assert (stock(*POUCH).film, stock(*POUCH).paper_thickness) == (127, 102)
    assert stack_thickness(stock("leaf .... A5"), 10) == 1_020
    assert stock(*POUCH, "film .... 5 mil per side").film == 127


@pytest.mark.parametrize(
    ("text", "thick"),
    # 500 sheets of 17 x 22 in (bond), 25 x 38 in (text), 20 x 26 in (cover) weigh the pounds: 75.2, 148 and 176 g/m2.
    [("20 lb bond", 102), ("100 lb text", 201), ("65 lb cover", 239), ("75.2 g/m2", 102), ("80 gsm", 109)],
)
def test_a_weight_lets_a_thickness_be_expected(text: str, thick: int) -> None:
    assert weight_of(text) == thick


def test_the_thickness_goes_before_the_weight_in_either_order() -> None:
    rows = ("paper thickness .... 0.2 mm", "paper weight .... 120 g/m2")
    assert stock(*rows).paper_thickness == stock(*reversed(rows)).paper_thickness == 200


def test_rings_hold_what_lies_in_a_circle_with_a_fifth_to_spare() -> None:
    found = stock("holes .... 2, 80 mm apart, 6 mm wide, 12 mm from edge", "rings .... 20 mm")
    assert found.rings == 2
    assert ring_capacity(found) == 12_800  # 4/5 of 16 mm: 12, 16 and 20 are the sides of a right-angled triangle
    assert overfull(found, 12_800 // 102) is None
    said = overfull(found, 150)
    assert said is not None
    assert said.message.startswith("150 leaves are 15.3 mm thick, 2.5 mm more than rings of 20 mm hold")
    assert said.help == "Take rings of 22.6 mm or more, or divide the book: these hold 125 leaves."
    assert overfull(stock("leaf .... A5"), 10_000) is None


def test_in_film_the_ring_reaches_around_the_edge_of_the_film() -> None:
    found = stock(*POUCH, "holes .... 2, 80 mm apart, 6 mm wide, 12 mm from edge", "rings .... 20 mm")
    assert hole_from_edge(found) == 12_000
    assert ring_capacity(found) == 12_800


@given(st.integers(1, 400), st.integers(13_000, 80_000))
def test_rings_as_wide_as_they_are_said_to_be_needed_are_wide_enough(leaves: int, width: int) -> None:
    found = stock("leaf .... A5", f"rings .... {width / 1000} mm")
    needed = narrowest_ring(found, stack_thickness(found, leaves))
    wide = stock("leaf .... A5", f"rings .... {needed / 1000} mm")
    assert overfull(wide, leaves) is None
    assert (overfull(found, leaves) is not None) == (stack_thickness(found, leaves) > ring_capacity(found))


@given(st.text(max_size=30))
def test_no_weight_raises(text: str) -> None:
    found = weight_of(" ".join(text.split()))
    assert isinstance(found, Unread) or 0 < found < 2_000
