"""Printed lines as rows: stacked from the top, broken over faces between any two of them.

Lengths in micrometres; x from the left edge of the text frame, y from the row's own top.
"""

from __future__ import annotations

from typing import NamedTuple

from dotleader.page.drawn import Font
from dotleader.page.lay.measures import base_in_slot, slot
from dotleader.page.type.breaking import Line, length, line_width
from dotleader.page.type.metrics import cap_height


class Piece(NamedTuple):
    """A line of words on the row's baseline, left edge at x."""

    x: int
    line: Line
    size: int


class Leader(NamedTuple):
    """From the centre of the first dot to that of the last; a solid line where `critical`."""

    first: int
    last: int
    critical: bool


class Slot(NamedTuple):
    """Room for a label, left edge at x."""

    x: int
    height: int
    target: str


class Rule(NamedTuple):
    """A rule along the top of the row."""

    left: int
    right: int
    width: int


class Row(NamedTuple):
    """A printed line. `part` is the number of what it belongs to, -1 where that is nothing.

    Above it stand `gap` and `air` thousandths of the air that the pitch leaves; neither at the head of a face.
    `base` is its baseline, `middle` half way up its capitals, `end` where its text ends. `hold` is the cost of turning
    the page above it. `arrow` goes from x to x at the middle; `choice` is where a mark of choice is centred.
    """

    part: int
    hold: int
    height: int
    base: int
    gap: int = 0
    air: int = 0
    middle: int = 0
    end: int = 0
    pieces: tuple[Piece, ...] = ()
    leader: Leader | None = None
    arrow: tuple[int, int] | None = None
    slot: Slot | None = None
    rule: Rule | None = None
    choice: int | None = None
    says: tuple[str, ...] = ()


def text_row(part: int, hold: int, size: int, *pieces: Piece, pad: int = 0) -> Row:
    """A row with one line of text in a slot of its size, and `pad` above the slot."""
    base = pad + base_in_slot(size)
    end = max((piece.x + length(line_width(piece.line), piece.size) for piece in pieces), default=0)
    middle = base - cap_height(Font.REGULAR, size) // 2
    return Row(part, hold, pad + slot(size), base, middle=middle, end=end, pieces=pieces)
