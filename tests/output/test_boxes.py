"""The boxes of printed pages, read back by another library.

Outside check: the media box encloses the bleed box, which encloses the trim box; none is turned (ISO 32000-1, 14.11.2,
and ISO 15930, which wants them so). A leaf of A5 is 419.528 by 595.276 points (ISO 216; 1 in = 25.4 mm = 72 pt); with
3 mm of bleed A4 is 216 by 303 mm (a worked example of print shops).
"""

from __future__ import annotations

from typing import Any

import pytest

from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.library import ALSO_CALLED
from dotleader.page.drawn import mm
from dotleader.page.face.placement import Side
from dotleader.page.sheet.boxes import boxes_of
from dotleader.page.sheet.duplex import TURNINGS
from dotleader.page.sheet.sheets import LeafPlace, SheetSide
from dotleader.source.record import replace
from dotleader.tools.printing.manner import Manner
from dotleader.tools.printing.printed_book import print_planned
from dotleader.tools.printing.printed_names import READING, SHEETS
from tests.output.looking import plan_of
from tests.output.reading import by_pypdf
from tests.page.leaves import STOCKS

NEAR = 0.01
"""Points."""


def encloses(outer: Any, inner: Any) -> bool:
    """`Any` for pypdf's rectangles."""
    return (
        outer.left - NEAR <= inner.left
        and outer.bottom - NEAR <= inner.bottom
        and inner.right <= outer.right + NEAR
        and inner.top <= outer.top + NEAR
    )


@pytest.mark.parametrize("name", [name for name in STOCK_NAMES if name not in ALSO_CALLED])
def test_media_encloses_bleed_encloses_trim(name: str) -> None:
    manner = Manner(turning=TURNINGS[1], one_sided=True)
    plan = plan_of(name, manner)
    files = print_planned(plan, "N0STL", manner).files
    for name_of, data in files.items():
        for page in by_pypdf(data).pages if name_of.endswith(".pdf") else ():
            assert page.get("/Rotate", 0) == 0
            assert encloses(page.mediabox, page.cropbox)
            assert encloses(page.mediabox, page.bleedbox)
            assert encloses(page.bleedbox, page.trimbox)
    leaf = [length * 72 / 25_400 for length in plan.book.stock.leaf]
    for page in by_pypdf(files[READING]).pages:
        assert [float(page.trimbox.width), float(page.trimbox.height)] == pytest.approx(leaf, abs=NEAR)


def test_the_trim_box_is_the_leaf_where_there_is_one_to_a_sheet() -> None:
    manner = Manner()
    plan = plan_of("6 x 9 in pouch", manner)
    for page in by_pypdf(print_planned(plan, "", manner).files[SHEETS]).pages:
        assert [float(part) for part in page.trimbox] == pytest.approx([99, 81, 513, 711], abs=NEAR)  # 5.75 by 8.75 in
        bleed = 3 * 72 / 25.4
        assert [float(part) for part in page.bleedbox] == pytest.approx(
            [99 - bleed, 81 - bleed, 513 + bleed, 711 + bleed], abs=NEAR
        )


def test_a4_with_its_bleed_is_216_by_303_and_bleed_ends_with_the_paper() -> None:
    leaf = SheetSide(Side.FRONT, (), (LeafPlace("4-1", mm(40), mm(50), mm(210), mm(297), 0),))
    stock = replace(STOCKS["A4"], paper=(mm(297), mm(420)))
    assert boxes_of(leaf, stock) == ((mm(40), mm(50), mm(210), mm(297)), (mm(37), mm(47), mm(216), mm(303)))
    filled = replace(leaf, leaves=(LeafPlace("4-1", 0, 0, mm(210), mm(297), 0),))
    paper = (0, 0, mm(210), mm(297))
    assert boxes_of(filled, STOCKS["A4"]) == (paper, paper)


def test_several_pieces_have_none_but_a_folded_card_is_one() -> None:
    two = tuple(LeafPlace(f"4-{n}", mm(20), mm(20 + 105 * n), mm(148), mm(105), 90) for n in (0, 1))
    side = SheetSide(Side.FRONT, (), two)
    stock = replace(STOCKS["A6"], holes=())
    assert boxes_of(side, stock) == (None, None)
    assert boxes_of(side, replace(stock, folded=True)).trim == (mm(20), mm(20), mm(148), mm(210))
    apart = replace(side, leaves=(two[0], replace(two[1], y=mm(140))))
    assert boxes_of(apart, replace(stock, folded=True)) == (None, None)
    assert boxes_of(replace(side, leaves=()), stock) == (None, None)
