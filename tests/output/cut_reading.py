"""Cut files read back: SVG by the standard library's parser and a reader of paths, DXF by ezdxf.

Lengths in millimetres from the upper left corner of the sheet, y down, whatever the file has.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field
from io import StringIO
from typing import Any
from xml.etree import ElementTree

import ezdxf

SVG = "{http://www.w3.org/2000/svg}"


@dataclass
class Path:
    """Straight parts and arcs by their ends, and the middle of each arc."""

    closed: bool
    points: list[tuple[float, float]] = field(default_factory=list)
    middles: list[tuple[float, float] | None] = field(default_factory=list)
    """For each part, where the middle of its circle is; None where it is straight."""

    @property
    def box(self) -> tuple[float, float, float, float]:
        xs, ys = [x for x, _ in self.points], [y for _, y in self.points]
        return min(xs), min(ys), max(xs), max(ys)


@dataclass
class Layers:
    """By layer: circles as x, y and radius, and paths."""

    circles: dict[str, list[tuple[float, float, float]]] = field(default_factory=dict)
    paths: dict[str, list[Path]] = field(default_factory=dict)


def svg_of(data: bytes) -> Layers:
    root = ElementTree.fromstring(data)
    found = Layers()
    for group in root:
        assert group.tag == f"{SVG}g"
        layer = group.attrib["id"]
        for shape in group:
            if shape.tag == f"{SVG}circle":
                circle = (float(shape.attrib["cx"]), float(shape.attrib["cy"]), float(shape.attrib["r"]))
                found.circles.setdefault(layer, []).append(circle)
            else:
                assert shape.tag == f"{SVG}path"
                found.paths.setdefault(layer, []).append(svg_path(shape.attrib["d"]))
    return found


def svg_path(data: str) -> Path:
    """A path of M, L, A and Z, all of them absolute (SVG 1.1, chapter 8)."""
    path = Path(closed=False)
    for command, numbers in re.findall(r"([A-Za-z])([^A-Za-z]*)", data):
        values = [float(number) for number in numbers.split()]
        match command:
            case "M":
                path.points.append((values[0], values[1]))
            case "L":
                path.points.append((values[0], values[1]))
                path.middles.append(None)
            case "A":
                rx, ry, _, large, sweep, x, y = values
                assert rx == ry
                path.middles.append(middle_of(path.points[-1], (x, y), rx, large != sweep))
                path.points.append((x, y))
            case "Z":
                path.closed = True
                if math.dist(path.points[0], path.points[-1]) > 1e-9:
                    path.points.append(path.points[0])
                    path.middles.append(None)
            case _:
                raise AssertionError(f"no such command was expected: {command}")
    return path


def middle_of(start: tuple[float, float], end: tuple[float, float], radius: float, right: bool) -> tuple[float, float]:
    """By SVG 1.1, appendix F.6.5, for a circle: to the right as one goes, seen with y downwards, or to the left."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    chord = math.hypot(dx, dy)
    off = math.sqrt(max(0.0, radius * radius - chord * chord / 4)) * (1 if right else -1)
    return (start[0] + end[0]) / 2 - dy / chord * off, (start[1] + end[1]) / 2 + dx / chord * off


def drawing_of(data: bytes) -> Any:
    return ezdxf.read(StringIO(data.decode("ascii")))


def dxf_of(data: bytes) -> Layers:
    drawing = drawing_of(data)
    height = drawing.header["$EXTMAX"][1]
    found = Layers()
    for entity in drawing.modelspace():
        layer = entity.dxf.layer.lower()
        match entity.dxftype():
            case "CIRCLE":
                x, y, _ = entity.dxf.center
                found.circles.setdefault(layer, []).append((x, height - y, entity.dxf.radius))
            case "LINE":
                ends = [(point.x, height - point.y) for point in (entity.dxf.start, entity.dxf.end)]
                found.paths.setdefault(layer, []).append(Path(False, ends, [None]))
            case "POLYLINE":
                found.paths.setdefault(layer, []).append(polyline(entity, height))
            case other:
                raise AssertionError(f"no such entity was expected: {other}")
    return found


def polyline(entity: Any, height: float) -> Path:
    """Its parts as ezdxf makes lines and arcs of them."""
    path = Path(entity.is_closed)
    first, *_ = entity.vertices
    path.points.append((first.dxf.location.x, height - first.dxf.location.y))
    for part in entity.virtual_entities():
        ends = [(point.x, height - point.y) for point in part_ends(part)]
        near, far = sorted(ends, key=lambda point: math.dist(point, path.points[-1]))
        assert math.dist(near, path.points[-1]) < 1e-6
        path.points.append(far)
        path.middles.append((part.dxf.center.x, height - part.dxf.center.y) if part.dxftype() == "ARC" else None)
    return path


def part_ends(part: Any) -> tuple[Any, Any]:
    if part.dxftype() == "ARC":
        return part.start_point, part.end_point
    return part.dxf.start, part.dxf.end
