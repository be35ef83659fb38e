"""What is printed for the workshop: where the holes go, crop marks, folds, a line of text. All of it hairlines.

Crop marks and text stand in the waste only; the marks of holes are punched away.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from dotleader.handbook.stocks.measures import MARK_LENGTH, MARK_OFFSET, in_flap
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Font, Line, Text, mm, pt
from dotleader.page.extents import Rect
from dotleader.page.imposition import Imposition
from dotleader.page.sheet.cut_shapes import Point
from dotleader.page.type.metrics import width

HAIRLINE = pt(0.25)
HOLE_CROSS = mm(1.8)
DASH = mm(1)
"""Of a fold mark, and the gap to the next."""

NOTE_SIZE = 7_000
NOTE_BASE = mm(2.5)
"""Below what a printer leaves unprinted."""

NOTE_INDENT = mm(2)


def hole_marks(stock: Stock, centres: Iterable[Point]) -> Iterator[Drawn]:
    """A circle as wide as what is cut out of the paper and a cross in its middle; none beside the leaf, in film."""
    if in_flap(stock):
        return
    radius = stock.hole_diameter // 2 + stock.relief
    for x, y in centres:
        yield Box(x - radius, y - radius, 2 * radius, 2 * radius, stroke=HAIRLINE, radius=radius)
        yield from cross(x, y, HOLE_CROSS)


def cross(x: int, y: int, arm: int) -> Iterator[Line]:
    yield Line(((x - arm, y), (x + arm, y)), HAIRLINE)
    yield Line(((x, y - arm), (x, y + arm)), HAIRLINE)


def crop_marks(pieces: Sequence[Rect], more: Iterable[tuple[Point, Point]] = ()) -> Iterator[Line]:
    """Two marks at each corner of each piece that is cut out, and `more`; those that two of them share stand once.

    None stands on a piece: where two touch, their common line has its marks at both ends of it.
    """
    near, far = MARK_OFFSET, MARK_OFFSET + MARK_LENGTH
    points: dict[tuple[Point, Point], None] = {}
    for left, top, right, bottom in pieces:
        for y in (top, bottom):
            points[(left - far, y), (left - near, y)] = None
            points[(right + near, y), (right + far, y)] = None
        for x in (left, right):
            points[(x, top - far), (x, top - near)] = None
            points[(x, bottom + near), (x, bottom + far)] = None
    for start, end in (*points, *(ends for ends in dict.fromkeys(more) if ends not in points)):
        if not _on_any((start, end), pieces):
            yield Line((start, end), HAIRLINE)


def fold_marks(lines: Iterable[Rect], pieces: Sequence[Rect]) -> Iterator[Line]:
    """Dashes that go on beyond both ends of each fold, as far as crop marks do and as far off the trim; none on a
    piece that touches, and each once."""
    dashes: dict[tuple[Point, Point], None] = {}
    for line in lines:
        upright = line.left == line.right
        across, ends = (line.left, (line.top, line.bottom)) if upright else (line.top, (line.left, line.right))
        for off in range(MARK_OFFSET, MARK_OFFSET + MARK_LENGTH, 2 * DASH):
            for start in (ends[0] - off - DASH, ends[1] + off):
                points = (across, start), (across, start + DASH)
                dashes[points if upright else (points[0][::-1], points[1][::-1])] = None
    yield from (Line(dash, HAIRLINE) for dash in dashes if not _on_any(dash, pieces))


def _on_any(stroke: tuple[Point, Point], pieces: Sequence[Rect]) -> bool:
    (left, top), (right, bottom) = stroke
    return any(Rect(left - 1, top - 1, right + 1, bottom + 1).meets(piece) for piece in pieces)


def with_room(laid: Imposition, words: str, more: Sequence[str]) -> str:
    """The words of a note, and the first of some sayings that ends before the leaf below does; else the last one."""
    first = laid.pieces[0]
    room = first.right - first.left - 2 * NOTE_INDENT
    sayings = [f"{words} {saying}" for saying in more] or [words]
    return next((said for said in sayings if width(said, Font.REGULAR, NOTE_SIZE) <= room), sayings[-1])


def note(laid: Imposition, words: str) -> Iterator[Text]:
    """A line of text at the head of a sheet; nothing where the leaves fill the paper."""
    if not laid.filling:
        yield Text(laid.pieces[0].left + NOTE_INDENT, laid.margin + NOTE_BASE, words, NOTE_SIZE)
