"""What has to lie on the bench before the work begins: only what this stock takes."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.fault import as_measured, millimetres
from dotleader.handbook.stocks.thickness import narrowest_ring, ring_capacity, stack_thickness
from dotleader.page.bench.plan_words import punch_name
from dotleader.page.making_up.amounts import film_said, paper_said, size_said
from dotleader.page.making_up.job import Job

_MOST_SAID = 60
"""Letters of the names of punches; longer lists are left to where the plans are."""


def needs(job: Job) -> Iterator[tuple[str, str]]:
    """Rows of what it is and how much of it, for all copies."""
    stock = job.book.stock
    yield "Paper", _paper(job)
    if job.filmed:
        yield (
            "Pouches",
            f"{_for_copies(job, job.leaves)} of {size_said(stock.pouch)}, matte, {film_said(stock.film)} on each side; "
            "some to spare",
        )
    thick = millimetres(stack_thickness(stock, job.leaves), up=True)
    if stock.rings or stock.holes:
        yield "Rings", _rings(job, thick)
    else:
        yield (
            "Pile",
            f"{thick} thick; no holes, so a clip or a kneeboard holds it" if not stock.folded else f"{thick} thick",
        )
    yield "Tools", "; ".join(_tools(job))


def _for_copies(job: Job, count: int) -> str:
    """A number, or for several copies the product."""
    return f"{count * job.copies}" if job.copies == 1 else f"{count * job.copies} ({job.copies} × {count})"


def _paper(job: Job) -> str:
    stock = job.book.stock
    rulers = int(job.set_up)
    of_leaves = len(job.papers) - rulers
    product = f" ({'1 + ' if rulers else ''}{job.copies} × {of_leaves})" if job.copies > 1 else ""
    sheets = f"{job.sheets}{product} {'sheet' if job.sheets == 1 else 'sheets'}"
    ruled = ", the sheet of rulers among them" if rulers else ""
    name = stock.paper_name if stock.paper_name[:1].isalpha() else size_said(stock.paper)
    return f"{sheets} of {name}{ruled}; {paper_said(stock.paper_thickness)}; some to spare"


def _rings(job: Job, thick: str) -> str:
    stock = job.book.stock
    rings = _for_copies(job, stock.rings or len(stock.holes))
    one = stock.rings or len(stock.holes)
    of = "ring" if one * job.copies == 1 else "rings"
    if stock.ring_width:
        held = millimetres(ring_capacity(stock))
        return (
            f"{rings} {of} of {as_measured(stock.ring_width)} inside; they hold {held}, and the pile is {thick} thick"
        )
    least = millimetres(narrowest_ring(stock, stack_thickness(stock, job.leaves)), up=True)
    return f"{rings} {of} of {least} or more inside; the pile is {thick} thick"


def _tools(job: Job) -> Iterator[str]:
    stock = job.book.stock
    if job.trimmed:
        yield "knife, steel rule and mat, or a machine that cuts by SVG or DXF"
    if stock.corner_radius:
        yield f"a corner rounder of {millimetres(stock.corner_radius)}"
    if stock.folded:
        yield "a blunt point to score folds"
    if job.filmed:
        yield f"a laminator for {millimetres(stock.pouch[0], up=True)} or wider"
    if stock.holes:
        names = [punch_name(found.punch) for found in job.punchings]
        yield " or ".join(names) if 0 < len(", ".join(names)) <= _MOST_SAID else _any_punch(job)
    yield "a ruler of your own"


def _any_punch(job: Job) -> str:
    if job.punchings:
        return "one of the punches that have a plan here"
    return f"a punch for holes of {millimetres(job.book.stock.hole_diameter)}"
