"""`dotleader print`: the reading copy and the sheets, all of them or nothing."""

from __future__ import annotations

import os
from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.handbook.contents import contents
from dotleader.handbook.stocks.sizes import PAPERS
from dotleader.handbook.stocks.thickness import overfull
from dotleader.page.sheet.cut_files import and_last
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.leaf_order import ORDERS
from dotleader.report.order import severity_of
from dotleader.source.finding import Finding, Severity
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import handbook_at
from dotleader.tools.files import STDIN, Files, shown_name
from dotleader.tools.pipeline import lint_handbook
from dotleader.tools.printing import print_said, print_selection
from dotleader.tools.printing.book_choice import book_asked, folder_of, said_of_book
from dotleader.tools.printing.in_lines import in_lines
from dotleader.tools.printing.printer_store import chosen
from dotleader.tools.printing.printers import USUAL_PAPER
from dotleader.tools.rule_facts import FACTS
from dotleader.tools.saying import say

if TYPE_CHECKING:  # argparse, and all that printing takes, are at hand only where they are used
    from dotleader.handbook.book import DeclaredBook
    from dotleader.tools.command_line import Options, Parser
    from dotleader.tools.printing.manner import Planned
    from dotleader.tools.printing.printers import Printer

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
                            sheet by which a printer's backs are measured;
                            --to, --paper, --printer and --turn go with it
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
  --faces LABELS            those with these faces: 3-5..3-9, or 3-1,4-2
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
    parser.choice("--order", ORDERS, dest="order", default=None)
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
    if options.folder == "":
        raise CannotRun("`--to` names no folder.", "Name one to print into, or leave the option out.")
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
        say(print_said.refusal(errors, len(linted.findings) - len(errors), linted.laid is not None))
        return 1
    handbook = contents(linted.handbook, book)
    if not handbook.cards and not handbook.essays and not book.sections:
        say((f"Nothing was printed: there is no card in {shown_name(main)}.",))
        return 1
    # reportlab takes longer to import than a lint takes altogether
    from dotleader.tools.ending import end_tidily  # noqa: PLC0415
    from dotleader.tools.printing.manner import Manner  # noqa: PLC0415
    from dotleader.tools.printing.printed_book import planned, print_planned  # noqa: PLC0415
    from dotleader.tools.printing.printed_folder import write_folder  # noqa: PLC0415

    end_tidily()
    manner = Manner(
        draft=len(errors) if options.draft else None,
        cutter_marks=options.cutter_marks,
        printer=printer,
        wanted=print_selection.wanted(options, handbook),
        copies=print_selection.copies(options),
        colour=not options.black,
        order=options.order or ORDERS[0],
        turning=_turning(options, printer),
        one_sided=options.one_sided,
    )
    plan = planned(handbook, linted.laid.cards(book), manner, book)
    amiss = _too_thick(plan, book)
    if options.check:
        say(print_said.checked(plan, manner.copies, linted.findings))
        say(in_lines(said_of_book(linted.handbook, book)))
        say(print_said.at_the_bench(plan, manner, handbook, main))
        say(print_said.nothing_written(amiss))
        return int(bool(amiss))
    if amiss:
        say(print_said.refusal(amiss, len(linted.findings), draft_helps=False))
        return 1
    printed = print_planned(plan, handbook.fact("registration"), manner)
    beside = "" if main == STDIN else os.path.dirname(main)
    folder = options.folder or os.path.join(beside, folder_of(linted.handbook, book))
    written = write_folder(folder, printed.files)
    say(print_said.done(printed, folder, written))
    say(in_lines(said_of_book(linted.handbook, book)))
    say(print_said.at_the_bench(plan, manner, handbook, main))
    return 0


def _too_thick(plan: Planned, book: DeclaredBook) -> list[Finding]:
    """What is wrong with rings that do not hold the pile; where none were written, at the stock or the book."""
    stock = plan.book.stock
    amiss = overfull(stock, len(plan.book.faces) // 2)
    if amiss is None:
        return []
    return [Finding("impossible-stock", stock.rings_spot or stock.spot or book.spot, amiss.message, amiss.help)]


def _turning(options: Options, printer: Printer | None) -> Turning:
    """What was asked for, else what a printer was measured with."""
    asked: Turning | None = options.turning
    return asked or (printer.turning if printer else TURNINGS[0])


def _calibration(options: Options) -> int:
    if options.handbook is not None:
        raise CannotRun("The calibration sheet is printed without a handbook.", "Print the two one after the other.")
    others = [f"`{option}`" for option in _of_a_handbook(options)]
    if others:
        raise CannotRun(
            f"{and_last(others)} {'says' if len(others) == 1 else 'say'} nothing of the calibration sheet.",
            "With `--calibration` go `--to`, `--paper`, `--printer` and `--turn`.",
        )
    # reportlab takes longer to import than a lint takes altogether
    from dotleader.tools.ending import end_tidily  # noqa: PLC0415
    from dotleader.tools.printing.calibration_sheet import print_calibration  # noqa: PLC0415

    end_tidily()
    printer = chosen(options.printer) if options.printer is not None else None
    print_calibration(
        options.folder or "",
        options.paper or (printer.paper if printer else USUAL_PAPER),
        printer,
        _turning(options, printer),
    )
    return 0


def _of_a_handbook(options: Options) -> Iterator[str]:
    """The options that were given and mean something only where a handbook is printed."""
    for option in ("order", "one_sided", "cutter_marks", "draft", "check", *print_selection.OPTIONS):
        if getattr(options, option) not in (None, False, []):
            yield f"--{option.replace('_', '-')}"


def _main(path: str, files: Files) -> str:
    main, only = handbook_at(path, files)
    if only:
        raise CannotRun(
            f"`{shown_name(path)}` is a part of a handbook, and is printed with it.",
            f"Name the handbook: `dotleader print {shown_name(main)}`.",
        )
    return main
