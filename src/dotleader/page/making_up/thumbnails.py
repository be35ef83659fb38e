"""A face as small as a thumbnail, inside the outline of its leaf, with its holes.

It is the finished face itself, scaled down, but for what cannot be told at that size or is on every face: the dots of
leaders, the words of head and foot.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Group, Line, Text, mm, pt
from dotleader.page.extents import Rect
from dotleader.page.face.faces import Face
from dotleader.page.face.placement import Side
from dotleader.page.face.thumb_index import section_slot
from dotleader.page.imposition import Slot
from dotleader.page.making_up.scaled import Scale, scaled
from dotleader.page.sheet.holes import hole_centres
from dotleader.page.sheet.stepped import Stepped

_ALIKE = frozenset(("head", "foot", "issue"))
"""Groups of which only rules are drawn."""

_OUTLINE = pt(0.35)
FINEST = pt(0.2)
"""Of all strokes: a printer loses finer ones."""


def thumbnail(face: Face, stock: Stock, scale: Scale) -> Group:
    """The face as it is read, from its upper left corner, inside the outline of the leaf."""
    items: list[Drawn] = []
    for group in face.groups:
        if face.blank and group.role == "body":
            continue
        shown = scaled(_shown(group, stock), scale)
        items.append(Group(scale.of(group.x), scale.of(group.y), tuple(shown), group.turn, group.role))
    items.extend(_holes(face, stock, scale))
    items.append(_outline(face, stock, scale))
    return Group(0, 0, tuple(items), role="thumbnail")


def _shown(group: Group, stock: Stock) -> Iterable[Drawn]:
    if group.role == "edge":
        return _within(stock, group.items)
    if group.role in _ALIKE:
        return [item for item in group.items if not isinstance(item, Text)]
    return [item for item in group.items if not (isinstance(item, Line) and item.dots)]


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
