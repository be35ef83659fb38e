"""Rows on their faces: where each comes, and everything drawn."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from dotleader.page.drawn import Drawn, Font, Line
from dotleader.page.laid import Frame, LaidFace
from dotleader.page.lay.heads import Head, body_space, carried
from dotleader.page.lay.inking import Placed, ink_row, slots_of
from dotleader.page.lay.measures import (
    ARROW,
    ARROW_GAP,
    BODY_GAP,
    FOOT,
    MEMORY_PAD,
    RAIL,
    Setting,
    base_in_slot,
    slot,
)
from dotleader.page.lay.memory_box import memory_box
from dotleader.page.lay.notices import notice_box
from dotleader.page.lay.outline import Ending, NoticeLine, Outline, Rail, Sign
from dotleader.page.lay.railing import rail_lines
from dotleader.page.lay.rows import Row
from dotleader.page.lay.setting import right_of
from dotleader.page.lay.signs import arrow
from dotleader.page.lay.turning import height_of, tops_of, turns
from dotleader.page.type.breaking import length, line_width, set_line
from dotleader.page.type.metrics import cap_height
from dotleader.page.type.words import plain_words
from dotleader.source.record import record

_CONTINUED = plain_words("continued", Font.BOLD)


@record
class Matter:
    """All that a card prints at one size: `rows` are those of the head and of the body, one below the other.

    `spans` are the first and last row of each part of the outline.
    """

    head: Head
    rows: tuple[Row, ...]
    outline: Outline
    setting: Setting
    spans: dict[int, tuple[int, int]]


def matter_of(head: Head, body: Sequence[Row], outline: Outline, setting: Setting) -> Matter:
    rows = (*head.rows, *body)
    spans: dict[int, tuple[int, int]] = {}
    for at, row in enumerate(rows):
        spans[row.part] = (spans.get(row.part, (at, at))[0], at)
    return Matter(head, rows, outline, setting, spans)


def height_at(matter: Matter, air: int) -> int:
    """How high it would be on one endless face."""
    return height_of(matter.rows, tops_of(matter.rows, air), 0, len(matter.rows))


def starts_at(matter: Matter, frame: Frame, air: int) -> list[int]:
    """The first row of each face."""

    def head(at: int) -> int:
        again = [row for _, rows in carried(_going_on(matter, at), matter.setting) for row in rows]
        return body_space(matter.head.again) + (body_space(again) if again else 0)

    tops = tops_of(matter.rows, air)
    foot = slot(matter.setting.small) + BODY_GAP
    return turns(matter.rows, tops, frame.bottom - frame.top, foot, head)


def compose(matter: Matter, frame: Frame, air: int, starts: Sequence[int]) -> tuple[LaidFace, ...]:
    """Each face drawn; `starts` are the first rows of the faces."""
    tops = tops_of(matter.rows, air)
    ends = [*starts[1:], len(matter.rows)]
    return tuple(_face(matter, frame, tops, start, end) for start, end in zip(starts, ends, strict=True))


def _face(matter: Matter, frame: Frame, tops: Sequence[int], start: int, end: int) -> LaidFace:
    above, rails_from, top = _above(matter, frame, start)
    rows = matter.rows[start:end]
    body = [Placed(row, tops[start + at] - tops[start] + top) for at, row in enumerate(rows)]
    items: list[Drawn] = [drawn for one in above for drawn in ink_row(one)]
    under = _under(matter, body, start)
    for at, one in enumerate(body):
        items.extend(under[at])
        items.extend(ink_row(one))
    items.extend(_rails(matter, body, start, rails_from))
    if end < len(matter.rows):
        items.extend(_continued(frame, matter.setting.small))
    placed = [*above, *body]
    says = tuple(line for one in placed for line in one.row.says)
    if end < len(matter.rows):
        says = (*says, "continued")
    return LaidFace(tuple(items), tuple(slots_of(placed)), says)


def _above(matter: Matter, frame: Frame, start: int) -> tuple[list[Placed], dict[Rail, int], int]:
    """What a further face repeats, where the rules of its conditions begin, and where the body does."""
    if not start:
        return [], {}, frame.top
    placed: list[Placed] = []
    y = frame.top
    for row in matter.head.again:
        placed.append(Placed(row, y))
        y += row.height
    y += BODY_GAP
    going_on = _going_on(matter, start)
    rails_from: dict[Rail, int] = {}
    for rail, rows in carried(going_on, matter.setting):
        for row in rows:
            placed.append(Placed(row, y))
            y += row.height
        rails_from[rail] = y
    y += BODY_GAP if rails_from else 0
    return placed, {rail: rails_from.get(rail, y) for rail in going_on}, y


def _going_on(matter: Matter, start: int) -> list[Rail]:
    """The branches that a face beginning with that row is inside of, the outer one first."""
    spans = matter.spans
    found = [r for r in matter.outline.rails if spans[r.head][1] < start <= spans[r.last][1]]
    return sorted(found, key=lambda rail: rail.level)


def _under(matter: Matter, body: Sequence[Placed], start: int) -> defaultdict[int, list[Drawn]]:
    """What is drawn under the rows, by the first of them on this face: boxes with their ground and labels."""
    setting, spans = matter.setting, matter.spans
    under: defaultdict[int, list[Drawn]] = defaultdict(list)

    def on_face(first: int, last: int) -> tuple[int, Sequence[Placed]]:
        at = max(0, first - start)
        return at, body[at : last + 1 - start] if last >= start else ()

    for box in matter.outline.boxes:
        first = spans[box.first][0]
        at, rows = on_face(first, spans[box.last][1])
        if rows:
            left = setting.left(box.level) - MEMORY_PAD if box.level else 0
            under[at].extend(memory_box(rows, left, setting.width, opened=first >= start))
    for number in {one.row.part for one in body if one.row.part >= 0}:
        part = matter.outline.parts[number]
        if isinstance(part.what, NoticeLine):
            first, last = spans[number]
            at, rows = on_face(first, last)
            whole = (first >= start, last < start + len(body))
            edges = (setting.left(part.level), right_of(part, setting))
            under[at].extend(notice_box(part.what.word, rows, edges, setting.small, whole))
    return under


def _rails(matter: Matter, body: Sequence[Placed], start: int, rails_from: dict[Rail, int]) -> Iterator[Drawn]:
    setting, spans = matter.setting, matter.spans
    footed: set[int] = set()
    for rail in matter.outline.rails:
        head, last = spans[rail.head][1], spans[rail.last][1]
        inside = body[max(0, head + 1 - start) : max(0, last + 1 - start)]
        if not inside:
            continue
        begin = body[head - start].bottom if head >= start else rails_from[rail]
        ended = last < start + len(body)
        yield from rail_lines(rail, begin, inside, ended, setting)
        if ended and rail.ending in (Ending.END, Ending.BACK):
            footed.add(rail.last)
    for one in body:
        part = matter.outline.parts[one.row.part] if one.row.part >= 0 else None
        if part and isinstance(part.what, Sign) and one.row.part not in footed:
            y = one.bottom - RAIL // 2
            yield Line(((setting.left(part.level), y), (one.row.end + FOOT, y)), RAIL)


def _continued(frame: Frame, size: int) -> Iterator[Drawn]:
    """At the lower right of a face that goes on."""
    base = frame.bottom - slot(size) + base_in_slot(size)
    start = frame.width - ARROW
    x = start - ARROW_GAP - length(line_width(_CONTINUED), size)
    yield from set_line(_CONTINUED, x, base, size)
    yield from arrow(start, frame.width, base - cap_height(Font.BOLD, size) // 2)
