"""Every stock of the library, printed and looked at: both sides fall on each other, holes and seals are free of ink.

Fronts and backs are rasterised by pdfium, the backs mirrored as the turning says; leaves are found by their crop marks,
holes by their crosses, columns by their rules, bands by their black (`pixels`, `sheet_faults`). Nothing is asked of the
program's own geometry but the cut files, which are held against the pictures. That the checks find faults is tested on
planted ones (`test_planted_faults`).
"""

from __future__ import annotations

import pytest

from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.library import ALSO_CALLED
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.tools.printing.manner import Manner
from tests.output.looking import faults, looked_at, plan_of
from tests.output.pixels import Area

LIBRARY = [name for name in STOCK_NAMES if name not in ALSO_CALLED]
CHANGED = [
    "6 x 9 in pouch\n  tabs .... cut\n  dividers .... yes",
    "6 x 9 in pouch\n  relief .... 3 mm",
    "A5\n  tabs .... cut",
    "A6\n  cut lines .... separate",
]
"""Cut otherwise than any stock of the library."""


@pytest.mark.parametrize(
    ("name", "turning"),
    [*((name, turning) for name in LIBRARY for turning in TURNINGS), *((name, TURNINGS[0]) for name in CHANGED)],
)
def test_both_sides_of_every_stock_coincide_and_are_cut_where_their_marks_are(name: str, turning: Turning) -> None:
    manner = Manner(turning=turning)
    plan = plan_of(name, manner)
    stock = plan.book.stock
    sheets, rulers = looked_at(plan, manner)
    for sheet in sheets:
        assert faults(sheet, stock) == []
    leaves = len(plan.book.faces) // 2
    assert sum(len(sheet.front.crosses) for sheet in sheets) == leaves * len(stock.holes)
    marked = sum(len(sheet.front.leaves) for sheet in sheets) * (1 + stock.folded)
    assert marked == (leaves if not rulers or marked else 0)  # where leaves fill the paper there are no marks
    assert any(sheet.front.bands for sheet in sheets)
    for front, back in rulers:
        ((x, y),), ((p, q),) = front.crossings(20), back.crossings(20)
        assert abs(x - p) < 0.1
        assert abs(y - q) < 0.1


def test_marks_for_a_cutter_are_where_the_file_says_and_on_fronts_only() -> None:
    manner = Manner(cutter_marks=True)
    plan = plan_of("6 x 9 in pouch", manner)
    for sheet in looked_at(plan, manner)[0]:
        assert faults(sheet, plan.book.stock) == []
        assert len(sheet.svg.paths["registration"]) == len(sheet.dxf.paths["registration"]) == 3
        for path in (*sheet.svg.paths["registration"], *sheet.dxf.paths["registration"]):
            left, top, right, bottom = path.box
            assert (sheet.front.cut_out(Area(left + 0.1, top + 0.1, right - 0.1, bottom - 0.1)) == 255).all()
            mark = Area(left - 0.1, top - 0.1, right + 0.1, bottom + 0.1)
            around = Area(left - 3, top - 3, right + 3, bottom + 3)
            assert sheet.front.cut_out(around).sum() == sheet.front.cut_out(mark).sum()
            assert not sheet.back.inked(around)
