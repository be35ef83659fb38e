"""`dotleader print`: the reading copy and the sheets, all of them or nothing."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.handbook.contents import contents
from dotleader.handbook.stocks.fault import Amiss
from dotleader.handbook.stocks.sizes import PAPERS
from dotleader.handbook.stocks.thickness import overfull
from dotleader.output.millimetres import millimetres
from dotleader.page.face.thumb_index import leaf_area
from dotleader.page.sheet.alignment import MUCH_MOVED, said
from dotleader.page.sheet.copies import sheets_of_copies
from dotleader.page.sheet.cut_files import cut_file, sheets_numbered
from dotleader.page.sheet.cut_shapes import Layer, Outline
from dotleader.page.sheet.duplex import TURNINGS, Turning, edge_said
from dotleader.page.sheet.leaf_order import ORDERS
from dotleader.page.sheet.registration import MARK
from dotleader.report.full import full
from dotleader.report.glyphs import escaped
from dotleader.report.order import severity_of
from dotleader.report.summary import counted, summary
from dotleader.report.terminal import terminal_for
from dotleader.source.finding import Finding, Severity
from dotleader.tools import print_selection, sheets_said, stock_said
from dotleader.tools.book_choice import book_asked, folder_of, said_of_book
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import handbook_at
from dotleader.tools.files import STDIN, Files, shown_name
from dotleader.tools.pipeline import lint_handbook
from dotleader.tools.printed_names import BACKS, CUT_DXF, CUT_SVG, FRONTS, MAKING_UP, READING, SHEETS
from dotleader.tools.printer_store import chosen
from dotleader.tools.printers import USUAL_PAPER
from dotleader.tools.rule_facts import FACTS
from dotleader.tools.saying import say

if TYPE_CHECKING:  # argparse, and all that printing takes, are at hand only where they are used
    from dotleader.tools.command_line import Options, Parser
    from dotleader.tools.printed_book import Planned, Printed
    from dotleader.tools.printers import Printer

HELP = """\
dotleader print HANDBOOK    lay out cards as pages to read and sheets to cut

  HANDBOOK is a file, or a folder with one handbook in it. What is written:
  reading.pdf has every face in order; sheets.pdf has the leaves on the paper,
  to print on both sides and to cut; cut.svg and cut.dxf have the paths that
  a machine cuts them by; making-up.pdf goes to the bench: what is needed, what
  is done with it, and the leaves in their order. A handbook with errors is not
  printed.

  --to DIR                  write into this folder; without it, the folder
                            `printed` beside the handbook
  --order ORDER             with several leaves to a sheet: `sequence`, they
                            follow one another on each sheet, as is done
                            without it; `stack`, they follow one another
                            through the pile: cut it, put the stacks on each
                            other, and the book is in order
  --turn EDGE               about which edge the printer turns a sheet for its
                            back: `long-edge`, or `short-edge`, for which
                            backs are printed turned by 180 degrees. Without
                            it, as the printer was measured that sheets are
                            corrected for; else the long edge
  --one-sided               for a printer that prints one side: fronts.pdf and
                            backs.pdf too, and how the paper goes back in
  --cutter-marks            print marks on the sheets by which a cutter that
                            reads them finds where they lie
  --printer NAME            correct the backs of the sheets for this printer
                            (see `dotleader printer --help`); `none` for none.
                            Without it, for the printer that is the default
  --calibration             without HANDBOOK: write calibration.pdf here, the
                            sheet by which a printer's backs are measured
  --paper PAPER             what that sheet is printed on: A3, A4, A5, Letter
                            or Legal; without it, A4
  --draft                   print in spite of errors, DRAFT across every face
  --check                   lay everything out and say what would be printed;
                            write nothing

  --book NAME               print this book of the handbook; without it, the
                            first. All but the first go into a folder of their
                            own in `printed`, unless one is named

  Of the book, with the labels of the whole book (together: all of them):
  --only KIND               the leaves with emergency, abnormal or normal cards
  --cards TITLE             those with this card and what explains it
  --faces LABELS            those with these faces: 3-5..3-9, or 4-2
  --copies N                so many copies of the sheets
  --black                   no colour: the ground of memory items stays white
  -h, --help                this text

  Ends with 0 if it was printed, 1 if there are errors or there is nothing to
  print, 2 if something could not be read or written.

  dotleader print handbook.cards
  dotleader print handbook.cards --to ~/desk --draft
  dotleader print --calibration --paper Letter
