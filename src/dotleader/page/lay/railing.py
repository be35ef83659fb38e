"""The rules beside branches, and how they end: with a foot, by an arrow, turned back, or open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.drawn import Drawn, Line
from dotleader.page.lay.inking import Placed
from dotleader.page.lay.measures import FOOT, LEVEL, RAIL, RETURN, Setting
from dotleader.page.lay.outline import Ending, Rail
from dotleader.page.lay.signs import arrow_up


def rail_lines(rail: Rail, start: int, inside: Sequence[Placed], ended: bool, setting: Setting) -> Iterator[Drawn]:
    """The rule of `rail` along the rows `inside` it on one face, from y `start` down; `ended` where it ends there."""
    x = setting.rail(rail.level)
    last = inside[-1]
    ending = rail.ending if ended else Ending.OPEN
    match ending:
        case Ending.OPEN:
            yield Line(((x, start), (x, last.bottom)), RAIL)
        case Ending.END:
            yield foot(x, start, last)
        case Ending.LEAVE:
            first = next(one for one in inside if one.row.part == last.row.part)
            yield Line(((x, start), (x, first.middle + RAIL // 2)), RAIL)
        case Ending.CLOSED:
            y = last.bottom - RAIL // 2
            yield Line(((x, start), (x, y), (x + setting.step // 2, y)), RAIL)
        case Ending.BACK:
            y = last.bottom - RAIL // 2
            back = x - RETURN * setting.step // LEVEL
            yield from arrow_up(((x, start), (x, y), (back, y), (back, start)))


def foot(x: int, start: int, last: Placed) -> Line:
    """Down to the bottom of a row and along under its words."""
    y = last.bottom - RAIL // 2
    return Line(((x, start), (x, y), (last.row.end + FOOT, y)), RAIL)
