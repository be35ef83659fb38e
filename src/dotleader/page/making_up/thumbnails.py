"""A face as small as a thumbnail: its own bands, boxes, rules and tabs to scale, its lines of text as strokes.

Text that would be too small to be read is not set: a stroke stands for it, as long as it is, thicker where it is bold.
What stands in a row without a gap is one stroke; the dots of leaders are left out, so that challenges and responses
show as two columns. Of head and foot, which all faces have, only rules and tab are drawn,
and of what is shorter than a word nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import assert_never

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Font, Group, Line, Link, Picture, Text, mm, pt
from dotleader.page.extents import Rect, Turned
from dotleader.page.face.faces import Face
from dotleader.page.face.placement import Side
from dotleader.page.face.thumb_index import section_slot
from dotleader.page.imposition import Slot
from dotleader.page.making_up.scaled import Scale, scaled
from dotleader.page.sheet.sheet_marks import hole_centres
from dotleader.page.sheet.stepped import Stepped
from dotleader.page.type.metrics import width as width_of
from dotleader.page.type.metrics import x_height

_ALIKE = frozenset(("head", "label", "foot", "issue"))

READABLE = 4_000
"""Text that comes out smaller than this is drawn as a stroke."""

_OUTLINE = pt(0.35)
_FINEST = pt(0.2)
_GRAIN = 20
_JOINED = mm(2.5)
"""On the face: words nearer to each other are one stroke."""

_SHORTEST = mm(4)
"""On the face: shorter words by themselves, such as the numbers of items, are left out."""

_WEIGHT = {Font.REGULAR: 45, Font.BOLD: 80}
"""How thick a stroke is, in per cent of the height of small letters."""


def thumbnail(face: Face, stock: Stock, scale: Scale) -> Group:
    """The face as it is read, from its upper left corner, inside the outline of the leaf."""
    items: list[Drawn] = []
    for group in face.groups:
        inside = group.items
        if face.blank and group.role == "body":
            continue
        if group.role == "edge":
            inside = tuple(_within(stock, inside))
        elif group.role in _ALIKE:
            inside = tuple(item for item in inside if not isinstance(item, Text))
        items.append(Group(scale.of(group.x), scale.of(group.y), tuple(_sketch(inside, scale)), group.turn))
    items.extend(_holes(face, stock, scale))
    items.append(_outline(face, stock, scale))
    return Group(0, 0, tuple(items), role="thumbnail")


def _outline(face: Face, stock: Stock, scale: Scale) -> Line | Box:
    """Of the leaf, its tab with it where that is cut out."""
    width, height = stock.leaf
    if not stock.recess:
        return Box(0, 0, scale.of(width), scale.of(height), stroke=_OUTLINE, radius=scale.of(stock.corner_radius))
    slot, bounds = Slot(0, 0, width, height, 0), Rect(0, 0, width, height)
    path = Stepped(stock, slot, section_slot(face.label.section), bounds).outline()
    points = [path.start, *((part.x, part.y) for part in path.parts)]
    if face.side is Side.BACK:
        points = [(width - x, y) if stock.bound_at == "left" else (x, height - y) for x, y in points]
    return Line(tuple((scale.of(x), scale.of(y)) for x, y in points), _OUTLINE, closed=True)


def _within(stock: Stock, items: Iterable[Drawn]) -> Iterator[Drawn]:
    """What stands at the edge, without its bleed."""
    width, height = stock.leaf
    for item in items:
        if isinstance(item, Box):
            left, top = max(0, item.x), max(0, item.y)
            right, bottom = min(width, item.x + item.w), min(height, item.y + item.h)
            yield Box(left, top, right - left, bottom - top, item.fill, item.stroke, item.radius)
        else:
            yield item


def _sketch(items: Iterable[Drawn], scale: Scale) -> Iterator[Drawn]:
    run: Text | None = None
    end = 0
    for item in items:
        if isinstance(item, Text) and not item.hollow and scale.of(item.size) < READABLE:
            if run is not None and _goes_on(run, end, item):
                end = item.x + width_of(item.string, item.font, item.size)
                continue
            yield from _stroke(run, end, scale)
            run, end = item, item.x + width_of(item.string, item.font, item.size)
            continue
        yield from _stroke(run, end, scale)
        run = None
        yield from _small(item, scale)
    yield from _stroke(run, end, scale)


def _goes_on(run: Text, end: int, text: Text) -> bool:
    """Whether a text stands behind a run on its line; a subscript stands a little lower."""
    same = text.ink is run.ink and text.font is run.font and not text.turn and not run.turn
    return same and abs(text.y - run.y) < _JOINED // 2 and 0 <= text.x - end < _JOINED


def _stroke(run: Text | None, end: int, scale: Scale) -> Iterator[Line]:
    """In the middle of the small letters, from the left edge of a run to its end; nothing for what would be a speck."""
    if run is None or end - run.x < _SHORTEST:
        return
    high, long = x_height(run.font, run.size), end - run.x
    (x1, y1), (x2, y2) = (run.x, run.y - high // 2), (end, run.y - high // 2)
    if run.turn:
        turned = Turned(run.x, run.y, run.turn)
        (x1, y1), (x2, y2) = turned.point(0, -high // 2), turned.point(long, -high // 2)
    thick = max(_FINEST, scale.of(high) * _WEIGHT[run.font] // 100)
    yield Line(((_place(x1, scale), _place(y1, scale)), (_place(x2, scale), _place(y2, scale))), thick, ink=run.ink)


def _place(length: int, scale: Scale) -> int:
    """In whole fiftieths of a millimetre, which nobody sees: a place that came up before is written quickly."""
    return length * scale.part // scale.whole // _GRAIN * _GRAIN


def _small(item: Drawn, scale: Scale) -> Iterator[Drawn]:
    of = scale.of
    match item:
        case Text():
            yield from scaled((item,), scale)
        case Line(points, stroke):
            if not item.dots:
                moved = tuple((of(x), of(y)) for x, y in points)
                yield Line(moved, max(of(stroke), _FINEST) if stroke else 0, item.closed, item.fill, item.ink)
        case Box(x, y, w, h, fill, stroke):
            yield Box(of(x), of(y), of(w), of(h), fill, max(of(stroke), _FINEST) if stroke else 0, of(item.radius))
        case Group(x, y, inside):
            yield Group(of(x), of(y), tuple(_sketch(inside, scale)), item.turn)
        case Picture() | Link():
            pass
        case _ as never:
            assert_never(never)


def _holes(face: Face, stock: Stock, scale: Scale) -> Iterator[Line]:
    """Dots: a circle takes as long to draw as ten lines of text, and a row of dots is one line."""
    across = max(scale.of(stock.hole_diameter) * 2 // 3, 2 * _OUTLINE)
    centres = [(scale.of(x), scale.of(y)) for x, y in hole_centres(stock, face.side)]
    apart = {max(abs(b[0] - a[0]), abs(b[1] - a[1])) for a, b in pairwise(centres)}
    if centres and apart and max(apart) - min(apart) <= 1:
        yield Line((centres[0], centres[-1]), across, dots=min(apart))
    else:
        for centre in centres:
            yield Line((centre, centre), across, dots=mm(1))
