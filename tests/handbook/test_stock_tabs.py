"""What a stock says of tabs and dividers, and tabs that cannot be cut: by how many millimetres."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.measures import LEAST_TAB_INK, LEAST_TEXT_WIDTH, text_width
from dotleader.handbook.stocks.sizes import SIZES
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.face.thumb_index import SLOTS, slot_span
from dotleader.page.imposition import lost_at_outer_edge
from tests.handbook.stock_texts import block, only, read
from tests.page.leaves import stocks
from tests.page.tabbed import with_tabs


@pytest.mark.parametrize(
    ("row", "tabs", "recess"),
    [
        ("printed", "printed", 0),
        ("none", "none", 0),
        ("cut", "cut", 6_000),
        ("Cut, 8 mm deep", "cut", 8_000),
        ("cut, 3/8 in", "cut", 9_525),
        ("cut,8 mm deep", "cut", 8_000),
    ],
)
def test_tabs_are_printed_cut_or_none(row: str, tabs: str, recess: int) -> None:
    outcome = read(block(f"tabs .... {row}", name="A5"))
    assert outcome.findings == ()
    assert (outcome.value.tabs, outcome.value.recess, outcome.value.leaf) == (tabs, recess, (148_000, 210_000))


def test_without_a_word_tabs_are_printed_and_there_are_no_dividers() -> None:
    stock = read(block(name="A5")).value
    assert (stock.tabs, stock.recess, stock.dividers) == ("printed", 0, False)
    assert read(block("dividers .... yes", name="A5")).value.dividers
    assert not read(block("dividers .... no", name="A5")).value.dividers


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("tabs .... glued", "`glued` is no kind of tabs."),
        ("tabs .... printed, 8 mm", "`printed, 8 mm` is no kind of tabs."),
        ("tabs .... cut, 8", "`8` has no unit."),
        ("tabs .... cut, deep", "`deep` is no length."),
        ("tabs .... cut,", "does not say how deep the tabs are"),
        ("tabs .... cut, -8 mm deep", "not above zero"),
        ("dividers .... maybe", "`maybe` does not say whether there are dividers."),
    ],
)
def test_what_cannot_be_read_says_so_with_a_line_that_is_right(row: str, said: str) -> None:
    finding = only(read(block(row, name="A5")))
    assert finding.rule == "unreadable-value"
    assert said in finding.message
    assert "Write it like" in finding.help


@pytest.mark.parametrize(
    ("rows", "marked", "said"),
    [
        (("tabs .... cut, 2 mm deep",), "cut, 2 mm deep", "2 mm too shallow to be rounded"),
        (("tabs .... cut, 20 mm deep",), "cut, 20 mm deep", "5 mm deeper than any that last"),
        (("leaf .... 85 x 125 mm", "holes .... none", "tabs .... cut, 5 mm"), "cut, 5 mm", "2 mm too narrow"),
        (("leaf .... 148 x 92 mm", "holes .... none", "tabs .... cut"), "cut", "6 mm too low for 7 tabs of 8 mm"),
        (("corners .... 13 mm", "tabs .... cut"), "13 mm", "1 mm into the first tab"),
        (("bound at .... top", "leaf .... 100 x 150 mm", "tabs .... cut, 8 mm"), "cut, 8 mm", "1 mm beyond the ends"),
        # Of A4 on A4 a printer leaves 5 mm white, and 4 mm are needed: 9 mm.
        (("leaf .... A4", "tabs .... cut, 8 mm"), "cut, 8 mm", "1 mm too shallow: they reach to the edge of the paper"),
        (("leaf .... A4", "printable margin .... 3 mm", "tabs .... cut, 6 mm"), "cut, 6 mm", "1 mm too shallow"),
    ],
)
def test_tabs_that_cannot_be_cut_say_by_how_much(rows: tuple[str, ...], marked: str, said: str) -> None:
    finding = only(read(block(*rows, "paper .... A4")))
    assert (finding.rule, finding.spot.text) == ("impossible-stock", marked)
    assert said in finding.message


def test_what_is_wrong_with_a_leaf_goes_before_its_tabs() -> None:
    findings = read(block("leaf .... 60 x 125 mm", "holes .... none", "tabs .... cut, 20 mm")).findings
    assert ["too narrow" in finding.message for finding in findings] == [True]


def test_a_folded_card_has_neither_tabs_that_are_cut_nor_dividers() -> None:
    for row in ("tabs .... cut", "dividers .... yes"):
        finding = only(read(block(row, name="folded card, A6")))
        assert (finding.rule, finding.spot.text) == ("impossible-stock", row.split()[-1])


@given(stocks(), st.integers(4_000, 15_000))
def test_a_stock_that_is_taken_has_room_for_text_words_and_seven_tabs(stock: Stock, recess: int) -> None:
    tabbed = with_tabs(stock, recess)
    if any(amiss(tabbed)):
        return
    assert text_width(tabbed) >= LEAST_TEXT_WIDTH
    assert recess - lost_at_outer_edge(tabbed) >= LEAST_TAB_INK
    assert slot_span(tabbed, SLOTS - 1)[1] < tabbed.leaf[1]


@given(stocks())
def test_a_tab_is_refused_for_the_edge_of_the_paper_only_where_it_is_there(stock: Stock) -> None:
    tabbed = with_tabs(stock, 4_000)
    said = [fault.message for fault in amiss(tabbed)]
    refused = any("edge of the paper" in message for message in said)
    if refused or not said:
        assert refused is (lost_at_outer_edge(tabbed) > 0)


@pytest.mark.parametrize("name", STOCK_NAMES)
def test_the_page_of_stocks_is_right_about_tabs(name: str) -> None:
    stock = read(block(name=name)).value
    for depth in (8, 9):
        findings = read(block(f"tabs .... cut, {depth} mm deep", "dividers .... yes", name=name)).findings
        reaches_edge = stock.leaf in (SIZES["A4"], SIZES["Letter"])
        assert bool(findings) is (stock.folded or (reaches_edge and depth == 8))
