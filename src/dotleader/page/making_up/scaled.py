"""Drawn things at another size."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple, assert_never

from dotleader.page.drawn import Box, Drawn, Group, Line, Link, Picture, Text
from dotleader.source.record import replace


class Scale(NamedTuple):
    """`part` of `whole`: lengths are cut to whole micrometres towards the upper left, sizes of type to thousandths."""

    part: int
    whole: int

    def of(self, length: int) -> int:
        return length * self.part // self.whole


def scaled(items: Iterable[Drawn], scale: Scale) -> Iterator[Drawn]:
    """All of it but links, which lead nowhere on paper."""
    of = scale.of
    for item in items:
        match item:
            case Text(x, y, _, size):
                yield replace(item, x=of(x), y=of(y), size=of(size), hollow=of(item.hollow))
            case Line(points, stroke):
                moved = tuple((of(x), of(y)) for x, y in points)
                yield replace(item, points=moved, width=of(stroke), dots=of(item.dots))
            case Box(x, y, w, h):
                yield replace(item, x=of(x), y=of(y), w=of(w), h=of(h), stroke=of(item.stroke), radius=of(item.radius))
            case Picture(x, y, w, h):
                yield replace(item, x=of(x), y=of(y), w=of(w), h=of(h))
            case Group(x, y, inside):
                yield replace(item, x=of(x), y=of(y), items=tuple(scaled(inside, scale)))
            case Link():
                pass
            case _ as never:
                assert_never(never)
