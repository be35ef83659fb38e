"""The pages of the making-up sheet: the bench first, then the leaves in their order, then guides to cut out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.page.drawn import Drawn, mm
from dotleader.page.making_up.bench_part import bench_part
from dotleader.page.making_up.collating import Grid, draw_leaves, grid_for
from dotleader.page.making_up.columns import Column
from dotleader.page.making_up.guide_part import guide_pages
from dotleader.page.making_up.job import Job
from dotleader.page.making_up.plates import Plate, plate_for, surround
from dotleader.source.record import record

_SIZE = 9_000
_ABOVE = mm(7)
_BELOW = mm(2)

_ORDER = "The order of binding, the first leaf on the top: front and back of each, with their labels."


@record
class MadePage:
    """One page, to be printed at 100 %."""

    width: int
    height: int
    items: tuple[Drawn, ...]


@record
class _Order:
    """How the leaves are drawn, and what stands above them; `shared` where they begin on the bench's last page."""

    grid: Grid
    above: tuple[Drawn, ...]
    shared: bool


def making_up(job: Job) -> Iterator[MadePage]:
    """The pages; leaves are drawn only when their page is asked for."""
    plate = plate_for(job.book.stock)
    bench = bench_part(job, plate)
    order = _order(job, plate, bench[-1].low)
    guides = guide_pages(job, plate)
    count = len(bench) + len(order.grid.pages) - order.shared + len(guides)
    for number, items in enumerate(_bodies(job, plate, [body.items for body in bench], order), start=1):
        around = surround(plate, job.book.title, job.registration, number, count)
        yield MadePage(plate.width, plate.height, (*around, *items))
    for number, page in enumerate(guides, start=count - len(guides) + 1):
        around = surround(plate, job.book.title, job.registration, number, count)
        yield MadePage(plate.width, plate.height, page.items if page.bare else (*around, *page.items))


def _bodies(job: Job, plate: Plate, bench: list[tuple[Drawn, ...]], order: _Order) -> Iterator[Iterable[Drawn]]:
    """The bench and the leaves in their order."""
    places = range(len(order.grid.pages))
    first, *others = (draw_leaves(order.grid, place, job.book.faces, job.book.stock, plate.area) for place in places)
    if order.shared:
        yield from bench[:-1]
        yield (*bench[-1], *order.above, *first)
    else:
        yield from bench
        yield (*order.above, *first)
    yield from others


def _order(job: Job, plate: Plate, low: int) -> _Order:
    """Below the bench part where there is room, else from a page of its own on."""
    stock, area = job.book.stock, plate.area
    below = _intro(plate, low + _ABOVE, _ORDER)
    grid = grid_for(job.leaves, stock, area, below.low + _BELOW, own_page=False)
    if grid is not None:
        return _Order(grid, tuple(below.items), shared=True)
    above = _intro(plate, area.top, _ORDER)
    grid = grid_for(job.leaves, stock, area, above.low + _BELOW, own_page=True)
    if grid is not None and len(grid.pages) > 1:
        above = _intro(plate, area.top, f"{_ORDER} They take {len(grid.pages)} pages.")
        grid = grid_for(job.leaves, stock, area, above.low + _BELOW, own_page=True)
    assert grid is not None  # pages of their own always do
    return _Order(grid, tuple(above.items), shared=False)


def _intro(plate: Plate, top: int, said: str) -> Column:
    column = Column(plate.area.left, plate.area.right - plate.area.left, _SIZE, top)
    column.heading("Collating order")
    column.sentence(said)
    return column
