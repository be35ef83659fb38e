"""Paths to cut by as a DXF file of release 12 (AC1009), which every program reads, in millimetres.

Written by hand, because libraries stamp a time and an identifier into each file: equal cuttings give equal bytes.
A file of release 12 has no unit of its own. `$INSUNITS` 4 (millimetres) and `$MEASUREMENT` 1 (metric) are younger
and are passed over by what does not know them; the paper's outline, on a layer of its own, is as large as the paper
and shows whether the size is right.

The origin is the lower left corner of the sheet's front, y up, as in drawings. Outlines are closed polylines, a
quarter of a circle is a bulge (the tangent of a fourth of its angle, below zero where it goes clockwise).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import TypeAlias, assert_never

from dotleader.output.millimetres import millimetres
from dotleader.page.sheet.cut_shapes import Arc, Circle, Cut, Cutting, Layer, Open, Outline, Part, Point, Straight

Code: TypeAlias = tuple[int, str]
"""A group of a DXF file: what it is, and its value."""

_RED, _GREEN, _BLUE, _BLACK = "1", "3", "5", "7"  # of the AutoCAD colour index; 7 is black on white


def cut_dxf(cutting: Cutting) -> bytes:
    """The whole file."""
    return "".join(f"{code:>3}\n{value}\n" for code, value in _codes(cutting)).encode("ascii")


def _codes(cutting: Cutting) -> Iterator[Code]:
    layers = [layer for layer in Layer if cutting.on(layer)]
    yield from _section("HEADER", _header(cutting))
    yield from _section("TABLES", _tables(layers))
    yield from _section("BLOCKS", ())
    yield from _section("ENTITIES", _entities(cutting))
    yield 0, "EOF"


def _section(name: str, content: Iterable[Code]) -> Iterator[Code]:
    yield 0, "SECTION"
    yield 2, name
    yield from content
    yield 0, "ENDSEC"


def _header(cutting: Cutting) -> Iterator[Code]:
    yield 9, "$ACADVER"
    yield 1, "AC1009"
    yield 9, "$INSUNITS"
    yield 70, "4"
    yield 9, "$MEASUREMENT"
    yield 70, "1"
    for name, (x, y) in (
        ("$EXTMIN", (0, 0)),
        ("$EXTMAX", cutting.paper),
        ("$LIMMIN", (0, 0)),
        ("$LIMMAX", cutting.paper),
    ):
        yield 9, name
        yield 10, millimetres(x)
        yield 20, millimetres(y)


def _tables(layers: list[Layer]) -> Iterator[Code]:
    yield from _table("LTYPE", 1)
    yield from ((0, "LTYPE"), (2, "CONTINUOUS"), (70, "0"), (3, "Solid line"), (72, "65"), (73, "0"), (40, "0.0"))
    yield 0, "ENDTAB"
    yield from _table("LAYER", len(layers) + 1)
    for name, colour in (("0", _BLACK), *((_name(layer), _colour(layer)) for layer in layers)):
        yield from ((0, "LAYER"), (2, name), (70, "0"), (62, colour), (6, "CONTINUOUS"))
    yield 0, "ENDTAB"


def _table(name: str, count: int) -> Iterator[Code]:
    yield 0, "TABLE"
    yield 2, name
    yield 70, str(count)


def _name(layer: Layer) -> str:
    return layer.value.upper()


def _colour(layer: Layer) -> str:
    match layer:
        case Layer.HOLES | Layer.OUTLINES:
            return _RED
        case Layer.FOLDS:
            return _GREEN
        case Layer.REGISTRATION:
            return _BLACK
        case Layer.POUCH | Layer.PAPER:
            return _BLUE
        case _:
            assert_never(layer)


def _entities(cutting: Cutting) -> Iterator[Code]:
    for cut in cutting.cuts:
        yield from _entity(cut, cutting.paper[1])


def _entity(cut: Cut, height: int) -> Iterator[Code]:
    match cut.shape:
        case Circle(x, y, radius):
            yield from ((0, "CIRCLE"), (8, _name(cut.layer)))
            yield from _point((x, y), height)
            yield 40, millimetres(radius)
        case Outline(start, parts):
            yield from _polyline(cut.layer, [start, *_ends(parts)][:-1], parts, height, closed=True)
        case Open(start, (Straight(x, y),)):
            yield from ((0, "LINE"), (8, _name(cut.layer)))
            yield from _point(start, height)
            yield from ((11, millimetres(x)), (21, millimetres(height - y)))
        case Open(start, parts):
            yield from _polyline(cut.layer, [start, *_ends(parts)], parts, height, closed=False)
        case _:
            assert_never(cut.shape)


def _ends(parts: tuple[Part, ...]) -> list[Point]:
    return [(part.x, part.y) for part in parts]


def _polyline(layer: Layer, points: list[Point], parts: tuple[Part, ...], height: int, closed: bool) -> Iterator[Code]:
    """Vertices, each with the bulge of the part that leads on from it; the last of an open line has none."""
    yield from ((0, "POLYLINE"), (8, _name(layer)), (66, "1"), (70, str(int(closed))), (10, "0"), (20, "0"), (30, "0"))
    for at, point in enumerate(points):
        yield from ((0, "VERTEX"), (8, _name(layer)))
        yield from _point(point, height)
        if at < len(parts) and isinstance(parts[at], Arc):
            yield 42, _bulge(point, parts[at])
    yield from ((0, "SEQEND"), (8, _name(layer)))


def _point(point: Point, height: int) -> Iterator[Code]:
    yield 10, millimetres(point[0])
    yield 20, millimetres(height - point[1])
    yield 30, "0"


def _bulge(start: Point, arc: Part) -> str:
    """Of an arc that is less than half a circle; ten figures keep it within a nanometre."""
    assert isinstance(arc, Arc)
    half_chord = math.dist(start, (arc.x, arc.y)) / 2
    bulge = math.tan(math.asin(min(1.0, half_chord / arc.radius)) / 2)
    return f"{-bulge if arc.clockwise else bulge:.10f}"
