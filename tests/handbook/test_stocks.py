"""Stocks: what is read, what stands in where nothing is written, and what cannot be made.

Outside checks, each named beside its test: ISO 216 (paper sizes), ISO 838 (two holes), the spacing of holes on
American papers, and 1 in = 25.4 mm exactly (NIST SP 811). The library and what is new in it: `test_stock_library.py`;
seals, corners, rings and thickness: `test_stock_film.py`.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.hole_rows import holes_of
from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.measures import binding_margin, fills, hole_strip, text_width
from dotleader.handbook.stocks.read import read_stock
from dotleader.handbook.stocks.reading import length_of, paper_of, size_of
from dotleader.handbook.stocks.rows import SAMPLES
from dotleader.handbook.stocks.sizes import SIZES, micrometres
from dotleader.page.imposition import imposition
from dotleader.source.text import SourceText, Spot
from tests.handbook.stock_texts import block, only, read

SAMPLE = """\
stock
  leaf .................. 5.75 x 8.75 in
  pouch ................. 6 x 9 in
  corners ............... 6 mm
  holes ................. 4, 40 mm apart, 6 mm wide, 12 mm from edge
  bound at .............. left
  paper ................. Letter
  read at ............... 600 mm
"""


def test_the_sample_is_read_to_the_micrometre() -> None:
    outcome = read(SAMPLE)
    stock = outcome.value
    assert outcome.findings == ()
    assert stock.leaf == (146_050, 222_250)  # 1 in = 25.4 mm exactly (NIST SP 811)
    assert stock.pouch == (152_400, 228_600)
    assert stock.corner_radius == 6_000
    assert stock.paper == (215_900, 279_400)
    assert stock.paper_name == "Letter"
    assert stock.reading_distance == 600_000
    assert stock.bound_at == "left"


def test_holes_are_counted_from_the_edge_of_the_pouch() -> None:
    stock = read(SAMPLE).value
    assert stock.hole_edge == 12_000 - 3_175  # the seal is half of 6 - 5.75 in
    assert stock.holes == (51_125, 91_125, 131_125, 171_125)
    assert sum(stock.holes) == 4 * 222_250 // 2  # symmetrical about the middle
    assert hole_strip(stock) == 8_825 + 3_000 + 1_000 + 1_000
    assert binding_margin(stock) == 18_000


def test_without_a_block_the_leaf_is_a5_with_two_holes_on_a4() -> None:
    stock = read_stock(None, SourceText("-", ""), "").value
    assert stock.leaf == (148_000, 210_000)  # ISO 216
    assert stock.paper == (210_000, 297_000)
    assert stock.holes == (65_000, 145_000)  # ISO 838: 80 mm apart, symmetrical about the sheet's axis
    assert stock.hole_diameter == 6_000
    assert stock.hole_edge == 12_000
    assert stock.spot is None


def test_american_paper_brings_half_letter_with_three_holes() -> None:
    stock = read_stock(None, SourceText("-", ""), "Letter").value
    assert stock.leaf == (139_700, 215_900)
    # US three-hole on half letter: 1.50, 4.25 and 7.00 in along the edge, 2.75 in = 69.85 mm apart.
    assert stock.holes == (38_100, 107_950, 177_800)
    assert stock.hole_edge == 12_700
    assert read(block("paper .... Letter")).value.holes == stock.holes


def test_letter_has_its_holes_four_and_a_quarter_inches_apart() -> None:
    # US three-hole on letter: 1.25, 5.50 and 9.75 in along the edge, 4.25 in = 107.95 mm apart.
    assert read("stock letter\n").value.holes == (31_750, 139_700, 247_650)


@pytest.mark.parametrize(
    ("name", "size"),
    # ISO 216, main series A, in millimetres.
    [("A3", (297, 420)), ("A4", (210, 297)), ("A5", (148, 210)), ("A6", (105, 148)), ("A7", (74, 105))],
)
def test_sizes_are_those_of_iso_216(name: str, size: tuple[int, int]) -> None:
    assert SIZES[name] == (size[0] * 1000, size[1] * 1000)


@pytest.mark.parametrize("name", STOCK_NAMES)
def test_every_stock_that_has_a_name_can_be_made(name: str) -> None:
    outcome = read(f"stock {name}\n")
    assert outcome.findings == ()
    assert list(amiss(outcome.value)) == []
    assert outcome.value.name == name


@pytest.mark.parametrize("name", ["a5", "Half  Letter three holes", "A6, TWO HOLES"])
def test_names_of_stocks_are_matched_without_case_spaces_and_commas(name: str) -> None:
    assert read(f"stock {name}\n").findings == ()


def test_an_unknown_name_offers_the_known_ones() -> None:
    finding = only(read("stock half leter\n"))
    assert finding.rule == "unknown-stock"
    assert finding.spot.text == "half leter"
    assert "`half letter`" in finding.help


def test_a_name_of_ones_own_with_a_body_is_no_finding() -> None:
    outcome = read("stock Kneeboard\n  leaf .... A5\n")
    assert outcome.findings == ()
    assert outcome.value.name == "Kneeboard"


def test_a_known_stock_can_be_changed_below_its_name() -> None:
    stock = read("stock A6\n  corners .... 1/4 in\n").value
    assert stock.leaf == SIZES["A6"]
    assert stock.corner_radius == 6_350


def test_what_the_block_says_of_its_paper_goes_before_the_handbook() -> None:
    assert read(block("leaf .... A5", "paper .... A4"), "Letter").value.paper_name == "A4"
    assert read(block("leaf .... A5"), "Letter").value.paper_name == "Letter"


def test_a_paper_without_a_name_is_a_finding_where_the_handbook_says_it() -> None:
    source = SourceText("book.cards", "handbook A\n  paper .... Foolscap\n")
    place = Spot(source, source.text.index("Foolscap"), len(source.text) - 1)
    finding = only(read_stock(None, source, "Foolscap", place))
    assert (finding.rule, finding.spot.text) == ("unreadable-value", "Foolscap")


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("5.75 x 8.75 in", (146_050, 222_250)),
        ("148 mm x 210 mm", (148_000, 210_000)),
        ("14.8 by 21 cm", (148_000, 210_000)),
        ("148×210mm", (148_000, 210_000)),
        ("5 3/4 x 8 3/4 in", (146_050, 222_250)),
        ("6 in x 228.6 mm", (152_400, 228_600)),
        ("half letter", (139_700, 215_900)),
    ],
)
def test_sizes_in_the_forms_that_people_write(text: str, size: tuple[int, int]) -> None:
    assert size_of(text) == size


@given(st.fractions(Fraction(1, 1000), 500, max_denominator=1000))
def test_a_length_is_rounded_once_to_whole_micrometres(length: Fraction) -> None:
    assert abs(micrometres(length) - length) <= Fraction(1, 2)


@given(st.text(max_size=40))
def test_no_text_raises(text: str) -> None:
    line = " ".join(text.split())
    for read_one in (size_of, length_of, paper_of, holes_of):
        read_one(line)


@given(st.sampled_from(list(SAMPLES)), st.text(st.characters(exclude_categories=["C", "Z"]), max_size=20))
def test_whatever_stands_after_a_property_a_stock_comes_out_that_can_be_made(name: str, text: str) -> None:
    outcome = read(block(f"{name} .... {text}"))
    assert list(amiss(outcome.value)) == []


@pytest.mark.parametrize(
    ("row", "rule", "marked", "said"),
    [
        ("leef .... A5", "unknown-property", "leef", "`leaf`"),
        ("leaf .... A5 portrait", "unreadable-value", "A5 portrait", "5.75 x 8.75 in"),
        ("leaf .... 148 x 210", "unreadable-value", "148 x 210", "`mm`, `cm` or `in`"),
        ("leaf .... 14,8 x 21 cm", "unreadable-value", "14,8 x 21 cm", "`14.8`"),
        ("leaf .... 0 x 210 mm", "unreadable-value", "0 x 210 mm", "5.75 x 8.75 in"),
        ("leaf .... -148 x 210 mm", "unreadable-value", "-148 x 210 mm", "5.75 x 8.75 in"),
        ("leaf .... 148 x 210 furlongs", "unreadable-value", "148 x 210 furlongs", "`mm`, `cm` or `in`"),
        ("leaf .... {A5}", "unreadable-value", "{A5}", "5.75 x 8.75 in"),
        ("holes .... some", "unreadable-value", "some", "4, 40 mm apart"),
        ("holes .... 4", "unreadable-value", "4", "40 mm apart"),
        ("holes .... 2, 80 mm asunder", "unreadable-value", "2, 80 mm asunder", "40 mm apart"),
        ("holes .... at 20, 10 mm", "unreadable-value", "at 20, 10 mm", "from one end"),
        ("holes .... at 38,1 mm, 177,8 mm", "unreadable-value", "at 38,1 mm, 177,8 mm", "from one end"),
        ("holes .... at 20, 30 mm, 10 mm apart", "unreadable-value", "at 20, 30 mm, 10 mm apart", "one of the two"),
        ("holes .... 4, 19 + 19 mm apart", "unreadable-value", "4, 19 + 19 mm apart", "40 mm apart"),
        ("holes .... 2, 80 mm apart, 70 mm apart", "unreadable-value", "2, 80 mm apart, 70 mm apart", "40 mm apart"),
        ("rings .... many, 25 mm", "unreadable-value", "many, 25 mm", "3, 25 mm"),
        ("paper weight .... 20 lb", "unreadable-value", "20 lb", "`lb bond`"),
        ("paper weight .... heavy", "unreadable-value", "heavy", "120 g/m2"),
        ("paper weight .... 8000 g/m2", "unreadable-value", "8000 g/m2", "120 g/m2"),
        ("film .... 5 thou", "unreadable-value", "5 thou", "`mil` or `micron`"),
        ("seel .... 4 mm", "unknown-property", "seel", "`seal`"),
        ("papper weight .... 80 g/m2", "unknown-property", "papper weight", "`paper weight`"),
        ("bound at .... right", "unreadable-value", "right", "`left` or `top`"),
        ("paper .... Foolscap", "unreadable-value", "Foolscap", "`A4`"),
        ("read at .... arm's length", "unreadable-value", "arm's length", "600 mm"),
    ],
)
def test_a_row_that_cannot_be_read_is_said_once_on_its_place(row: str, rule: str, marked: str, said: str) -> None:
    finding = only(read(block(row)))
    assert (finding.rule, finding.spot.text) == (rule, marked)
    assert said in finding.help


def test_a_property_given_twice_is_said() -> None:
    finding = only(read(block("leaf .... A5", "leaf .... A6")))
    assert finding.rule == "name-used-twice"
    assert finding.related[0].spot.text == "leaf"


@pytest.mark.parametrize(
    ("rows", "marked", "said"),
    [
        (("leaf .... 300 x 400 mm", "paper .... A4"), "300 x 400 mm", "103 mm larger than the paper (A4)"),
        (("leaf .... 200 x 290 mm",), "200 x 290 mm", "20 mm of paper (A4) are missing for the crop marks"),
        (("leaf .... 6 m x 9 mm",), "6 m x 9 mm", "no unit of length"),
        (("leaf .... 60 x 100 mm", "holes .... none"), "60 x 100 mm", "22 mm too narrow"),
        (("leaf .... 130 x 80 mm", "holes .... none"), "130 x 80 mm", "10 mm too low"),
        (("leaf .... 5.75 x 8.75 in", "pouch .... 5.5 x 9 in"), "5.5 x 9 in", "6.4 mm smaller than the leaf"),
        (("leaf .... A5", "pouch .... A5"), "A5", "no larger than the leaf"),
        # Four holes 80 mm apart on the long edge of A5 would stand at -15 and 225 mm.
        (("holes .... 4, 80 mm apart",), "4, 80 mm apart", "18 mm beyond the ends"),
        (("holes .... at 1, 145 mm",), "at 1, 145 mm", "2 mm beyond the ends"),
        (("holes .... 2, 80 mm apart, 6 mm wide, 2 mm from edge",), None, "1 mm beyond the edge of the leaf"),
        (("holes .... 9, 5 mm apart",), "9, 5 mm apart", "run into one another"),
        # From the corner's middle to the hole's, sqrt(9^2 + 9^2) = 12.728 mm; with its radius 1.728 mm beyond 14 mm.
        (
            ("corners .... 14 mm", "holes .... 3, 100 mm apart, 6 mm wide, 5 mm from edge"),
            "3, 100 mm apart, 6 mm wide, 5 mm from edge",
            "1.8 mm into the rounded corners",
        ),
        (("corners .... 80 mm",), "80 mm", "12 mm wider than the leaf"),
        (("read at .... 60 mm",), "60 mm", "190 mm too near"),
        (("read at .... 6000 mm",), "6000 mm", "4500 mm too far"),
        (("leaf .... 5 x 9000 mm",), "5 x 9000 mm", "8500 mm larger than any that is bound"),
        (("leaf .... 206 x 290 mm",), "206 x 290 mm", "with its bleed is 2 mm larger than the paper (A4)"),
        (
            ("leaf .... A4", "printable margin .... 7.5 mm"),
            "7.5 mm",
            "1.5 mm of what stands at its foot would be missing",
        ),
        (("printable margin .... 60 mm",), "60 mm", "45 mm more than any printer leaves"),
        (("leaf .... 185 x 270 mm", "printable margin .... 5 mm"), "185 x 270 mm", "2 mm of paper (A4) are missing"),
    ],
)
def test_a_stock_that_cannot_be_is_said_with_its_millimetres(
    rows: tuple[str, ...], marked: str | None, said: str
) -> None:
    outcome = read(block(*rows))
    finding = only(outcome)
    assert said in finding.message
    assert marked is None or finding.spot.text == marked
    assert list(amiss(outcome.value)) == []


def test_holes_in_a_pouch_are_held_against_the_leaf() -> None:
    rows = ("leaf .... A5", "pouch .... 158 x 220 mm", "holes .... 2, 80 mm apart, 6 mm wide, 7 mm from edge")
    finding = only(read(block(*rows)))
    assert finding.rule == "impossible-stock"
    assert "1 mm beyond the edge of the leaf" in finding.message
    assert "counted from the edge of the pouch" in finding.help


def test_a_leaf_that_fills_its_paper_needs_no_crop_marks() -> None:
    assert read(block("leaf .... A4", "paper .... A4")).findings == ()
    assert fills(148_000, 297_000) == 2  # A5 on A4 leaves 1 mm, within the tolerance of ISO 216
    assert fills(139_700, 279_400) == 2
    assert fills(140_500, 279_400) == 0
    assert fills(0, 297_000) == 0


def test_a_printer_that_leaves_less_white_takes_a_larger_leaf() -> None:
    stock = read(block("leaf .... 185 x 270 mm", "printable margin .... 4 mm")).value
    assert stock.leaf == (185_000, 270_000)
    assert len(imposition(stock).slots) == 1


def test_where_the_printer_would_leave_out_the_foot_of_a_leaf_leaves_do_not_fill_the_paper() -> None:
    for margin, filling, count in (("6 mm", True, 2), ("6.1 mm", False, 1)):
        laid = imposition(read(block("leaf .... A5", f"printable margin .... {margin}")).value)
        assert (laid.filling, len(laid.slots)) == (filling, count)


def test_a_strip_of_large_holes_takes_more_than_the_usual_margin() -> None:
    stock = read(block("holes .... 2, 80 mm apart, 8 mm wide, 15 mm from edge")).value
    assert binding_margin(stock) == 15_000 + 4_000 + 1_000 + 1_000
    assert text_width(stock) == 148_000 - 21_000 - 14_000


def test_bound_at_the_top_the_holes_stand_along_the_width() -> None:
    stock = read(block("leaf .... A5", "bound at .... top", "holes .... 2, 80 mm apart")).value
    assert stock.holes == (34_000, 114_000)  # ISO 838 on the short edge of A5
    assert text_width(stock) == 148_000 - 2 * 14_000
