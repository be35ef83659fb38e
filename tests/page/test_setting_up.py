"""The sheet of rulers: what it says stays clear of its cross and its rulers, however much it is."""

from __future__ import annotations

import pytest

from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.page.drawn import Line, Text
from dotleader.page.extents import Rect, extents
from dotleader.page.imposition import imposition
from dotleader.page.sheet.cut_files import cut_by
from dotleader.page.sheet.setting_up import setting_up
from tests.page.leaves import STOCKS, stock_of

FULL = [name for name in STOCK_NAMES if imposition(stock_of(f"stock {name}\n")).filling]


@pytest.mark.parametrize("name", FULL)
@pytest.mark.parametrize("files", [1, 7, 40])
def test_no_word_meets_the_cross_or_a_ruler_and_all_stand_on_the_paper(name: str, files: int) -> None:
    laid = imposition(stock_of(f"stock {name}\n"))
    cut = cut_by(range(1, files + 1), [f"3A-{2 * number + 1}" for number in range(files)])
    for side in setting_up(laid, cut):
        drawn = list(extents(side))
        words = [ink for item, ink in drawn if isinstance(item, Text) and item.size > 6_000]
        lines = [ink for item, ink in drawn if isinstance(item, Line)]
        assert words
        for word in words:
            assert word.inside(Rect(0, 0, *laid.paper))
            assert not any(word.meets(line) for line in lines)


def test_it_says_that_it_is_not_counted_and_which_faces_a_sheet_has_that_is_cut_otherwise() -> None:
    laid = imposition(STOCKS["A5"])
    front, _ = setting_up(laid, cut_by([1, 1, 1, 1, 2], ["0-1", "0-5", "3-1", "3-5", "4-1"]))
    words = " ".join(item.string for item, _ in extents(front) if isinstance(item, Text)).replace("\u00a0", " ")
    assert "sheets 1 to 4 by cut.svg and sheet 5 (with 4-1) by cut-2.svg" in words
    assert "not counted: sheet 1 is the one after it" in words
