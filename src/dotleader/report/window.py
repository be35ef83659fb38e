"""One line of a source as far as it fits, around the part that is marked."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from itertools import accumulate
from typing import NamedTuple

from dotleader.report.glyphs import glyphs
from dotleader.report.terminal import Terminal


class Reach(NamedTuple):
    """The part of one line that is marked: code points, half open; an empty one gets a single mark."""

    start: int
    end: int


class Window(NamedTuple):
    """What is shown of a line, and at which column the marks begin and how many there are."""

    text: str
    at: int
    marks: int


def window(line: str, reach: Reach, room: int, terminal: Terminal) -> Window:
    """The line in at most `room` columns. Where it is longer, dots stand at the cut ends and the marks are in sight.

    Work is bounded by `room`, however long the line is.
    """
    low = max(0, reach.start - room) if len(line) > 3 * room else 0
    high = min(len(line), low + 3 * room)
    shown = glyphs(line[low:high], terminal)
    edges = list(accumulate((glyph.width for glyph in shown), initial=0))
    start = reach.start - low
    end = min(max(reach.end - low, start), len(shown))
    left, right = 0, len(shown)
    dots = terminal.pick("…", "...")
    if low > 0 or high < len(line) or edges[-1] > room:
        left, right = _part(edges, start, end, room - 2 * len(dots), low > 0)
    before = dots if low > 0 or left > 0 else ""
    after = dots if high < len(line) or right < len(shown) else ""
    text = before + "".join(glyph.text for glyph in shown[left:right]) + after
    at = len(before) + edges[start] - edges[left]
    return Window(text, at, max(1, edges[min(end, right)] - edges[start]))


def _part(edges: list[int], start: int, end: int, room: int, cut: bool) -> tuple[int, int]:
    """Which glyphs are shown: from the line's beginning if the marks then fit, else some room before the marks."""
    last = len(edges) - 1
    if not cut and edges[end] <= room:
        left = 0
    else:
        spare = max(0, min(room // 3, room - (edges[end] - edges[start])))
        left = bisect_left(edges, edges[start] - spare)
        left = min(left, bisect_left(edges, edges[last] - room), start)
    return left, max(bisect_right(edges, edges[left] + room) - 1, left)
