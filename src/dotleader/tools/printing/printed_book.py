"""A handbook as the files that are printed: the reading copy and the sheets. No I/O but what a PDF is made in."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from io import BytesIO
from itertools import islice

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.model import Handbook
from dotleader.output.cut_dxf import cut_dxf
from dotleader.output.cut_svg import cut_svg
from dotleader.output.pdf import PdfFacts, PdfPage, write_pdf
from dotleader.page.drawn import Font
from dotleader.page.face.book import Book, make_book
from dotleader.page.face.selection import selected
from dotleader.page.frames import frame_of
from dotleader.page.imposition import imposition
from dotleader.page.laid import LaidCard
from dotleader.page.lay.lay_prose import lay_amplified, lay_essay
from dotleader.page.sheet.alignment import righting, said, said_moved
from dotleader.page.sheet.boxes import boxes_of
from dotleader.page.sheet.copies import copied, sheets_of_copies
from dotleader.page.sheet.cut_files import cut_file
from dotleader.page.sheet.cut_shapes import Cutting
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.reading import reading_pages
from dotleader.page.sheet.registration import registration_places
from dotleader.page.sheet.sheets import sheets
from dotleader.page.type.metrics import shown
from dotleader.page.type.symbols import symbols_of
from dotleader.source.record import replace
from dotleader.tools.printing.making_up_sheet import making_up_pdf
from dotleader.tools.printing.manner import Manner, Planned, Printed
from dotleader.tools.printing.print_selection import refuse_missing
from dotleader.tools.printing.printed_names import BACKS, CUT_DXF, CUT_SVG, FRONTS, MAKING_UP, READING, SHEETS
from dotleader.tools.printing.printers import Printer
from dotleader.tools.printing.progress import Progress


def planned(
    handbook: Handbook, checklists: Sequence[LaidCard], manner: Manner, declared: DeclaredBook | None = None
) -> Planned:
    """The book laid out and imposed. `checklists` are the laid-out cards of the handbook.

    Where a book is `declared`, `handbook` has what is in it. Raises CannotRun where faces that are wanted are not.
    """
    book = make_book(handbook, laid_out(handbook, checklists), manner.draft, declared)
    if manner.wanted is not None:
        refuse_missing(book, manner.wanted)
        book = selected(book, manner.wanted)
    says, order, turning = _said_of(manner.printer), manner.order, manner.turning
    papers = tuple(sheets(book.faces, book.stock, manner.cutter_marks, says, order, turning))
    marks = registration_places(imposition(book.stock)) if manner.cutter_marks else ()
    cut = tuple(found for found in cuttings(papers, book.stock, marks=marks) if not found.is_empty)
    return Planned(book, papers, cut, tuple(handbook.punches))


def print_planned(plan: Planned, registration: str, manner: Manner) -> Printed:
    """The files of a planned book."""
    book, papers = plan.book, plan.papers
    count = sheets_of_copies(papers, manner.copies)
    progress = Progress("pages", len(book.faces) + 2 * count * (1 + manner.one_sided))
    subject = f"Reading copy, {registration}" if registration else "Reading copy"
    facts = PdfFacts(book.title, subject, "", duplex=None, scaling_none=False, colour=manner.colour)
    reading = _pdf(_reading(book), facts, progress.done)
    subject = f"Sheets to print at 100 %, on both sides, and to cut. {registration}".rstrip()
    facts = PdfFacts(book.title, subject, "", duplex=manner.turning, scaling_none=True, colour=manner.colour)
    to_cut = _pdf(_sheets(plan, manner), facts, _after(len(book.faces), progress.done))
    files = {READING: reading, SHEETS: to_cut}
    if manner.one_sided:
        done = len(book.faces) + 2 * count
        files |= _sides_apart(plan, manner, registration, _after(done, progress.done))
    progress.end()
    files |= _cut_files(plan.cuttings)
    files[MAKING_UP] = making_up_pdf(plan, registration, manner)
    return Printed(files, book, count, plan.cuttings)


def _sides_apart(plan: Planned, manner: Manner, registration: str, progress: Callable[[int], None]) -> dict[str, bytes]:
    """The pages of the sheets again, for a printer of one side: all fronts, all backs, in the same order."""
    facts = PdfFacts(plan.book.title, "", "", duplex="one-sided", scaling_none=True, colour=manner.colour)
    files = {}
    for which, (name, side) in enumerate(((FRONTS, "Fronts"), (BACKS, "Backs"))):
        before = which * sheets_of_copies(plan.papers, manner.copies)
        subject = f"{side} of the sheets, to print at 100 % on one side. {registration}".rstrip()
        pages = islice(_sheets(plan, manner), which, None, 2)
        files[name] = _pdf(pages, replace(facts, subject=subject), _after(before, progress))
    return files


def _after(before: int, progress: Callable[[int], None]) -> Callable[[int], None]:
    """A count that goes on where another one ended."""
    return lambda count: progress(before + count)


def _cut_files(found: tuple[Cutting, ...]) -> dict[str, bytes]:
    """The files to cut by, a pair for each arrangement."""
    files = {}
    for cutting in found:
        files[cut_file(cutting.number, CUT_SVG)] = cut_svg(cutting)
        files[cut_file(cutting.number, CUT_DXF)] = cut_dxf(cutting)
    return files


def laid_out(handbook: Handbook, checklists: Sequence[LaidCard]) -> Iterator[LaidCard]:
    """Every card with what explains it, and every text, in the order of the source."""
    frame, symbols = frame_of(handbook.stock), symbols_of(handbook)
    for card, laid in zip(handbook.cards, checklists, strict=True):
        yield laid
        amplified = lay_amplified(card, frame, symbols)
        if amplified is not None:
            yield amplified
    for essay in handbook.essays:
        yield lay_essay(essay, frame, symbols)


def _reading(book: Book) -> Iterator[PdfPage]:
    for page in reading_pages(book.faces, book.stock):
        yield PdfPage(page.width, page.height, page.items, label=page.label, outline=page.outline, name=page.label)


def _said_of(printer: Printer | None) -> tuple[str, ...]:
    """Whether backs are corrected and for which printer, from the longest saying to one that always has room."""
    if printer is None:
        return ("Not corrected for a printer.", "Not corrected.")
    name = shown(printer.name, Font.REGULAR)
    for_it = f"Corrected for {name}"
    return (f"{for_it}: {said(printer.moved)}.", f"{for_it}: {said_moved(printer.moved)}.", f"{for_it}.", "Corrected.")


def _sheets(plan: Planned, manner: Manner) -> Iterator[PdfPage]:
    """All copies. What a page is called stands in its label and in the outline: not every sheet has room to say it."""
    stock, printer = plan.book.stock, manner.printer
    righted = righting(printer.moved, stock.paper, manner.turning) if printer else None
    filed = {cutting.number for cutting in plan.cuttings}
    for paper in copied(plan.papers, manner.copies, filed):
        for side, name, right in zip(paper.sheet.sides, paper.names, (None, righted), strict=True):
            trim, bleed = boxes_of(side, stock)
            yield PdfPage(*stock.paper, side.items, trim, bleed, label=name, outline=((0, name),), righting=right)


def _pdf(pages: Iterator[PdfPage], facts: PdfFacts, progress: Callable[[int], None]) -> bytes:
    made = BytesIO()
    write_pdf(pages, facts, made, progress)
    return made.getvalue()
