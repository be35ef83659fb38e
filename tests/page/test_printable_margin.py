"""Whatever a printer leaves white, nothing but the marks of holes is lost on it, and nothing of the waste's marks."""

from __future__ import annotations

import pytest

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Drawn, Group
from dotleader.page.extents import extents
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.sheets import sheets
from tests.page.leaves import EVERY_KIND, faces, stock_of

LEAVES = ("leaf .... 130 x 190 mm", "leaf .... A5", "leaf .... 95 x 140 mm\n  bound at .... top\n  holes .... none")


def without_holes(items: tuple[Drawn, ...]) -> tuple[Drawn, ...]:
    kept: list[Drawn] = []
    for item in items:
        if isinstance(item, Group):
            if item.role != "holes":
                kept.append(Group(item.x, item.y, without_holes(item.items), item.turn, item.role))
        else:
            kept.append(item)
    return tuple(kept)


@pytest.mark.parametrize("leaf", LEAVES)
@pytest.mark.parametrize("margin", ["none", "3 mm", "5 mm", "6 mm", "12.7 mm", "15 mm"])
@pytest.mark.parametrize("turning", TURNINGS)
def test_nothing_is_printed_where_the_printer_prints_nothing(leaf: str, margin: str, turning: Turning) -> None:
    stock: Stock = stock_of(f"stock\n  {leaf}\n  printable margin .... {margin}\n  paper .... A4\n")
    white = stock.printable_margin
    for sheet in sheets(faces(*EVERY_KIND, stock=stock), stock, turning=turning):
        for side in sheet.sides:
            for item, ink in extents(without_holes(side.items)):
                assert white <= ink.left, item
                assert white <= ink.top, item
                assert ink.right <= stock.paper[0] - white, item
                assert ink.bottom <= stock.paper[1] - white, item
