"""The guides for punches whose stop has no scale, as large as they are, to be cut out of the sheet itself."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.bench.guide import Guide, guide_name, guides
from dotleader.page.bench.plan import Plan
from dotleader.page.bench.plan_drawing import draw_guide
from dotleader.page.bench.plan_words import punch_name
from dotleader.page.drawn import Drawn, mm
from dotleader.page.making_up.columns import Column
from dotleader.page.making_up.job import Job
from dotleader.page.making_up.plates import Plate
from dotleader.page.sheet.rulers import RULER, RULER_DEPTH, level_ruler
from dotleader.source.record import record, replace

_SIZE = 9_500
_WIDTH, _BESIDE = mm(125), mm(62)
"""Of the words above guides that lie, and beside those that stand."""

_AIR = mm(8)
_FREE = mm(8)
"""From the paper's edges to the ends of a guide that stands."""


@record
class GuidePage:
    """A page of guides; `bare` where they leave no room for its head and foot."""

    items: tuple[Drawn, ...]
    bare: bool


def guide_pages(job: Job, plate: Plate) -> tuple[GuidePage, ...]:
    """One for each punch that takes guides, and one more for guides that are too long to lie on the paper."""
    plans = [found for found in job.punchings if isinstance(found, Plan)]
    return tuple(page for plan in plans for page in _pages(plan, plate))


def _pages(plan: Plan, plate: Plate) -> Iterator[GuidePage]:
    made = list(enumerate(guides(plan)))
    lying = [(n, guide) for n, guide in made if guide.length <= plate.area.right - plate.area.left]
    standing = [(n, guide) for n, guide in made if (n, guide) not in lying]
    if lying:
        yield GuidePage(tuple(_lying(plan, plate, lying)), bare=False)
    if standing:
        yield GuidePage(tuple(_standing(plan, plate, standing)), bare=True)


def _lying(plan: Plan, plate: Plate, some: Sequence[tuple[int, Guide]]) -> Iterator[Drawn]:
    column = Column(plate.area.left, _WIDTH, _SIZE, plate.area.top)
    _said(column, plan)
    yield from column.items
    yield from level_ruler(plate.area.left, column.low + _AIR)
    top = column.low + _AIR + RULER_DEPTH
    for number, guide in some:
        top += _AIR
        yield replace(draw_guide(guide, number, plan.punch.stop_on_right), x=plate.area.left, y=top, role="guide")
        top += guide.height


def _standing(plan: Plan, plate: Plate, some: Sequence[tuple[int, Guide]]) -> Iterator[Drawn]:
    """Turned, their left ends below, from the right edge of the area leftwards."""
    column = Column(plate.area.left, _BESIDE, _SIZE, plate.area.top)
    _said(column, plan)
    left, room = plate.area.right, plate.height - 2 * _FREE
    for number, guide in some:
        if guide.length > room:
            column.sentence(
                f"Guide {guide_name(number)} is longer than this paper: draw it on a strip of its own, by the measures "
                "in the plan."
            )
            continue
        left -= guide.height
        drawn = draw_guide(guide, number, plan.punch.stop_on_right)
        yield replace(drawn, x=left, y=_FREE + (room + guide.length) // 2, turn=90, role="guide")
        left -= _AIR
    yield from column.items
    yield from level_ruler(plate.area.left, plate.area.bottom - RULER_DEPTH)


def _said(column: Column, plan: Plan) -> None:
    column.heading(f"To be cut out, for {punch_name(plan.punch)}")
    column.sentence(
        f"Print this page at 100 %: its ruler is {RULER // 1000} mm long. Cut the strips out along their outlines; "
        "stiff paper is better. The circles come under the holes of the punch."
    )
