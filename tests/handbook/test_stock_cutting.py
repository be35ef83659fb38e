"""Folded cards, cut lines, relief and holes in a flap of film: what is read, and what cannot be.

Outside checks: a hole of 6 mm whose film is to seal 3 mm around it needs 12 mm cut out of the paper (derived from what
makers of film ask for, at least 1/8 in of seal); a sheet of A5 folded once is A6 (ISO 216).
"""

from __future__ import annotations

import pytest

from dotleader.handbook.stocks.known import known_stock
from dotleader.handbook.stocks.making import made
from dotleader.handbook.stocks.measures import binding_margin, hole_strip, in_flap, open_size
from dotleader.handbook.stocks.sizes import SIZES
from dotleader.handbook.stocks.stock import Stock
from dotleader.handbook.stocks.thickness import hole_from_edge
from tests.handbook.stock_texts import block, only, read

POUCH = ("leaf .... 5.75 x 8.75 in", "pouch .... 6 x 9 in", "paper .... Letter")
FOUR = "holes .... 4, 40 mm apart, 6 mm wide, 12 mm from edge"
FLAP = ("leaf .... 130 x 200 mm", "pouch .... 154 x 216 mm", "paper .... A4")


def stock(*rows: str, name: str = "") -> Stock:
    outcome = read(block(*rows, name=name))
    assert outcome.findings == ()
    return outcome.value


def test_a_sheet_of_a5_folded_once_is_a6() -> None:
    found = stock(name="A5 folded to A6")
    assert found.folded
    assert (found.leaf, found.holes) == (SIZES["A6"], ())
    assert sorted(open_size(found)) == [148_000, 210_000]
    assert open_size(stock("bound at .... top", name="folded card, A6")) == (105_000, 296_000)
    assert open_size(stock(name="letter folded to half letter")) == (279_400, 215_900)
    assert open_size(stock(name="A5")) == SIZES["A5"]


def test_a_card_that_is_folded_takes_neither_holes_nor_film_from_the_stock_that_it_changes() -> None:
    found = stock("folded .... once", name="A6")
    assert (found.folded, found.holes, found.pouch) == (True, (), (0, 0))
    assert not stock("folded .... none", name="folded card, A6").folded
    assert stock("leaf .... 100 x 140 mm", "folded .... once", name="6 x 9 in pouch").pouch == (0, 0)


@pytest.mark.parametrize("lines", ["shared", "separate"])
def test_cut_lines_are_read(lines: str) -> None:
    assert stock(f"cut lines .... {lines}", name="A6").cut_lines == lines
    assert stock(name="A6").cut_lines == ""


def test_a_relief_of_3_mm_makes_a_hole_of_6_mm_one_of_12_mm_and_moves_what_is_printed() -> None:
    plain, wide = stock(*POUCH, FOUR), stock(*POUCH, FOUR, "relief .... 3 mm all round")
    assert wide.hole_diameter + 2 * wide.relief == 12_000
    assert (hole_from_edge(wide) - 6_000, hole_from_edge(wide) + 6_000) == (6_000, 18_000)
    assert hole_strip(wide) == hole_strip(plain) + 3_000 <= binding_margin(wide)
    assert stock(*POUCH, FOUR, "relief .... none").relief == 0


def test_holes_in_a_flap_of_film_leave_film_on_both_sides_of_them() -> None:
    found = stock(*FLAP, "holes .... 2, 80 mm apart, 6 mm wide, 6 mm from edge")
    assert in_flap(found)
    assert found.hole_edge == -6_000  # 3 mm of film to the leaf, 3 mm to the edge of the film
    assert hole_from_edge(found) == 6_000
    assert hole_strip(found) == 0  # nothing is punched into the leaf
    assert not in_flap(stock(*POUCH, FOUR))


