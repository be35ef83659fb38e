"""Paths to cut by as an SVG file: millimetres throughout, nothing but strokes.

One user unit is one millimetre: `width` and `height` are in mm and the `viewBox` says the same numbers, so that no
program can take them for pixels (1 in = 25.4 mm = 96 px in CSS, 90 px in some older editors). The origin is the
upper left corner of the sheet's front, y down. Each layer is a group with an `id`; each shape bears its own stroke,
a hairline of 0.025 mm (0.001 in is 0.0254 mm, what laser cutters take for a cut at most), red where it is cut, green
where a fold is scored, blue where it is for the eye only, black for printed marks. No transformations, style sheets,
or text. Equal cuttings give equal bytes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import assert_never

from dotleader.output.millimetres import millimetres
from dotleader.page.sheet.cut_shapes import Arc, Circle, Cutting, Layer, Open, Outline, Part, Point, Shape, Straight

HAIRLINE = "0.025"


def cut_svg(cutting: Cutting) -> bytes:
    """The whole file."""
    return ("\n".join(_lines(cutting)) + "\n").encode("ascii")


def _lines(cutting: Cutting) -> Iterator[str]:
    width, height = map(millimetres, cutting.paper)
    yield '<?xml version="1.0" encoding="UTF-8"?>'
    yield (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}">'
    )
    for layer in Layer:
        shapes = cutting.on(layer)
        if shapes:
            yield f'<g id="{layer.value}">'
            for shape in shapes:
                yield f'<{_shape(shape)} fill="none" stroke="{_colour(layer)}" stroke-width="{HAIRLINE}"/>'
            yield "</g>"
    yield "</svg>"


def _colour(layer: Layer) -> str:
    match layer:
        case Layer.HOLES | Layer.OUTLINES:
            return "#ff0000"
        case Layer.FOLDS:
            return "#00aa00"
        case Layer.REGISTRATION:
            return "#000000"
        case Layer.POUCH | Layer.PAPER:
            return "#0000ff"
        case _:
            assert_never(layer)


def _shape(shape: Shape) -> str:
    match shape:
        case Circle(x, y, radius):
            return f'circle cx="{millimetres(x)}" cy="{millimetres(y)}" r="{millimetres(radius)}"'
        case Outline(start, (*parts, Straight())):  # the last straight part is what Z draws
            return f'path d="{_path(start, parts)} Z"'
        case Outline(start, parts):
            return f'path d="{_path(start, parts)} Z"'
        case Open(start, parts):
            return f'path d="{_path(start, parts)}"'
        case _:
            assert_never(shape)


def _path(start: Point, parts: Iterable[Part]) -> str:
    return " ".join([f"M {millimetres(start[0])} {millimetres(start[1])}", *map(_part, parts)])


def _part(part: Part) -> str:
    match part:
        case Straight(x, y):
            return f"L {millimetres(x)} {millimetres(y)}"
        case Arc(x, y, radius, clockwise):
            r = millimetres(radius)
            return f"A {r} {r} 0 0 {int(clockwise)} {millimetres(x)} {millimetres(y)}"
        case _:
            assert_never(part)
