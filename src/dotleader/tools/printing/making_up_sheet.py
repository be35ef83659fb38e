"""`making-up.pdf`: a planned book as the sheet for the bench."""

from __future__ import annotations

from io import BytesIO
from typing import TYPE_CHECKING

from dotleader.output.pdf import PdfFacts, PdfPage, write_pdf
from dotleader.page.bench.nearest import punching
from dotleader.page.bench.punching import pattern_of
from dotleader.page.making_up.job import Job
from dotleader.page.making_up.making_up import making_up

if TYPE_CHECKING:
    from dotleader.tools.printing.manner import Manner, Planned


def making_up_pdf(plan: Planned, registration: str, manner: Manner) -> bytes:
    """The sheet as a file, to be printed at 100 % on one side or both."""
    job = job_of(plan, registration, manner)
    pages = (PdfPage(page.width, page.height, page.items) for page in making_up(job))
    subject = f"Making-up sheet, to print at 100 %. {job.registration}".rstrip()
    facts = PdfFacts(job.book.title, subject, "", duplex=None, scaling_none=True, colour=manner.colour)
    made = BytesIO()
    write_pdf(pages, facts, made)
    return made.getvalue()


def job_of(plan: Planned, registration: str, manner: Manner) -> Job:
    """What there is to make up."""
    stock = plan.book.stock
    pattern = pattern_of(stock)
    return Job(
        book=plan.book,
        registration=registration,
        papers=plan.papers,
        cuttings=plan.cuttings,
        punchings=tuple(punching(pattern, punch) for punch in plan.punches) if stock.holes else (),
        copies=manner.copies,
        order=manner.order,
        turning=manner.turning,
        one_sided=manner.one_sided,
        corrected=manner.printer.name if manner.printer else "",
        colour=manner.colour,
        draft=manner.draft is not None,
        part=manner.wanted is not None,
    )
