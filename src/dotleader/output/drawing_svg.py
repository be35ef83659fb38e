"""A drawing as an SVG file, for the browser: one user unit is one millimetre.

Text stays text. It is set in the reader's own sans serif and stretched to the width that it has in the drawing's
typeface, so that it stands where it was placed. Equal drawings give equal bytes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import assert_never

from dotleader.output.millimetres import millimetres
from dotleader.page.drawn import Box, Drawn, Font, Group, Ink, Line, Link, Picture, Text
from dotleader.page.type.metrics import width

_COLOURS = {Ink.BLACK: "#000000", Ink.WHITE: "#ffffff", Ink.MEMORY: "#fff6c8", Ink.NONE: "none"}
_ESCAPES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;"})


def drawing_svg(width_: int, height: int, items: Iterable[Drawn]) -> bytes:
    """The whole file. A drawing has neither pictures nor links; a ValueError where it has one."""
    return ("\n".join(_lines(width_, height, items)) + "\n").encode("utf-8")


def _lines(across: int, down: int, items: Iterable[Drawn]) -> Iterator[str]:
    w, h = millimetres(across), millimetres(down)
    yield '<?xml version="1.0" encoding="UTF-8"?>'
    yield f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}">'
    yield f'<rect width="{w}" height="{h}" fill="#ffffff"/>'
    for item in items:
        yield from _drawn(item)
    yield "</svg>"


def _drawn(item: Drawn) -> Iterator[str]:
    match item:
        case Text():
            yield _text(item)
        case Line(points, wide, closed, fill, ink):
            ways = " ".join(f"{millimetres(x)},{millimetres(y)}" for x, y in points)
            yield (
                f'<{"polygon" if closed else "polyline"} points="{ways}" fill="{_COLOURS[fill]}" '
                f'stroke="{_COLOURS[ink] if wide else "none"}" stroke-width="{millimetres(wide)}"{_dots(item)}/>'
            )
        case Box(x, y, w, h, fill, stroke, radius):
            yield (
                f'<rect x="{millimetres(x)}" y="{millimetres(y)}" width="{millimetres(w)}" height="{millimetres(h)}" '
                f'rx="{millimetres(radius)}" fill="{_COLOURS[fill]}" stroke="{"#000000" if stroke else "none"}" '
                f'stroke-width="{millimetres(stroke)}"/>'
            )
        case Group(x, y, inner, turn):
            yield f'<g transform="translate({millimetres(x)} {millimetres(y)}) rotate({-turn})">'
            for one in inner:
                yield from _drawn(one)
            yield "</g>"
        case Picture() | Link():
            raise ValueError("a drawing has no pictures and no links")
        case _ as never:
            assert_never(never)


def _text(text: Text) -> str:
    x, y = millimetres(text.x), millimetres(text.y)
    turned = f' transform="rotate({-text.turn} {x} {y})"' if text.turn else ""
    weight = ' font-weight="bold"' if text.font is Font.BOLD else ""
    long = millimetres(width(text.string, text.font, text.size))
    size = f"{text.size / 1000 * 25.4 / 72:.4f}".rstrip("0").rstrip(".")
    where = f'x="{x}" y="{y}"{turned} font-family="sans-serif"{weight} font-size="{size}" fill="{_COLOURS[text.ink]}"'
    words = text.string.translate(_ESCAPES)
    return f'<text {where} textLength="{long}" lengthAdjust="spacingAndGlyphs" xml:space="preserve">{words}</text>'


def _dots(line: Line) -> str:
    if not line.dots:
        return ""
    return f' stroke-linecap="round" stroke-dasharray="0 {millimetres(line.dots)}"'
