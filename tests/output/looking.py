"""A small book on any stock, printed, its sheets as pictures beside what they are cut by."""

from __future__ import annotations

from dataclasses import dataclass

from dotleader.handbook.resolve import resolve
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.lay.checklists import Checklists
from dotleader.page.sheet.cut_files import cut_file
from dotleader.source.decode import decode
from dotleader.tools.printing.manner import Manner, Planned
from dotleader.tools.printing.printed_book import planned, print_planned
from dotleader.tools.printing.printed_names import SHEETS
from tests.output.cut_reading import Layers, dxf_of, svg_of
from tests.output.pixels import Side
from tests.output.reading import by_pdfium
from tests.output.sheet_faults import sheet_faults

BOOK = """\
handbook Ostrel Two flight handbook
  registration .... N0STL

emergency Engine fire
  memory
    Fuel valve .... OFF
    Throttle .... FULL
  warning Do not open the vents.
  Cabin heat .... OFF
  end

emergency Engine failure
  memory
    Airspeed .... 70 KIAS
  Field .... CHOOSE
  end

normal Taxi
  caution Keep clear of loose stones.
  Brakes .... CHECK, HOLD

stock {}
"""


@dataclass(frozen=True)
class Looked:
    """A sheet of leaves: its sides, and what it is cut by."""

    front: Side
    back: Side
    svg: Layers
    dxf: Layers


def plan_of(stock: str, manner: Manner) -> Planned:
    """The book on a stock; turned on the short edge it has no normal card, which spares a sheet."""
    text = BOOK.format(stock)
    if manner.turning == "short-edge":
        text = text[: text.index("normal Taxi")] + text[text.index("stock ") :]
    resolved = resolve(decode("book.cards", text.encode()).value, "book.cards", lambda _: "no file")
    assert not resolved.findings
    handbook = resolved.value[0]
    return planned(handbook, Checklists(handbook).all(), manner)


def looked_at(plan: Planned, manner: Manner) -> tuple[list[Looked], list[tuple[Side, Side]]]:
    """The sheets of leaves, and the sheet of rulers where there is one."""
    files = print_planned(plan, "N0STL", manner).files
    paper = plan.book.stock.paper[0] / 1000, plan.book.stock.paper[1] / 1000
    pages = list(by_pdfium(files[SHEETS]))
    assert len(pages) == 2 * len(plan.papers)
    leaves, rulers = [], []
    for sheet, front, back in zip(plan.papers, pages[::2], pages[1::2], strict=True):
        sides = Side(front, paper, "front"), Side(back, paper, manner.turning)
        if sheet.number:
            name = cut_file(sheet.arrangement)
            svg, dxf = (files.get(name.replace("svg", ending), b"") for ending in ("svg", "dxf"))
            leaves.append(Looked(*sides, svg_of(svg) if svg else Layers(), dxf_of(dxf) if dxf else Layers()))
        else:
            rulers.append(sides)
    return leaves, rulers


def faults(looked: Looked, stock: Stock) -> list[str]:
    return [fault for cut in (looked.svg, looked.dxf) for fault in sheet_faults(looked.front, looked.back, cut, stock)]
