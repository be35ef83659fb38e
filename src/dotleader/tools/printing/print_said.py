"""What `print` says: why nothing was printed, what was or would be, and what is done with it now."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.handbook.model import Handbook
from dotleader.page.face.thumb_index import leaf_area
from dotleader.page.sheet.alignment import MUCH_MOVED, said
from dotleader.page.sheet.copies import sheets_of_copies
from dotleader.page.sheet.cut_files import and_last, cut_file, sheets_numbered
from dotleader.page.sheet.duplex import Turning, edge_said
from dotleader.report.full import full
from dotleader.report.glyphs import escaped
from dotleader.report.summary import counted, summary
from dotleader.report.terminal import terminal_for
from dotleader.source.finding import Finding
from dotleader.tools.files import shown_name
from dotleader.tools.printing import sheets_said, stock_said
from dotleader.tools.printing.in_lines import in_lines
from dotleader.tools.printing.machine_said import of_machine
from dotleader.tools.printing.printed_names import BACKS, CUT_DXF, CUT_SVG, FRONTS, MAKING_UP, READING, SHEETS
from dotleader.tools.printing.punch_said import said_of_punches
from dotleader.tools.rule_facts import FACTS

if TYPE_CHECKING:  # reportlab takes longer to import than a lint takes altogether
    from dotleader.tools.printing.manner import Manner, Planned, Printed
    from dotleader.tools.printing.printed_folder import Written
    from dotleader.tools.printing.printers import Printer


def refusal(errors: list[Finding], others: int, draft_helps: bool) -> Iterator[str]:
    """The errors, as `lint` shows them, and what can be done. `others` are findings that are none."""
    yield from full(errors, FACTS, terminal_for(sys.stdout, os.environ))
    yield f"Nothing was printed: {summary(errors, FACTS, 0, 0)}."
    if others:
        yield f"`dotleader lint` has {counted(others, 'more finding')}."
    if draft_helps:
        yield "`--draft` prints in spite of errors, with DRAFT across every face."


def done(printed: Printed, folder: str, written: Written) -> Iterator[str]:
    """What was printed into which files, and what became of those of the print before."""
    book = printed.book
    about = {
        READING: f"{counted(len(book.faces), 'face')}, to read",
        SHEETS: f"{stock_said.pieces(book)} on "
        f"{counted(printed.sheets, 'sheet')} of {book.stock.paper_name}, to print and cut",
        FRONTS: "the fronts of the sheets, for a printer of one side",
        BACKS: "their backs, in the same order",
        MAKING_UP: "for the bench: what is needed and done, the order of the leaves",
    }
    for cutting in printed.cuttings:
        these = "every sheet" if len(printed.cuttings) == 1 else sheets_numbered(cutting.sheets)
        about[cut_file(cutting.number, CUT_SVG)] = f"to cut {these} by, the front up"
        about[cut_file(cutting.number, CUT_DXF)] = "the same paths for other programs"
    terminal = terminal_for(sys.stdout, os.environ)
    names = {name: escaped(shown_name(os.path.join(folder, name)), terminal) for name in printed.files}
    width = max(map(len, names.values()))
    for name, shown in names.items():
        yield f"{shown:<{width}}  {about[name]}"
    yield from in_lines(_of_the_print_before(folder, written))


def _of_the_print_before(folder: str, written: Written) -> Iterator[str]:
    for name, copy in written.kept:
        was, now = (shown_name(os.path.join(folder, one)) for one in (name, copy))
        yield f"{was} was changed by somebody since the print before: what it was is kept as {now}."
    for name in written.removed:
        yield f"{name} of the print before was removed."
    for name in written.left:
        yield f"{name} of the print before was changed by somebody and was left."


def checked(plan: Planned, copies: int, findings: list[Finding]) -> Iterator[str]:
    """What would be printed."""
    book = plan.book
    if findings:
        yield f"{summary(findings, FACTS, 0, 0).capitalize()}; `dotleader lint` shows them."
    width, height = book.stock.paper
    sheets = sheets_of_copies(plan.papers, copies)
    waste = 100 - 50 * len(book.faces) * copies * leaf_area(book.stock) // (sheets * width * height)
    yield f"{counted(len(book.faces), 'face')} on {stock_said.pieces(book)}."
    yield f"{counted(sheets, 'sheet')} of {book.stock.paper_name}, {waste} % of it waste."
    yield from in_lines((stock_said.of_cut_lines(book.stock), *_cut_by(plan)))


def _cut_by(plan: Planned) -> Iterator[str]:
    """Which file is for which sheets, where there is more than one pair of them."""
    pairs = [f"{cut_file(cutting.number)} is for {sheets_numbered(cutting.sheets)}" for cutting in plan.cuttings]
    if len(pairs) > 1:
        yield f"To cut by, {and_last(pairs)}."


def nothing_written(amiss: list[Finding]) -> Iterator[str]:
    """The end of a look: what would keep the book from being printed, as `lint` shows it."""
    yield ""
    if amiss:
        yield from full(amiss, FACTS, terminal_for(sys.stdout, os.environ))
    yield "Nothing was written."


def at_the_bench(plan: Planned, manner: Manner, handbook: Handbook, main: str) -> Iterator[str]:
    """What is set, and done with the sheets, in lines as wide as the terminal; the same before and after a print."""
    stock = plan.book.stock
    yield from sheets_said.how(manner.turning, manner.one_sided, stock)
    yield from stock_said.of_stock(plan.book, len(plan.cuttings))
    if manner.order == "stack":
        yield from sheets_said.stacked(plan)
    yield from in_lines(of_machine(stock, plan.cuttings, manner.cutter_marks))
    yield from in_lines(_of_printer(manner.printer, stock.paper_name, manner.turning))
    if manner.draft is not None:
        errors = f"; {counted(manner.draft, 'error')}, see `dotleader lint {shown_name(main)}`" if manner.draft else ""
        yield from in_lines((f"This is a draft, and says so across every face{errors}.",))
    yield from said_of_punches(handbook, terminal_for(sys.stdout, os.environ))


def _of_printer(printer: Printer | None, paper: str, turning: Turning) -> Iterator[str]:
    """Whether the backs of sheets are corrected, and for which printer."""
    if printer is None:
        yield "The backs of the sheets are not corrected for a printer (see `dotleader printer --help`)."
        return
    yield f"The backs of the sheets are corrected for {printer.name}, which puts them {said(printer.moved)}."
    if paper != printer.paper:
        yield f"That was measured on {printer.paper}, and this is {paper}: look at one sheet against the light first."
    if turning != printer.turning:
        edge = edge_said(printer.turning)
        yield f"That was measured on a sheet turned on the {edge}: look at one sheet against the light first."
    if max(abs(printer.moved.right), abs(printer.moved.down)) > MUCH_MOVED:
        yield "That is much: a printer may leave out what stands near the edges of the backs. Measure on the fronts."
