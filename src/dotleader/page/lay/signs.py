"""Signs that are drawn and not set: leaders, arrows, marks of choice. The font has none of them."""

from __future__ import annotations

from collections.abc import Sequence

from dotleader.page.drawn import Ink, Line
from dotleader.page.lay.measures import (
    CHOICE_HALF,
    CHOICE_RULE,
    CRITICAL,
    DOT,
    DOT_PITCH,
    HEAD_HALF,
    HEAD_LENGTH,
    RAIL,
)
from dotleader.page.lay.rows import Leader


def leader_line(leader: Leader, base: int) -> Line:
    """Dots that stand on the baseline; for a critical item a solid line, which survives a photocopy."""
    y = base - DOT // 2
    if leader.critical:
        return Line(((leader.first - DOT // 2, y), (leader.last + DOT // 2, y)), CRITICAL)
    return Line(((leader.first, y), (leader.last, y)), DOT, dots=DOT_PITCH)


def arrow(start: int, tip: int, y: int) -> tuple[Line, Line]:
    """To the right."""
    head = ((tip, y), (tip - HEAD_LENGTH, y - HEAD_HALF), (tip - HEAD_LENGTH, y + HEAD_HALF))
    return Line(((start, y), (tip - HEAD_LENGTH, y)), RAIL), _filled(head)


def arrow_up(path: Sequence[tuple[int, int]]) -> tuple[Line, Line]:
    """A path whose last part goes up to a tip."""
    x, y = path[-1]
    base = min(y + HEAD_LENGTH, path[-2][1])
    head = ((x, y), (x - HEAD_HALF, base), (x + HEAD_HALF, base))
    return Line((*path[:-1], (x, base)), RAIL), _filled(head)


def choice_mark(x: int, y: int) -> Line:
    """A hollow diamond: one of these, and only one."""
    half = CHOICE_HALF
    return Line(((x, y - half), (x + half, y), (x, y + half), (x - half, y)), CHOICE_RULE, closed=True)


def _filled(points: tuple[tuple[int, int], ...]) -> Line:
    return Line(points, 0, closed=True, fill=Ink.BLACK)
