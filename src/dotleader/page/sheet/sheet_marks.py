"""What is printed for the workshop: where the holes go, crop marks, rulers, a line of text. All of it hairlines.

Crop marks, rulers and text stand in the waste only; the marks of holes are punched away.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from dotleader.handbook.stocks.measures import MARK_LENGTH, MARK_OFFSET, in_flap
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Font, Line, Text, mm, pt
from dotleader.page.extents import Rect
from dotleader.page.face.placement import Side
from dotleader.page.imposition import Imposition
from dotleader.page.sheet.cut_shapes import Point
from dotleader.page.type.metrics import cap_height, width

HAIRLINE = pt(0.25)
HOLE_CROSS = mm(1.8)
DASH = mm(1)
"""Of a fold mark, and the gap to the next."""

RULER = mm(100)
RULER_DEPTH = mm(6)
"""From a ruler's line to the far side of its figures."""

RULER_AIR = mm(1)
_FIGURES = 6_000
_TICKS = ((50, mm(3)), (10, mm(2)), (5, mm(1.2)))

NOTE_SIZE = 7_000
NOTE_BASE = mm(2.5)
"""Below what a printer leaves unprinted."""

NOTE_INDENT = mm(2)


def hole_centres(stock: Stock, side: Side) -> tuple[tuple[int, int], ...]:
    """Where the holes are on a face as it is read: those of the back are those of the front, seen from behind."""
    across, front = stock.hole_edge, side is Side.FRONT
    if stock.bound_at == "left":
        x = across if front else stock.leaf[0] - across
        return tuple((x, at) for at in stock.holes)
    y = across if front else stock.leaf[1] - across
    return tuple((at, y) for at in stock.holes)


def hole_marks(stock: Stock, side: Side) -> Iterator[Drawn]:
    """A circle as wide as what is cut out of the paper and a cross in its middle; none beside the leaf, in film."""
    if in_flap(stock):
        return
    radius = stock.hole_diameter // 2 + stock.relief
    for x, y in hole_centres(stock, side):
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


def has_rulers(laid: Imposition) -> bool:
    """Whether both rulers find room in the waste of a sheet."""
    return ruler_places(laid) is not None


def ruler_places(laid: Imposition) -> tuple[tuple[int, int], tuple[int, int]] | None:
    """Where the upright ruler and the level one begin: beside the leaves and below them; None without room."""
    if laid.filling:
        return None
    first, last = laid.pieces[0], laid.pieces[-1]
    beside = _place(laid, first.left, laid.paper[1], first.top, first.bottom - first.top)
    below = _place(laid, laid.paper[1] - last.bottom, laid.paper[0], first.left, first.right - first.left)
    if beside is None or below is None:
        return None
    return (beside[0], beside[1]), (below[1], laid.paper[1] - below[0])


def _place(laid: Imposition, waste: int, paper: int, start: int, length: int) -> tuple[int, int] | None:
    """How far from the paper's edge a ruler's line stands, and where along the paper it begins.

    Beyond the crop marks, in the middle of the paper; else between two of them, where the leaf is long enough.
    """
    line = laid.margin + RULER_DEPTH
    marks = MARK_OFFSET + MARK_LENGTH
    if paper < RULER + 2 * (laid.margin + mm(5)):
        return None
    if waste >= line + RULER_AIR + marks:
        return waste - marks - RULER_AIR, (paper - RULER) // 2
    if waste >= line + RULER_AIR + MARK_OFFSET and length >= RULER + mm(10) and not laid.stepped:
        return waste - MARK_OFFSET - RULER_AIR, start + (length - RULER) // 2
    return None


def level_ruler(x: int, y: int) -> Iterator[Drawn]:
    """A ruler of 100 mm to the right of a point, its ticks and figures below its line."""
    yield Line(((x, y), (x + RULER, y)), HAIRLINE)
    for at, length in _ticks():
        yield Line(((x + at, y), (x + at, y + length)), HAIRLINE)
    for at, figure in _figures():
        left = x + at - width(figure.split()[0], Font.REGULAR, _FIGURES) // 2
        yield Text(left, y + RULER_DEPTH - mm(0.6), figure, _FIGURES)


def upright_ruler(x: int, y: int) -> Iterator[Drawn]:
    """A ruler of 100 mm downwards from a point, its ticks and figures on the left of its line."""
    yield Line(((x, y), (x, y + RULER)), HAIRLINE)
    for at, length in _ticks():
        yield Line(((x - length, y + at), (x, y + at)), HAIRLINE)
    base = x - RULER_DEPTH + mm(0.6) + cap_height(Font.REGULAR, _FIGURES)
    for at, figure in _figures():
        lower = y + at + width(figure, Font.REGULAR, _FIGURES) // 2
        yield Text(base, lower, figure, _FIGURES, turn=90)


def _ticks() -> Iterator[tuple[int, int]]:
    for at in range(0, 101, 5):
        yield mm(at), next(length for step, length in _TICKS if at % step == 0)


def _figures() -> Iterator[tuple[int, str]]:
    for at in range(0, 101, 20):
        yield mm(at), f"{at} mm" if at == 100 else str(at)


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