"""


def arguments(parser: Parser) -> None:
    parser.add_argument("handbook", nargs="?", metavar="HANDBOOK")
    parser.add_argument("--to", dest="folder", metavar="DIR")
    parser.choice("--order", ORDERS, dest="order", default="sequence")
    parser.choice("--turn", TURNINGS, dest="turning", default=None)
    parser.add_argument("--one-sided", action="store_true")
    parser.add_argument("--cutter-marks", action="store_true")
    parser.add_argument("--printer", metavar="NAME")
    parser.add_argument("--calibration", action="store_true")
    parser.choice("--paper", PAPERS, dest="paper", default=None)
    parser.add_argument("--draft", action="store_true")
    parser.add_argument("--check", action="store_true")
    print_selection.arguments(parser)


def run(options: Options) -> int:
    if options.calibration:
        return _calibration(options)
    if options.paper:
        raise CannotRun("`--paper` goes with `--calibration`.", "The paper of a handbook stands in its `stock`.")
    if options.handbook is None:
        raise CannotRun("No handbook to print was named.", "Name its file: `dotleader print handbook.cards`.")
    printer = chosen(options.printer)
    files = Files()
    main = _main(options.handbook, files)
    linted = lint_handbook(main, files, lambda handbook: (book_asked(handbook, options.book),))
    (book,) = linted.books
    errors = [found for found in linted.findings if severity_of(found, FACTS) is Severity.ERROR]
    if linted.laid is None or (errors and not options.draft):
        say(_refusal(errors, len(linted.findings) - len(errors), linted.laid is None))
        return 1
    handbook = contents(linted.handbook, book)
    if not handbook.cards and not handbook.essays and not book.sections:
        say((f"Nothing was printed: there is no card in {shown_name(main)}.",))
        return 1
    # reportlab takes longer to import than a lint takes altogether
    from dotleader.tools.ending import end_tidily  # noqa: PLC0415
    from dotleader.tools.printed_book import Manner, planned, print_planned  # noqa: PLC0415
    from dotleader.tools.printed_folder import write_folder  # noqa: PLC0415
    from dotleader.tools.punch_said import said_of_punches  # noqa: PLC0415

    end_tidily()
    manner = Manner(
        draft=len(errors) if options.draft else None,
        cutter_marks=options.cutter_marks,
        printer=printer,
        wanted=print_selection.wanted(options, handbook),
        copies=print_selection.copies(options),
        colour=not options.black,
        order=options.order,
        turning=_turning(options, printer),
        one_sided=options.one_sided,
    )
    plan = planned(handbook, linted.laid.cards(book), manner, book)
    if not plan.book.faces:
        say(("Nothing was printed: no leaf has what was asked for.",))
        return 1
    amiss = overfull(plan.book.stock, len(plan.book.faces) // 2)
    if options.check or amiss is not None:
        say(_checked(plan, manner.copies, linted.findings, amiss))
        say(said_of_book(linted.handbook, book))
        return int(amiss is not None)
    printed = print_planned(plan, handbook.fact("registration"), manner)
    beside = "" if main == STDIN else os.path.dirname(main)
    folder = options.folder or os.path.join(beside, folder_of(linted.handbook, book))
    written = write_folder(folder, printed.files)
    say(_done(printed, folder, written.removed, written.left))
    say(said_of_book(linted.handbook, book))
    say(sheets_said.how(manner.turning, manner.one_sided, printed.book.stock))
    say(stock_said.of_stock(printed.book, len(printed.cuttings)))
    if options.order == "stack":
        say(sheets_said.stacked(plan))
    say(_corrected(printer, printed.book.stock.paper_name, manner.turning))
    if options.cutter_marks:
        say((_marked(printed),))
    if options.draft:
        said = f"; {counted(len(errors), 'error')}, see `dotleader lint {shown_name(main)}`" if errors else ""
        say((f"This is a draft, and says so across every face{said}.",))
    say(said_of_punches(handbook, terminal_for(sys.stdout, os.environ)))
    return 0


def _turning(options: Options, printer: Printer | None) -> Turning:
    """What was asked for, else what a printer was measured with."""
    asked: Turning | None = options.turning
    return asked or (printer.turning if printer else TURNINGS[0])


def _calibration(options: Options) -> int:
    if options.handbook is not None:
        raise CannotRun("The calibration sheet is printed without a handbook.", "Print the two one after the other.")
    # reportlab takes longer to import than a lint takes altogether
    from dotleader.tools.calibration_sheet import print_calibration  # noqa: PLC0415
    from dotleader.tools.ending import end_tidily  # noqa: PLC0415

    end_tidily()
    printer = chosen(options.printer) if options.printer is not None else None
    print_calibration(
        options.folder or "",
        options.paper or (printer.paper if printer else USUAL_PAPER),
        printer,
        _turning(options, printer),
    )
    return 0


def _main(path: str, files: Files) -> str:
    main, only = handbook_at(path, files)
    if only:
        raise CannotRun(
            f"`{shown_name(path)}` is a part of a handbook, and is printed with it.",
            f"Name the handbook: `dotleader print {shown_name(main)}`.",
        )
    return main


def _refusal(errors: list[Finding], others: int, impossible: bool) -> Iterator[str]:
    """The errors, as `lint` shows them, and what can be done."""
    yield from full(errors, FACTS, terminal_for(sys.stdout, os.environ))
    yield f"Nothing was printed: {summary(errors, FACTS, 0, 0)}."
    if others:
        yield f"`dotleader lint` has {counted(others, 'more finding')}."
    if not impossible:
        yield "`--draft` prints in spite of errors, with DRAFT across every face."


def _done(printed: Printed, folder: str, removed: tuple[str, ...], left: tuple[str, ...]) -> Iterator[str]:
    """What was printed, and what to do with it now."""
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
    for name in removed:
        yield f"{escaped(name, terminal)} of the print before was removed."
    for name in left:
        yield f"{escaped(name, terminal)} of the print before was changed by somebody and was left."


def _checked(plan: Planned, copies: int, findings: list[Finding], amiss: Amiss | None) -> Iterator[str]:
    """What would be printed, and what is in the way of it."""
    book = plan.book
    if findings:
        yield f"{summary(findings, FACTS, 0, 0).capitalize()}; `dotleader lint` shows them."
    width, height = book.stock.paper
    sheets = sheets_of_copies(plan.papers, copies)
    waste = 100 - 50 * len(book.faces) * copies * leaf_area(book.stock) // (sheets * width * height)
    yield f"{counted(len(book.faces), 'face')} on {stock_said.pieces(book)}."
    yield f"{counted(sheets, 'sheet')} of {book.stock.paper_name}, {waste} % of it waste."
    yield stock_said.of_cut_lines(book.stock)
    yield from stock_said.of_stock(book, len(plan.cuttings))
    if amiss is not None:
        yield f"{amiss.message} {amiss.help}"
    yield "Nothing was written."


def _corrected(printer: Printer | None, paper: str, turning: Turning) -> Iterator[str]:
    """Whether the backs of sheets are corrected, and for which printer."""
    if printer is None:
        yield "The backs of the sheets are not corrected for a printer (see `dotleader printer --help`)."
        return
    name = escaped(printer.name, terminal_for(sys.stdout, os.environ))
    yield f"The backs of the sheets are corrected for {name}, which puts them {said(printer.moved)}."
    if paper != printer.paper:
        yield f"That was measured on {printer.paper}, and this is {paper}: look at one sheet against the light first."
    if turning != printer.turning:
        edge = edge_said(printer.turning)
        yield f"That was measured on a sheet turned on the {edge}: look at one sheet against the light first."
    if max(abs(printer.moved.right), abs(printer.moved.down)) > MUCH_MOVED:
        yield "That is much: a printer may leave out what stands near the edges of the backs. Measure on the fronts."


def _marked(printed: Printed) -> str:
    """Whether sheets bear marks for a cutter, and where."""
    marks = [mark for cutting in printed.cuttings for mark in cutting.on(Layer.REGISTRATION)]
    if not marks:
        return "No cutter's marks: there is no room for them beside the leaves."
    first = marks[0]
    assert isinstance(first, Outline)
    size, middle = millimetres(MARK), millimetres(first.start[0] + MARK // 2)
    return (
        f"The front of each sheet bears three black squares of {size} mm by which a cutter finds it, their centres "
        f"{middle} mm from the paper's edges: upper left, upper right, lower left."
    )