@pytest.mark.parametrize(
    ("rows", "marked", "said"),
    [
        # 8.825 mm from the edge of the leaf, of which 3 are the hole and 1 is paper to be left: 4.825 mm of room.
        ((*POUCH, FOUR, "relief .... 5 mm"), "5 mm", "0.2 mm too little paper beside the edge of the leaf"),
        (
            (*POUCH, FOUR.replace("40", "12"), "relief .... 3 mm"),
            "3 mm",
            "0.5 mm too little paper beside the next hole",
        ),
        ((*POUCH, FOUR, "relief .... 200 mm"), "200 mm", "195.2 mm too little paper beside the edge of the leaf"),
        (("leaf .... A5", "relief .... 3 mm"), "3 mm", "There is no film to seal around wider holes"),
        ((*POUCH, "holes .... none", "relief .... 3 mm"), "3 mm", "There are no holes to be cut wider"),
        ((*FLAP, "holes .... 2, 80 mm apart, 6 mm from edge", "relief .... 3 mm"), "3 mm", "through film alone"),
        (
            (*FLAP, "holes .... 2, 80 mm apart, 8 mm from edge"),
            "2, 80 mm apart, 8 mm from edge",
            "2 mm of film are missing to seal it",
        ),
        (
            (*FLAP, "holes .... 2, 80 mm apart, 4 mm from edge"),
            "2, 80 mm apart, 4 mm from edge",
            "2 mm of it are missing",
        ),
        (
            (*FLAP, "holes .... 2, 80 mm apart, 14 mm from edge"),
            "2, 80 mm apart, 14 mm from edge",
            "1 mm beyond the edge",
        ),
        (
            ("leaf .... A6", "holes .... 2, 80 mm apart", "folded .... once"),
            "2, 80 mm apart",
            "has its fold at the left",
        ),
        (("leaf .... A6", "folded .... once", "seal .... 4 mm"), "4 mm", "A card in film does not fold"),
        (("leaf .... A4", "folded .... once", "paper .... A4"), "A4", "The open card is 123 mm larger than the paper"),
        (("leaf .... A6", "folded .... once", "rings .... 2, 25 mm"), "2, 25 mm", "no holes for them"),
        (
            ("leaf .... A4", "cut lines .... separate"),
            "separate",
            "The leaf with its bleed is 6 mm larger than the paper",
        ),
        (
            ("leaf .... 148.5 x 205 mm", "cut lines .... separate", "paper .... A5"),
            "148.5 x 205 mm",
            "The leaf is 0.5 mm larger than the paper",
        ),
        (
            ("leaf .... A5", "folded .... once", "paper .... A4", "cut lines .... separate"),
            "separate",
            "The open card with its bleed is 6 mm larger",
        ),
    ],
)
def test_what_cannot_be_is_said_with_its_millimetres(rows: tuple[str, ...], marked: str, said: str) -> None:
    outcome = read(block(*rows))
    finding = only(outcome)
    assert (finding.rule, finding.spot.text) == ("impossible-stock", marked)
    assert said in finding.message
    assert finding.help


def test_relief_helps_with_the_most_that_there_is_room_for() -> None:
    finding = only(read(block(*POUCH, FOUR, "relief .... 5 mm")))
    assert "`4.8 mm` is the most" in finding.help
    assert read(block(*POUCH, FOUR, "relief .... 4.8 mm")).findings == ()


def test_a_narrow_relief_is_doubted_and_taken() -> None:
    outcome = read(block(*POUCH, FOUR, "relief .... 2 mm"))
    finding = only(outcome)
    assert (finding.rule, finding.spot.text) == ("narrow-seal", "2 mm")
    assert "1.2 mm less than 1/8 in" in finding.message
    assert outcome.value.relief == 2_000


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("folded .... twice", "`twice` is no way to fold a card here"),
        ("cut lines .... dotted", "`dotted` is no way to lay out what is cut"),
        ("cut lines .... none", "`none` is no way to lay out what is cut"),
        ("relief .... wide", "`wide`"),
        ("relief .... 3", "has no unit"),
    ],
)
def test_what_cannot_be_read_is_said_with_a_line_that_can(row: str, said: str) -> None:
    finding = only(read(block(row, name="6 x 9 in pouch")))
    assert finding.rule == "unreadable-value"
    assert said in finding.message
    assert f"{row.partition(' ....')[0]} .... " in finding.help


def test_the_names_that_people_know_a_stock_by() -> None:
    for name, leaf in (
        ("5.75 x 8.75 in leaf in 6 x 9 in pouch", (146_050, 222_250)),
        ("kneeboard width", (139_700, 215_900)),
        ("top-bound card", (148_000, 210_000)),
        ("single folded card", (105_000, 148_000)),
        ("half letter folded to quarter letter", (107_950, 139_700)),
        ("half letter three holes", (139_700, 215_900)),
        ("A5 six rings", (148_000, 210_000)),
    ):
        assert stock(name=name).leaf == leaf
    assert made(known_stock("top-bound card"), "", None).bound_at == "top"
