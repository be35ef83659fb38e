"""`dotleader print --calibration`: the sheet by which it is read how far a printer's backs are out of register."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from io import BytesIO

from dotleader.handbook.stocks.sizes import SIZES
from dotleader.output.pdf import PdfFacts, PdfPage, write_pdf
from dotleader.page.sheet.alignment import righting, said
from dotleader.page.sheet.calibration import calibration
from dotleader.page.sheet.duplex import Turning, edge_said
from dotleader.report.glyphs import escaped
from dotleader.report.terminal import terminal_for
from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.files import shown_name
from dotleader.tools.printing.in_lines import in_lines
from dotleader.tools.printing.printed_folder import ELSEWHERE, refuse_no_folder
from dotleader.tools.printing.printed_names import CALIBRATION
from dotleader.tools.printing.printers import Printer
from dotleader.tools.saying import say
from dotleader.tools.writing import put_file

_OURS = b"(Calibration sheet of Dotleader)"


def print_calibration(folder: str, paper: str, printer: Printer | None, turning: Turning = "long-edge") -> None:
    """Write the sheet into a folder; for a printer, its back is corrected, to see what is left. Raises CannotRun."""
    data = calibration_pdf(paper, printer, turning)
    path = os.path.join(folder, CALIBRATION)
    refuse_no_folder(folder)
    try:
        os.makedirs(folder or ".", exist_ok=True)
        if os.path.lexists(path) and not _is_ours(path):
            raise CannotRun(
                f"`{shown_name(path)}` is there, and is no calibration sheet of dotleader.",
                "Move it away, or print into another folder with `--to`.",
            )
        put_file(path, data)
    except OSError as error:
        raise CannotRun(f"`{shown_name(path)}` cannot be written: {because(error)}.", ELSEWHERE) from error
    say((f"{escaped(shown_name(path), terminal_for(sys.stdout, os.environ))}  2 sides of a sheet of {paper}", ""))
    say(in_lines(_how(printer, turning)))


def calibration_pdf(paper: str, printer: Printer | None, turning: Turning = "long-edge") -> bytes:
    """The sheet as a file: a front and a back."""
    size = SIZES[paper]
    corrected = f"{printer.name} ({said(printer.moved)})" if printer else ""
    front, back = calibration(size, paper, corrected, turning)
    turned = righting(printer.moved, size, turning) if printer else None
    pages = (PdfPage(*size, front, label="front"), PdfPage(*size, back, label="back", righting=turned))
    facts = PdfFacts(
        "Calibration sheet of Dotleader",
        f"To print at 100 %, on both sides of one sheet, turned on the {edge_said(turning)}.",
        "",
        duplex=turning,
        scaling_none=True,
    )
    made = BytesIO()
    write_pdf(pages, facts, made)
    return made.getvalue()


def _is_ours(path: str) -> bool:
    with open(path, "rb") as file:
        return _OURS in file.read()


def _how(printer: Printer | None, turning: Turning) -> Iterator[str]:
    if printer:
        yield f"Its back is corrected for {printer.name} ({said(printer.moved)}): every scale should read 0."
        yield f"What is left is added: `dotleader printer set {printer.name} --further` with the numbers."
    else:
        yield "Its back is not corrected for any printer. The sheet says how it is read and what is typed then."
    yield f"In the print dialogue: actual size (100 %), on both sides, turned on the {edge_said(turning)}."
