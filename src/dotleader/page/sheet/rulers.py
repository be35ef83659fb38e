"""The two rulers of a sheet, at right angles, by which it is seen that a printer keeps to the size. Hairlines.

They stand in the waste, so far from every mark that nobody takes a mark for one of their ticks.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from dotleader.handbook.stocks.measures import MARK_LENGTH, MARK_OFFSET
from dotleader.page.drawn import Drawn, Font, Line, Text, mm, pt
from dotleader.page.imposition import Imposition
from dotleader.page.sheet.cut_shapes import Point
from dotleader.page.type.metrics import cap_height, width
from dotleader.source.record import record

RULER = mm(100)
SHORT_RULER = mm(50)
"""Where there is no room for the other: half as long, and still good to see a change of size of 1 %."""

RULER_DEPTH = mm(6)
"""From a ruler's line to the far side of its figures."""

LEAST_AIR, AIR = mm(3), mm(8)
"""Between a ruler and the marks beside it: at least, and where there is room for it."""

_HAIRLINE = pt(0.25)
_FIGURES = 6_000
_UNDER_FIGURES = mm(0.65)
_TICKS = ((50, mm(3)), (10, mm(2)), (5, mm(1.2)))
_FROM_ENDS = mm(5)
"""Of the paper that can be printed, or of a side of a leaf between two of its marks."""


@record
class Rulers:
    """Where the upright one and the level one begin, and how long both are."""

    upright: Point
    level: Point
    length: int

    def drawn(self) -> Iterator[Drawn]:
        yield from upright_ruler(*self.upright, self.length)
        yield from level_ruler(*self.level, self.length)


@lru_cache(maxsize=64)
def rulers(laid: Imposition) -> Rulers | None:
    """Beside the leaves and below them, both as long as there is room for; None where there is none."""
    if laid.filling:
        return None
    return next((found for length in (RULER, SHORT_RULER) if (found := _of_length(laid, length))), None)


def ruler_length(laid: Imposition) -> int:
    """Of the rulers on sheets, or on a sheet of their own."""
    found = rulers(laid)
    return found.length if found else RULER


def _of_length(laid: Imposition, length: int) -> Rulers | None:
    first, last = laid.pieces[0], laid.pieces[-1]
    beside = _place(laid, length, first.left, laid.paper[1], (first.top, first.bottom))
    below = _place(laid, length, laid.paper[1] - last.bottom, laid.paper[0], (first.left, first.right))
    if beside is None or below is None:
        return None
    return Rulers(beside, (below[1], laid.paper[1] - below[0]), length)


def _place(laid: Imposition, length: int, waste: int, paper: int, side: tuple[int, int]) -> Point | None:
    """How far from the paper's edge a ruler's line stands, and where along the paper it begins.

    Beyond the crop marks, in the middle of the paper; else between two of them, where the `side` of the leaf is long
    enough. A side that may have fold marks or those of tabs has none between.
    """
    line, marks = laid.margin + RULER_DEPTH, MARK_OFFSET + MARK_LENGTH
    if paper < length + 2 * (laid.margin + _FROM_ENDS):
        return None
    if waste >= line + LEAST_AIR + marks:
        return max(line, waste - marks - AIR), (paper - length) // 2
    start, end = side
    free = not laid.stepped and laid.together == 1
    if waste >= line + LEAST_AIR + MARK_OFFSET and end - start >= length + 2 * _FROM_ENDS and free:
        return waste - MARK_OFFSET - LEAST_AIR, (start + end - length) // 2
    return None


def level_ruler(x: int, y: int, length: int = RULER) -> Iterator[Drawn]:
    """A ruler to the right of a point, its ticks and figures below its line."""
    yield Line(((x, y), (x + length, y)), _HAIRLINE)
    for at, tick in _ticks(length):
        yield Line(((x + at, y), (x + at, y + tick)), _HAIRLINE)
    for at, figure in _figures(length):
        left = x + at - width(figure.split()[0], Font.REGULAR, _FIGURES) // 2
        yield Text(left, y + RULER_DEPTH - _UNDER_FIGURES, figure, _FIGURES)


def upright_ruler(x: int, y: int, length: int = RULER) -> Iterator[Drawn]:
    """A ruler downwards from a point, its ticks and figures on the left of its line."""
    yield Line(((x, y), (x, y + length)), _HAIRLINE)
    for at, tick in _ticks(length):
        yield Line(((x - tick, y + at), (x, y + at)), _HAIRLINE)
    base = x - RULER_DEPTH + _UNDER_FIGURES + cap_height(Font.REGULAR, _FIGURES)
    for at, figure in _figures(length):
        lower = y + at + width(figure, Font.REGULAR, _FIGURES) // 2
        yield Text(base, lower, figure, _FIGURES, turn=90)


def _ticks(length: int) -> Iterator[tuple[int, int]]:
    for at in range(0, length // 1000 + 1, 5):
        yield mm(at), next(tick for step, tick in _TICKS if at % step == 0)


def _figures(length: int) -> Iterator[tuple[int, str]]:
    last, step = length // 1000, 20 if length == RULER else 10
    for at in range(0, last + 1, step):
        yield mm(at), f"{at} mm" if at == last else str(at)
