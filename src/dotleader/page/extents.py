"""What drawn things cover: the rectangles of their ink, with groups and turns worked out. Whole micrometres.

Text is taken from its left edge to its right, from where the highest letters end to where the lowest do.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple, assert_never

from dotleader.page.drawn import Box, Drawn, Group, Line, Link, Picture, Text
from dotleader.page.type.metrics import ascent, descent, width


class Rect(NamedTuple):
    left: int
    top: int
    right: int
    bottom: int

    def inside(self, other: Rect) -> bool:
        return (
            other.left <= self.left
            and other.top <= self.top
            and self.right <= other.right
            and self.bottom <= other.bottom
        )

    def meets(self, other: Rect) -> bool:
        """Whether the two share an area; touching edges share none, and what has no area itself neither."""
        left, top, right, bottom = self.common(other)
        return left < right and top < bottom

    def common(self, other: Rect) -> Rect:
        """What the two share; empty or turned inside out where they share nothing."""
        return Rect(
            max(self.left, other.left),
            max(self.top, other.top),
            min(self.right, other.right),
            min(self.bottom, other.bottom),
        )


class Turned(NamedTuple):
    """From the coordinates of a group to those of what holds it: a turn in quarters, then a shift."""

    x: int = 0
    y: int = 0
    turn: int = 0

    def point(self, x: int, y: int) -> tuple[int, int]:
        """Turned counter-clockwise, with y downwards: a quarter takes (1, 0) to (0, -1)."""
        match self.turn % 360:
            case 0:
                return self.x + x, self.y + y
            case 90:
                return self.x + y, self.y - x
            case 180:
                return self.x - x, self.y - y
            case _:
                return self.x - y, self.y + x

    def rect(self, left: int, top: int, right: int, bottom: int) -> Rect:
        (x1, y1), (x2, y2) = self.point(left, top), self.point(right, bottom)
        return Rect(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))

    def then(self, group: Group) -> Turned:
        """For what stands in a group that stands here."""
        x, y = self.point(group.x, group.y)
        return Turned(x, y, (self.turn + group.turn) % 360)


HERE = Turned()


def extents(items: Iterable[Drawn], at: Turned = HERE) -> Iterator[tuple[Drawn, Rect]]:
    """Each thing that is no group, with what it covers in the coordinates of `at`; links have no ink."""
    for item in items:
        match item:
            case Group():
                yield from extents(item.items, at.then(item))
            case Link():
                pass
            case Text(x, y, string, size, font, _, turn, hollow):
                here = at.then(Group(x, y, (), turn))
                over = -(-hollow // 2)
                yield (
                    item,
                    here.rect(
                        -over,
                        -ascent(font, size) - over,
                        width(string, font, size) + over,
                        descent(font, size) + over,
                    ),
                )
            case Line(points, stroke):
                half = -(-stroke // 2)
                xs, ys = [x for x, _ in points], [y for _, y in points]
                # The ends of a stroke are square and flush; what turns reaches half a stroke past its corners.
                straight = len(points) == 2 and not item.closed and not item.dots
                across = 0 if straight and ys[0] == ys[-1] else half
                along = 0 if straight and xs[0] == xs[-1] else half
                yield item, at.rect(min(xs) - across, min(ys) - along, max(xs) + across, max(ys) + along)
            case Box(x, y, w, h, _, stroke):
                half = -(-stroke // 2)
                yield item, at.rect(x - half, y - half, x + w + half, y + h + half)
            case Picture(x, y, w, h):
                yield item, at.rect(x, y, x + w, y + h)
            case _ as never:
                assert_never(never)
