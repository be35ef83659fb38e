"""The stocks that are known by name: where their holes come to, and that they can be copied and changed."""

from __future__ import annotations

import re

import pytest

from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.library import ALSO_CALLED, LIBRARY
from dotleader.handbook.stocks.measures import LEAST_SEAL
from dotleader.handbook.stocks.sizes import inches
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.imposition import imposition
from dotleader.source.record import replace
from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from tests.handbook.stock_texts import block, only, read
from tests.tables.make_stock_page import PAGE, wanted

BLOCKS = LIBRARY.split("\n\n")


def stock(name: str) -> Stock:
    outcome = read(block(name=name))
    assert outcome.findings == ()
    return outcome.value


def thousandths(*inches_: str) -> tuple[int, ...]:
    return tuple(inches(value) for value in inches_)


@pytest.mark.parametrize(
    ("name", "holes"),
    [
        # ISO 838: 80 mm apart, symmetrical about the sheet's axis.
        ("A4", (108_500, 188_500)),
        ("A5", (65_000, 145_000)),
        ("A6", (34_000, 114_000)),
        ("A5, bound at top", (34_000, 114_000)),
        # The spacing of American ring binders: 4.25 in on letter, 2.75 in on half letter.
        ("letter", thousandths("1.25", "5.5", "9.75")),
        ("half letter", thousandths("1.5", "4.25", "7")),
        # Seven rings, as tables of organisers give them: threes of 1 in, the middle one 2.25 or 3/4 in from them.
        ("letter, seven rings", thousandths("1.25", "2.25", "3.25", "5.5", "7.75", "8.75", "9.75")),
        ("half letter, seven rings", thousandths("1.5", "2.5", "3.5", "4.25", "5", "6", "7")),
        # Six rings, from the same tables: threes of 19 mm, 70 mm between them on A5 and 51 mm on 95 x 171 mm.
        ("A5, six rings", (32_000, 51_000, 70_000, 140_000, 159_000, 178_000)),
        ("95 x 171 mm, six rings", (22_000, 41_000, 60_000, 111_000, 130_000, 149_000)),
    ],
)
def test_the_holes_are_where_the_standard_or_the_trade_has_them(name: str, holes: tuple[int, ...]) -> None:
    assert stock(name).holes == holes


@pytest.mark.parametrize("size", ["letter", "half letter"])
def test_seven_rings_hold_what_is_punched_for_three(size: str) -> None:
    assert set(stock(size).holes) < set(stock(f"{size}, seven rings").holes)


def test_iso_838_from_the_edge() -> None:
    # ISO 838: 6 mm wide, 12 mm from the edge.
    for name in ("A4", "A5", "A6", "A5, bound at top"):
        assert (stock(name).hole_diameter, stock(name).hole_edge) == (6_000, 12_000)


def test_the_pouch_of_six_by_nine_leaves_an_eighth_of_an_inch() -> None:
    found = stock("6 x 9 in pouch")
    assert (found.leaf, found.pouch) == ((146_050, 222_250), (152_400, 228_600))
    assert found.pouch[0] - found.leaf[0] == found.pouch[1] - found.leaf[1] == 2 * LEAST_SEAL


def test_the_usual_corner_is_that_of_a_bank_card() -> None:
    # ISO/IEC 7810 ID-1: a radius of 2.88 to 3.48 mm.
    for name in STOCK_NAMES:
        assert 2_880 <= stock(name).corner_radius <= 3_480


def test_the_small_kneeboard_is_a_quarter_of_letter() -> None:
    assert len(imposition(stock("kneeboard, quarter letter")).slots) == 4


@pytest.mark.parametrize("name", STOCK_NAMES)
def test_every_name_brings_leaf_and_paper(name: str) -> None:
    found = stock(name)
    assert found.name == name
    assert imposition(found).slots


@pytest.mark.parametrize("text", BLOCKS, ids=lambda text: text.partition("\n")[0])
def test_the_library_is_written_as_the_formatter_writes_it(text: str) -> None:
    whole = text.rstrip("\n") + "\n"
    assert format_text(SourceText("library", whole)) == whole


@pytest.mark.parametrize("text", BLOCKS, ids=lambda text: text.partition("\n")[0])
def test_a_copy_under_a_name_of_ones_own_is_the_same_stock(text: str) -> None:
    name = text.partition("\n")[0].removeprefix("stock ")
    copied = read(text.replace(f"stock {name}", "stock Of my own", 1) + "\n")
    assert copied.findings == ()
    assert replace(copied.value, name="", spot=None) == replace(stock(name), name="", spot=None)


@pytest.mark.parametrize("name", STOCK_NAMES)
def test_a_row_changes_its_property_and_no_other(name: str) -> None:
    changed = read(block("corners .... 1/4 in", name=name))
    assert changed.findings == ()
    assert replace(changed.value, spot=None) == replace(stock(name), corner_radius=6_350, spot=None)


def test_a_stock_of_the_library_put_into_film_keeps_its_holes_in_the_middle() -> None:
    found = read(block("seal .... 4 mm", name="half letter, seven rings")).value
    assert found.holes == stock("half letter, seven rings").holes
    assert found.pouch == (139_700 + 8_000, 215_900 + 8_000)
    assert found.hole_edge == 12_700 - 4_000


def test_a_name_that_is_almost_known_is_not_taken_for_a_new_one() -> None:
    finding = only(read(block("corners .... 6 mm", name="half leter")))
    assert (finding.rule, finding.spot.text) == ("unknown-stock", "half leter")
    assert "`half letter`" in finding.help
    assert read(block("corners .... 6 mm", name="Zebra")).findings == ()


def test_other_names_are_of_stocks_that_there_are() -> None:
    assert set(ALSO_CALLED.values()) <= set(STOCK_NAMES) - set(ALSO_CALLED)


def test_the_page_of_the_stocks_is_as_it_is_made() -> None:
    text = PAGE.read_text(encoding="utf-8")
    assert text == wanted(), "run `python -m tests.tables.make_stock_page`"
    assert [found.rstrip("\n") for found in re.findall(r"```\n(.*?)```", text, re.S)] == [
        b.rstrip("\n") for b in BLOCKS
    ]
