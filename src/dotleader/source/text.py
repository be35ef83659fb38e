"""A source text and places in it.

Offsets are counted in code points, half open. Lines and columns are worked out only when they are shown.
"""

from __future__ import annotations

from bisect import bisect_right
from functools import cached_property
from typing import NamedTuple


class Span(NamedTuple):
    """Half-open offsets, counted from the start of the block that holds them."""

    start: int
    end: int

    def moved(self, by: int) -> Span:
        return Span(self.start + by, self.end + by)


class SourceText:
    """One file as read: `name` is how it is shown (forward slashes, `-` for standard input)."""

    def __init__(self, name: str, text: str) -> None:
        self.name = name
        self.text = text

    def __repr__(self) -> str:
        return f"SourceText({self.name!r}, {len(self.text)} characters)"

    @cached_property
    def line_starts(self) -> tuple[int, ...]:
        """Offset of the first character of each line; only a line feed ends a line."""
        starts = [0]
        at = self.text.find("\n")
        while at >= 0:
            starts.append(at + 1)
            at = self.text.find("\n", at + 1)
        return tuple(starts)

    def line_and_column(self, offset: int) -> tuple[int, int]:
        """1-based line and column, columns in code points."""
        line = bisect_right(self.line_starts, offset)
        return line, offset - self.line_starts[line - 1] + 1

    def line(self, number: int) -> str:
        """The text of a 1-based line without its line end."""
        start = self.line_starts[number - 1]
        end = self.text.find("\n", start)
        return self.text[start : end if end >= 0 else len(self.text)].rstrip("\r")


class Spot(NamedTuple):
    """A place in a file, half-open offsets counted from the file's start."""

    source: SourceText
    start: int
    end: int

    @property
    def text(self) -> str:
        return self.source.text[self.start : self.end]

    @property
    def order(self) -> tuple[str, int, int]:
        return (self.source.name, self.start, self.end)
