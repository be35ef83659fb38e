"""The lines a finding speaks of, with a gutter, and marks under what is meant."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from dotleader.report.paint import QUIET, painted
from dotleader.report.terminal import Terminal
from dotleader.report.window import Reach, window
from dotleader.source.text import SourceText, Spot

_WHOLE = 4  # lines of a span that are all shown; of a longer one the first and the last
_SEARCHED = 400  # lines above in which the head of the block is looked for


class Place(NamedTuple):
    """1-based first and last line of a spot, and its columns: 0-based, half open, in code points."""

    first: int
    start: int
    last: int
    end: int


def place_of(spot: Spot) -> Place:
    """Where a spot is; one that takes a line's end with it ends on that line."""
    size = len(spot.source.text)
    start = min(max(spot.start, 0), size)
    first, column = spot.source.line_and_column(start)
    last, end = spot.source.line_and_column(min(max(spot.end, start), size))
    if last > first and end == 1:
        last -= 1
        end = len(spot.source.line(last)) + 1
    return Place(first, column - 1, last, end - 1)


def excerpt(spot: Spot, gutter: int, paint: str, terminal: Terminal, *, block: bool) -> Iterator[str]:
    """The marked lines of a spot, line numbers in `gutter` columns.

    With `block`, the line that opens the block goes before them: on a card it is the title.
    """
    if not spot.source.text:
        return
    place = place_of(spot)
    room = terminal.width - gutter - len(" | ")
    if block and (head := _head_above(spot.source, place.first)):
        opening = window(spot.source.line(head), Reach(0, 0), room, terminal).text
        yield _row(head, painted(opening, QUIET, terminal), gutter, terminal)
        if head < place.first - 1:
            yield _row(terminal.pick("⋮", ":"), "", gutter, terminal)
    mark = terminal.pick("▔", "^")
    for number in _numbers(place):
        if number == 0:
            yield _row(terminal.pick("⋮", ":"), "", gutter, terminal)
            continue
        line = spot.source.line(number)
        if number > place.first and not line.strip():
            yield _row(number, "", gutter, terminal)
            continue
        seen = window(line, _reach(line, number, place), room, terminal)
        yield _row(number, seen.text, gutter, terminal)
        yield _row("", " " * seen.at + painted(mark * seen.marks, paint, terminal), gutter, terminal)


def _row(number: int | str, text: str, gutter: int, terminal: Terminal) -> str:
    left = painted(f"{number:>{gutter}} {terminal.pick('│', '|')}", QUIET, terminal)
    return f"{left} {text}".rstrip()


def _numbers(place: Place) -> list[int]:
    """The lines to show; 0 stands for those that are left out."""
    if place.last - place.first < _WHOLE:
        return list(range(place.first, place.last + 1))
    return [place.first, 0, place.last]


def _reach(line: str, number: int, place: Place) -> Reach:
    start = place.start if number == place.first else len(line) - len(line.lstrip())
    return Reach(start, place.end if number == place.last else len(line))


def _head_above(source: SourceText, number: int) -> int:
    """The nearest line above that is not indented, 0 where this one is not indented itself."""
    if not source.line(number)[:1].isspace():
        return 0
    for above in range(number - 1, max(0, number - _SEARCHED), -1):
        line = source.line(above)
        if line.strip() and not line[0].isspace() and line[0] != "#":
            return above
    return 0
