"""Drawn things at another size."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple, assert_never

from dotleader.page.drawn import Box, Drawn, Group, Line, Link, Picture, Text
from dotleader.source.record import replace


class Scale(NamedTuple):
    """`part` of `whole`: lengths are cut to whole micrometres towards the upper left, sizes of type to thousandths.

    No stroke becomes finer than `finest`.
    """

    part: int
    whole: int
    finest: int = 0

    def of(self, length: int) -> int:
        return length * self.part // self.whole

    def stroke(self, width: int) -> int:
        return max(self.finest, width * self.part // self.whole) if width else 0


def scaled(items: Iterable[Drawn], scale: Scale) -> Iterator[Drawn]:
    """All of it but links, which lead nowhere on paper."""
    part, whole, _ = scale
    stroke = scale.stroke
    for item in items:
        match item:
            case Text(x, y, string, size, font, ink, turn, hollow):
                x, y, size = x * part // whole, y * part // whole, size * part // whole
                yield Text(x, y, string, size, font, ink, turn, stroke(hollow))
            case Line(points, width, closed, fill, ink, dots):
                moved = tuple([(x * part // whole, y * part // whole) for x, y in points])
                yield Line(moved, stroke(width), closed, fill, ink, dots * part // whole)
            case Box(x, y, w, h, fill, width, radius):
                x, y, w, h = x * part // whole, y * part // whole, w * part // whole, h * part // whole
                yield Box(x, y, w, h, fill, stroke(width), radius * part // whole)
            case Picture(x, y, w, h):
                yield replace(item, x=scale.of(x), y=scale.of(y), w=scale.of(w), h=scale.of(h))
            case Group(x, y, inside, turn, role):
                yield Group(x * part // whole, y * part // whole, tuple(scaled(inside, scale)), turn, role)
            case Link():
                pass
            case _ as never:
                assert_never(never)
