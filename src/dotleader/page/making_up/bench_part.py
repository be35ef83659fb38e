"""What the bench is told: what is needed, the work in words, its checklist, and the punch drawn to scale.

Words stand on the left of the first page and the checklist on its right, with the words for the punch below it where
that lets all be larger, and the drawing of its strokes below both. Where that is too much for one page, punching goes
to the next, and after it whatever finds no room in the smallest type that is used.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeAlias

from dotleader.handbook.stocks.measures import open_size
from dotleader.page.bench.plan import Plan
from dotleader.page.bench.plan_drawing import draw_plan, drawn_height
from dotleader.page.drawn import Drawn, Font, Group, mm
from dotleader.page.extents import extents
from dotleader.page.frames import frame_of
from dotleader.page.laid import Frame, LaidCard
from dotleader.page.making_up.amounts import counted, size_said
from dotleader.page.making_up.columns import Column
from dotleader.page.making_up.job import Job
from dotleader.page.making_up.needs import needs
from dotleader.page.making_up.plates import Plate
from dotleader.page.making_up.scaled import Scale, scaled
from dotleader.page.making_up.steps import Work, binding, punch_works, works
from dotleader.page.making_up.work import work_card
from dotleader.page.type.breaking import balanced, length, room_of, set_line
from dotleader.page.type.metrics import ascent, shown
from dotleader.page.type.words import plain_words
from dotleader.source.record import record, replace

SIZES = (9_500, 9_000, 8_500, 8_000)
"""Of the words. At 450 mm from the eye the capitals of 8.5 subtend 16 minutes of arc (NUREG-0700, 1.3.1-4)."""

_TITLE, _ABOUT = 18_000, 10_500
_TITLE_LINES = 2
"""Of a longer title; the title face has all of it."""

_UNDER_TITLE = mm(5)
_BETWEEN = mm(9)
_UNDER_CARD = mm(6)
_DRAWING_ABOVE = mm(6)
_NARROWEST_DRAWING = mm(25)
_READING_WIDTH = mm(125)
"""Of words that have a page to themselves: longer lines are lost on the way back."""

_Works: TypeAlias = tuple[Work, ...]

CARD = Scale(72, 100)
"""The checklist is laid out as large as on a leaf and then made smaller: 12 becomes 8.6."""


@record
class Body:
    """The matter of a page; `low` is where it ends."""

    items: tuple[Drawn, ...]
    low: int


@record
class _Division:
    """What stands on the left of the first page, what below the checklist, and what after that page."""

    left: _Works
    right: _Works
    after: _Works


def bench_part(job: Job, plate: Plate) -> tuple[Body, ...]:
    """One page, or more where there is much to say."""
    for divisions in _divided(tuple(works(job)), punch_works(job), binding(job)):
        for size in SIZES:
            for division in divisions:
                page = _first_page(job, plate, division, size)
                if page is not None:
                    return (page, *_further(plate, division.after))
    raise AssertionError("what is needed fits on a page by itself, with the checklist beside it")


def _divided(before: _Works, punching: _Works, last: Work) -> Iterator[tuple[_Division, ...]]:
    """The best first; of those that are equally good the one that comes with the larger type."""
    whole = _Division((*before, *punching, last), (), ())
    yield (whole, _Division((*before, last), punching, ())) if punching else (whole,)
    if any(work.plan for work in punching):
        on_next = Work("Punch", ("The next page has the strokes that make the holes.",))
        yield (_Division((*before, on_next, last), (), punching),)
    for kept in range(len(before), -1, -1):
        yield (_Division(before[:kept], (), (*before[kept:], *punching, last)),)


def _first_page(job: Job, plate: Plate, division: _Division, size: int) -> Body | None:
    """None where it does not fit."""
    area = plate.area
    wide = area.right - area.left
    half = (wide - _BETWEEN) // 2
    title, top = _title(job, plate)
    words = Column(area.left, half, size, top)
    _need(job, words)
    _set(words, division.left)
    plans = [work.plan for work in (*division.left, *division.right) if work.plan]
    room = area.bottom - sum(_DRAWING_ABOVE + drawn_height(plan, wide) for plan in plans)
    below = Column(area.right - half, half, size, 0)
    _set(below, division.right)
    if words.low > room or top + below.low > room:
        return None
    apart = _UNDER_CARD if division.right else 0
    card = work_card(job, _frame(job, half, room - top - below.low - apart))
    if len(card.faces) > 1:
        return None
    beside = _card(card, area.right - half, top)
    low = max(rect.bottom for _, rect in extents((beside,)))
    items = [*title, *words.items, beside, Group(0, low + apart, tuple(below.items))]
    low = max(words.low, low + apart + below.low)
    for plan in plans:
        items.append(_drawing(plan, wide, area.left, low + _DRAWING_ABOVE))
        low += _DRAWING_ABOVE + drawn_height(plan, wide)
    return Body(tuple(items), low)


def _further(plate: Plate, moved: Sequence[Work]) -> Iterator[Body]:
    """What the first page had no room for, each plan with its drawing below it."""
    area = plate.area
    column = Column(area.left, _READING_WIDTH, SIZES[0], area.top)
    for work in moved:
        words = _height(work, column)
        wide = _small_enough(work.plan, area.right - area.left, area.bottom - area.top - words) if work.plan else 0
        high = words + (drawn_height(work.plan, wide) if work.plan else 0)
        if column.items and column.low + high > area.bottom:
            yield Body(tuple(column.items), column.low)
            column = Column(area.left, _READING_WIDTH, SIZES[0], area.top)
        _set(column, (work,))
        if work.plan:
            column.items.append(_drawing(work.plan, wide, area.left, column.low + _DRAWING_ABOVE))
            column.low += _DRAWING_ABOVE + drawn_height(work.plan, wide)
    if column.items:
        yield Body(tuple(column.items), column.low)


def _height(work: Work, like: Column) -> int:
    tried = Column(like.left, like.width, like.size, 0, list(like.items[:1]))
    _set(tried, (work,))
    return tried.low + (_DRAWING_ABOVE if work.plan else 0)


def _title(job: Job, plate: Plate) -> tuple[list[Drawn], int]:
    """The book and what of it there is; and where the matter below begins."""
    items: list[Drawn] = []
    low, wide = plate.area.top, plate.area.right - plate.area.left
    for text, font, size in ((job.book.title, Font.BOLD, _TITLE), (_about(job), Font.REGULAR, _ABOUT)):
        lines = balanced(plain_words(shown(text, font), font), room_of(wide, size))
        if len(lines) > _TITLE_LINES:
            lines[_TITLE_LINES - 1 :] = [(*lines[_TITLE_LINES - 1][:-1], *plain_words("…", font))]
        for line in lines:
            items.extend(set_line(line, plate.area.left, low + ascent(font, size), size))
            low += length(1_250, size)
    return items, low + _UNDER_TITLE


def _about(job: Job) -> str:
    stock = job.book.stock
    if stock.folded:
        made = f"{counted(job.pieces, 'folded card')} of {size_said(stock.leaf)}, open {size_said(open_size(stock))}"
    else:
        made = f"{counted(job.leaves, 'leaf', 'leaves')} of {size_said(stock.leaf)}"
    said = [made, counted(len(job.book.faces), "face")]
    if job.copies > 1:
        said.append(f"{job.copies} copies")
    if job.part:
        said.append("a part of the book, with the labels of all of it")
    if not job.colour:
        said.append("black only")
    draft = " A draft with errors: not for use." if job.draft else ""
    return f"{', '.join(said)}.{draft}"


def _need(job: Job, column: Column) -> None:
    rows = tuple(needs(job))
    column.heading("What is needed")
    labels = column.labels_width([label for label, _ in rows])
    for label, said in rows:
        column.row(label, said, labels)


def _set(column: Column, some: Sequence[Work]) -> None:
    for work in some:
        column.heading(work.title)
        for sentence in work.sentences:
            column.sentence(sentence)


def _frame(job: Job, width: int, height: int) -> Frame:
    """Of the checklist, before it is made smaller; nothing in it leads to another card."""
    across, down = width * CARD.whole // CARD.part, height * CARD.whole // CARD.part
    return replace(frame_of(job.book.stock), width=across, height=down, top=0, bottom=down, smallest=0)


def _card(card: LaidCard, left: int, top: int) -> Group:
    return Group(left, top, tuple(scaled(card.faces[0].items, CARD)), role="checklist")


def _small_enough(plan: Plan, wide: int, high: int) -> int:
    """The width to draw a plan in so that it is not too high: a narrower one takes a smaller scale."""
    while drawn_height(plan, wide) > high and wide > _NARROWEST_DRAWING:
        wide = wide * 3 // 4
    return wide


def _drawing(plan: Plan, wide: int, left: int, top: int) -> Group:
    return replace(draw_plan(plan, wide), x=left, y=top, role="strokes")
