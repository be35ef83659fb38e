"""Drawn things to the operators of a PDF content stream (ISO 32000-1, clauses 8 and 9).

Written as text rather than by calls of a library, which is several times as fast, and exact:
positions stay whole micrometres, y down, until they are written as points, y up.
Groups are worked out here, so the stream has no nested transformations.
How fonts are embedded is not known here.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import TypeAlias, assert_never

from dotleader.page.drawn import Box, Drawn, Font, Group, Ink, Line, Link, Picture, Text
from dotleader.source.record import record

Point: TypeAlias = tuple[int, int]
Encode: TypeAlias = Callable[[str, Font], tuple[tuple[str, str], ...]]
"""A string to its parts: each the resource name of a font, and the string literal of what it draws."""

MEMORY_RGB = (255, 247, 204)
"""The ground of memory items: 19 to 1 against black, so that it costs the text on it nothing."""

CIRCLE = 0.5522847498
"""How far, in radii, the handles of a quarter circle drawn as one curve stand off: 4/3 (sqrt 2 - 1)."""

DOT = 3
"""Length in micrometres of the dash that a round dot is drawn by, which nobody can see.

It is not zero because pdfium takes a dash of none for one of 0.1 pt: its dots drift apart and the last one is lost.
"""

PAST_LAST_DOT = 5
"""Micrometres that a dotted line is drawn past its last dot, so that rounding in a viewer cannot lose it."""

MATRICES = {0: "1 0 0 1", 90: "0 1 -1 0", 180: "-1 0 0 -1", 270: "0 -1 1 0"}


@record
class Placed:
    """A picture, and the six numbers of the matrix that lays its unit square on the page, in points."""

    name: str
    matrix: tuple[float, float, float, float, float, float]


@record
class Area:
    """An active area: left, bottom, right, top in points, and the label of the face that it leads to."""

    label: str
    left: float
    bottom: float
    right: float
    top: float


@dataclass(slots=True)
class Content:
    """A page: stretches of operators with pictures between them, and its active areas."""

    parts: list[str | Placed] = field(default_factory=list)
    areas: list[Area] = field(default_factory=list)


def points(micrometres: float) -> float:
    return micrometres * 72 / 25400


class _Written(dict[int, str]):
    """Micrometres to points as they are written; a page asks for the same few hundred again and again."""

    def __missing__(self, micrometres: int) -> str:
        if len(self) > 1 << 14:
            self.clear()
        written = self[micrometres] = f"{micrometres * 72 / 25400:.7g}"
        return written


class Pen:
    """Writes pages one after another. It knows what the stream has set, and sets only what differs."""

    def __init__(self, encode: Encode, colour: bool) -> None:
        self._encode = encode
        memory = " ".join(f"{part / 255:.3g}" for part in MEMORY_RGB)
        self._fills = {Ink.BLACK: "0 g", Ink.WHITE: "1 g", Ink.MEMORY: f"{memory} rg" if colour else "1 g"}
        self._strokes = {ink: fill.upper() for ink, fill in self._fills.items()}
        self._written = _Written()

    def page(self, items: Iterable[Drawn], height: int) -> Content:
        """The content of one page of that height; a ValueError if a character is in no font."""
        self._content = Content()
        self._out: list[str] = []
        self._height = height
        self._x0, self._y0, self._turn, self._cos, self._sin = 0, 0, 0, 1.0, 0.0
        self._fill, self._stroke, self._font = Ink.BLACK, Ink.BLACK, ("", 0)
        self._width, self._dash, self._round, self._mode = -1, 0, False, 0
        self._walk(items)
        self._close()
        return self._content

    def _walk(self, items: Iterable[Drawn]) -> None:
        for item in items:
            match item:
                case Text():
                    self._text(item)
                case Line():
                    self._line(item)
                case Box():
                    self._box(item)
                case Group():
                    self._group(item)
                case Link():
                    self._link(item)
                case Picture():
                    self._picture(item)
                case _:
                    assert_never(item)

    def _close(self) -> None:
        if self._out:
            self._content.parts.append("\n".join(self._out))
            self._out = []

    # Where things stand

    def _at(self, x: float, y: float) -> Point:
        """A point of the present group on the page, micrometres, y down."""
        if not self._turn:
            return round(self._x0 + x), round(self._y0 + y)
        return (
            round(self._x0 + x * self._cos + y * self._sin),
            round(self._y0 - x * self._sin + y * self._cos),
        )

    def _write(self, point: Point) -> str:
        return f"{self._written[point[0]]} {self._written[self._height - point[1]]}"

    def _group(self, group: Group) -> None:
        outer = self._x0, self._y0, self._turn, self._cos, self._sin
        self._x0, self._y0 = self._at(group.x, group.y)
        if group.turn:
            self._turn = (self._turn + group.turn) % 360
            self._cos, self._sin = _direction(self._turn)
        self._walk(group.items)
        self._x0, self._y0, self._turn, self._cos, self._sin = outer

    # What the stream has set

    def _set_fill(self, ink: Ink) -> None:
        if ink is not self._fill:
            self._fill = ink
            self._out.append(self._fills[ink])

    def _set_stroke(self, ink: Ink, width: int, dash: int = 0, rounded: bool = False) -> None:
        out = self._out
        if ink is not self._stroke:
            self._stroke = ink
            out.append(self._strokes[ink])
        if width != self._width:
            self._width = width
            out.append(f"{self._written[width]} w")
        if dash != self._dash:
            self._dash = dash
            out.append(f"[{self._written[DOT]} {self._written[max(dash - DOT, 1)]}] 0 d" if dash else "[] 0 d")
        if rounded != self._round:
            self._round = rounded
            out.append("1 J 1 j" if rounded else "0 J 0 j")

    # The things

    def _text(self, text: Text) -> None:
        if text.ink is Ink.NONE or not text.string:
            return
        mode = 1 if text.hollow else 0
        if mode:
            self._set_stroke(text.ink, text.hollow, rounded=True)
        else:
            self._set_fill(text.ink)
        turn = (self._turn + text.turn) % 360
        matrix = MATRICES.get(turn) or _matrix(turn)
        x, y = self._at(text.x, text.y)
        shown = ""
        for name, literal in self._encode(text.string, text.font):
            if (name, text.size) != self._font:
                self._font = name, text.size
                shown += f"{name} {text.size / 1000:.7g} Tf "
            if matrix:
                shown += f"{matrix} {self._written[x]} {self._written[self._height - y]} Tm "
                matrix = ""  # what follows goes on where this ends
            shown += f"{literal}Tj "
        if mode != self._mode:
            self._mode = mode
            shown = f"{mode} Tr {shown}"
        self._out.append(f"BT {shown}ET")

    def _line(self, line: Line) -> None:
        stroked = line.width > 0 and line.ink is not Ink.NONE
        filled = line.fill is not Ink.NONE and len(line.points) > 2
        path = [self._at(*point) for point in line.points]
        if not path or not (stroked or filled):
            return
        if filled:
            self._set_fill(line.fill)
        if stroked:
            self._set_stroke(line.ink, line.width, line.dots, rounded=line.dots > 0)
            if line.dots and not line.closed and len(path) <= 2:
                path[1:] = [_last_dot(path[0], path[-1], line.dots)]
        drawn = f"{self._write(path[0])} m " + " ".join(f"{self._write(point)} l" for point in path[1:])
        if line.closed:
            drawn += " h"
        self._out.append(f"{drawn} {_paint(filled, stroked)}")

    def _box(self, box: Box) -> None:
        stroked, filled = box.stroke > 0, box.fill is not Ink.NONE
        if not (stroked or filled):
            return
        if filled:
            self._set_fill(box.fill)
        if stroked:
            self._set_stroke(Ink.BLACK, box.stroke)
        radius = min(box.radius, box.w // 2, box.h // 2)
        if radius > 0:
            path = self._rounded(box, radius)
        elif self._turn % 90:
            corners = ((0, 0), (box.w, 0), (box.w, box.h), (0, box.h))
            first, *others = (self._write(self._at(box.x + x, box.y + y)) for x, y in corners)
            path = f"{first} m {' '.join(f'{other} l' for other in others)} h"
        else:
            left, top = self._at(box.x, box.y)
            right, bottom = self._at(box.x + box.w, box.y + box.h)
            corner = min(left, right), max(top, bottom)
            w, h = self._written[abs(right - left)], self._written[abs(bottom - top)]
            path = f"{self._write(corner)} {w} {h} re"
        self._out.append(f"{path} {_paint(filled, stroked)}")

    def _rounded(self, box: Box, radius: int) -> str:
        """A path clockwise from where the upper edge begins; each corner is one curve."""
        right, bottom, off = box.x + box.w, box.y + box.h, radius * CIRCLE
        path = [f"{self._write(self._at(box.x + radius, box.y))} m"]
        for x, y, along, across in (
            (right, box.y, (1, 0), (0, 1)),
            (right, bottom, (0, 1), (-1, 0)),
            (box.x, bottom, (-1, 0), (0, -1)),
            (box.x, box.y, (0, -1), (1, 0)),
        ):
            handle = radius - off
            start = x - along[0] * radius, y - along[1] * radius
            first = x - along[0] * handle, y - along[1] * handle
            second = x + across[0] * handle, y + across[1] * handle
            end = x + across[0] * radius, y + across[1] * radius
            curve = " ".join(self._write(self._at(*point)) for point in (first, second, end))
            path.append(f"{self._write(self._at(*start))} l {curve} c")
        return " ".join([*path, "h"])

    def _link(self, link: Link) -> None:
        right, bottom = link.x + link.w, link.y + link.h
        corners = [self._at(x, y) for x in (link.x, right) for y in (link.y, bottom)]
        across, up = [x for x, _ in corners], [self._height - y for _, y in corners]
        box = map(points, (min(across), min(up), max(across), max(up)))
        self._content.areas.append(Area(link.label, *box))

    def _picture(self, picture: Picture) -> None:
        self._close()
        x, y = self._at(picture.x, picture.y + picture.h)
        cos, sin = self._cos, self._sin
        w, h = points(picture.w), points(picture.h)
        matrix = (w * cos, w * sin, -h * sin, h * cos, points(x), points(self._height - y))
        self._content.parts.append(Placed(picture.name, matrix))


def _direction(turn: int) -> tuple[float, float]:
    """Cosine and sine, exact where they can be."""
    exact = {0: (1.0, 0.0), 90: (0.0, 1.0), 180: (-1.0, 0.0), 270: (0.0, -1.0)}
    return exact.get(turn) or (math.cos(math.radians(turn)), math.sin(math.radians(turn)))


def _matrix(turn: int) -> str:
    cos, sin = _direction(turn)
    return f"{cos:.7g} {sin:.7g} {-sin:.7g} {cos:.7g}"


def _last_dot(start: Point, end: Point, pitch: int) -> Point:
    """Where to end a line from start towards end: a hair past the last dot that it has room for."""
    length = math.hypot(end[0] - start[0], end[1] - start[1])
    if not length:
        return start[0] + PAST_LAST_DOT, start[1]
    # The dots stand where the points were rounded to; half a micrometre may not cost the last of them.
    run = (length + 0.5) // pitch * pitch + PAST_LAST_DOT
    return (
        round(start[0] + (end[0] - start[0]) * run / length),
        round(start[1] + (end[1] - start[1]) * run / length),
    )


def _paint(filled: bool, stroked: bool) -> str:
    return "B" if filled and stroked else "f" if filled else "S"
