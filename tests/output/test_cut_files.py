"""Cut files read back, and held against the sheets that are printed.

Outside checks: 1 in = 25.4 mm = 72 pt (PDF) = 96 px (CSS); A5 is 559.370 by 793.701 px; `$INSUNITS` 4 is millimetres
and `$ACADVER` AC1009 release 12 (the format's reference); a cut is a stroke of 0.001 in at most, red, without fill, in
layers, inner paths before outer ones (guides of university workshops). DXF is read by ezdxf and audited by it, SVG
by the standard library's XML parser, the PDF by pdfplumber.
"""

from __future__ import annotations

import hashlib
import os
import re
import subprocess
import sys
from xml.etree import ElementTree

import pytest

from dotleader.handbook.stocks.known import STOCK_NAMES, known_stock
from dotleader.handbook.stocks.library import ALSO_CALLED
from dotleader.handbook.stocks.making import made
from dotleader.handbook.stocks.measures import MARK_OFFSET
from dotleader.handbook.stocks.stock import Stock
from dotleader.output.cut_dxf import cut_dxf
from dotleader.output.cut_svg import cut_svg
from dotleader.output.millimetres import millimetres
from dotleader.output.pdf import PdfPage
from dotleader.page.imposition import imposition
from dotleader.page.sheet.cut_shapes import Arc, Cut, Cutting, Layer, Open, Straight
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.registration import registration_places
from dotleader.page.sheet.sheets import Sheet, sheets
from dotleader.source.record import replace
from tests.output.cut_reading import SVG, Layers, Path, drawing_of, dxf_of, svg_of
from tests.output.reading import by_plumber, written
from tests.page.leaves import EVERY_KIND, STOCKS, faces
from tests.page.tabbed import TABS

MM = 25.4 / 72
"""Millimetres to the point."""

NEAR = 0.01
"""How far a cut may be from what is printed, in millimetres."""

LIBRARY = {name: made(known_stock(name), name, None) for name in STOCK_NAMES if name not in ALSO_CALLED}
VARIANTS: dict[str, Stock] = {f"library: {name}": stock for name, stock in LIBRARY.items()} | STOCKS
VARIANTS |= {
    "A5, square": replace(STOCKS["A5"], corner_radius=0),
    "four, square": replace(STOCKS["four to a sheet"], corner_radius=0),
    "two across, film": replace(STOCKS["two across"], pouch=(106_350, 146_350)),
    "relief": replace(STOCKS["sample"], relief=3_000),
    "four, shared": replace(STOCKS["four to a sheet"], cut_lines="shared"),
    "A5, separate": replace(STOCKS["A5"], cut_lines="separate"),
    "folded at the top": replace(LIBRARY["folded card, A6"], bound_at="top", leaf=(80_000, 100_000)),
    "folded, shared": replace(LIBRARY["folded card, A6"], cut_lines="shared"),
}
VARIANTS |= {f"tabs: {name}": stock for name, stock in TABS.items()}
EVERY_STOCK = pytest.mark.parametrize("stock", VARIANTS.values(), ids=VARIANTS)


def printed(stock: Stock) -> tuple[list[Sheet], tuple[Cutting, ...]]:
    some = [sheet for sheet in sheets(faces(*EVERY_KIND, stock=stock), stock, cutter_marks=True) if sheet.number]
    return some, cuttings(some, stock, marks=registration_places(imposition(stock)))


def near(one: tuple[float, ...], other: tuple[float, ...], most: float = NEAR) -> bool:
    return all(abs(a - b) <= most for a, b in zip(one, other, strict=True))


def same(one: Path, other: Path) -> bool:
    if (one.closed, len(one.points)) != (other.closed, len(other.points)):
        return False
    middles = zip(one.middles, other.middles, strict=True)
    return all(near(a, b, 1e-6) for a, b in zip(one.points, other.points, strict=True)) and all(
        (a is None) is (b is None) and (a is None or b is None or near(a, b, 1e-6)) for a, b in middles
    )


@EVERY_STOCK
def test_both_files_say_the_same_in_the_same_order(stock: Stock) -> None:
    for cutting in printed(stock)[1]:
        one, other = svg_of(cut_svg(cutting)), dxf_of(cut_dxf(cutting))
        assert one.circles.keys() == other.circles.keys()
        assert one.paths.keys() == other.paths.keys()
        for layer, circles in one.circles.items():
            assert all(near(a, b, 1e-9) for a, b in zip(circles, other.circles[layer], strict=True))
        for layer, paths in one.paths.items():
            assert all(same(a, b) for a, b in zip(paths, other.paths[layer], strict=True))


@EVERY_STOCK
def test_a_library_finds_nothing_wrong_with_the_dxf(stock: Stock) -> None:
    for cutting in printed(stock)[1]:
        drawing = drawing_of(cut_dxf(cutting))
        audit = drawing.audit()
        assert (audit.errors, audit.fixes) == ([], [])
        assert (drawing.dxfversion, drawing.header["$INSUNITS"], drawing.header["$MEASUREMENT"]) == ("AC1009", 4, 1)
        used = {entity.dxf.layer for entity in drawing.modelspace()}
        assert used == {layer.value.upper() for layer in Layer if cutting.on(layer)}
        assert used | {"0"} <= {layer.dxf.name for layer in drawing.layers}
        colours = {layer.dxf.name: layer.dxf.color for layer in drawing.layers}
        assert colours["PAPER"] == 5
        assert {colours[name] for name in used & {"HOLES", "OUTLINES"}} <= {1}
        assert {colours[name] for name in used & {"FOLDS"}} <= {3}
        order = [entity.dxf.layer for entity in drawing.modelspace()]
        assert order == sorted(order, key=[layer.value.upper() for layer in Layer].index)


@EVERY_STOCK
def test_the_svg_is_strokes_in_millimetres_and_nothing_else(stock: Stock) -> None:
    for cutting in printed(stock)[1]:
        root = ElementTree.fromstring(cut_svg(cutting))
        width, height = (length / 1000 for length in stock.paper)
        assert (root.attrib["width"], root.attrib["height"]) == (f"{width:g}mm", f"{height:g}mm")
        assert [float(number) for number in root.attrib["viewBox"].split()] == [0, 0, width, height]
        assert [group.attrib["id"] for group in root] == [layer.value for layer in Layer if cutting.on(layer)]
        for element in root.iter():
            assert element.tag in {f"{SVG}{name}" for name in ("svg", "g", "circle", "path")}
            assert not {"transform", "style", "class"} & element.attrib.keys()
            assert not (element.text or "").strip()
        for group in root:
            for shape in group:
                assert shape.attrib["fill"] == "none"
                assert 0 < float(shape.attrib["stroke-width"]) <= 0.0254
                red = shape.attrib["stroke"] == "#ff0000"
                assert red is (group.attrib["id"] in ("holes", "outlines"))


@EVERY_STOCK
def test_cuts_coincide_with_what_is_printed_on_both_sides(stock: Stock) -> None:
    some, found = printed(stock)
    width = stock.paper[0] / 1000
    for cutting in found:
        sheet = next(sheet for sheet in some if sheet.number in cutting.sheets)
        data = written([PdfPage(*stock.paper, side.items) for side in sheet.sides])
        for read in (svg_of(cut_svg(cutting)), dxf_of(cut_dxf(cutting))):
            with by_plumber(data) as document:
                front, back = document.pages
                assert_holes(read, front, width, stock, mirrored=False)
                assert_holes(read, back, width, stock, mirrored=True)
                assert_marks(read, front, width, mirrored=False)
                assert_marks(read, back, width, mirrored=True)
                assert_folds(read, front, width, stock, mirrored=False)
                assert_folds(read, back, width, stock, mirrored=True)
                squares = [(r["x0"] * MM, r["top"] * MM) for r in front.rects if near_square(r)]
                paths = read.paths.get("registration", [])
                assert len(paths) == (0 if imposition(stock).filling else 3)
                assert all(any(near(path.box[:2], square) for square in squares) for path in paths)


def near_square(rect: dict[str, float]) -> bool:
    return near((rect["width"] * MM, rect["height"] * MM), (4, 4))


def assert_holes(read: Layers, page: object, width: float, stock: Stock, mirrored: bool) -> None:
    """Every hole that is cut has a circle of its size around its centre on a page, and the page no others."""
    drawn = []
    for curve in page.curves:  # type: ignore[attr-defined]  # pdfplumber has no types
        left, top, right, bottom = (curve[name] * MM for name in ("x0", "top", "x1", "bottom"))
        if near((right - left, bottom - top), ((stock.hole_diameter + 2 * stock.relief) / 1000,) * 2):
            x = (left + right) / 2
            drawn.append((width - x if mirrored else x, (top + bottom) / 2, (right - left) / 2))
    holes = read.circles.get("holes", [])
    assert len(holes) == len(drawn) == len(set(holes))
    assert all(any(near(hole, circle) for circle in drawn) for hole in holes)


def assert_marks(read: Layers, page: object, width: float, mirrored: bool) -> None:
    """Every closed outline has two crop marks at each of its four corners, and every crop mark points at one."""
    lines = [
        tuple(sorted(((line["x0"] * MM, line["top"] * MM), (line["x1"] * MM, line["bottom"] * MM))))
        for line in page.lines  # type: ignore[attr-defined]
    ]
    marks = [line for line in lines if abs(line[1][0] - line[0][0] + line[1][1] - line[0][1] - 5) < NEAR]
    off = MARK_OFFSET / 1000
    for path in read.paths["outlines"]:
        if not path.closed:
            continue
        left, top, right, bottom = path.box
        if mirrored:
            left, right = width - right, width - left
        for x in (left, right):
            assert any(near((*a, *b), (x, top - off - 5, x, top - off)) for a, b in marks)
            assert any(near((*a, *b), (x, bottom + off, x, bottom + off + 5)) for a, b in marks)
        for y in (top, bottom):
            assert any(near((*a, *b), (left - off - 5, y, left - off, y)) for a, b in marks)
            assert any(near((*a, *b), (right + off, y, right + off + 5, y)) for a, b in marks)


def assert_folds(read: Layers, page: object, width: float, stock: Stock, mirrored: bool) -> None:
    """Every fold is one straight line that goes on, off the trim, as three dashes of 1 mm at either end."""
    dashes = [
        tuple(sorted(((line["x0"] * MM, line["top"] * MM), (line["x1"] * MM, line["bottom"] * MM))))
        for line in page.lines  # type: ignore[attr-defined]
    ]
    paths = read.paths.get("folds", [])
    assert bool(paths) is stock.folded
    for path in paths:
        (x1, y1), (x2, y2) = path.points
        assert not path.closed
        if mirrored:
            x1, x2 = width - x1, width - x2
        left, right, top, bottom = min(x1, x2), max(x1, x2), min(y1, y2), max(y1, y2)
        if imposition(stock).filling:
            continue
        for off in (3.5, 5.5, 7.5):
            if near((left,), (right,)):
                wanted = [(left, top - off - 1, left, top - off), (left, bottom + off, left, bottom + off + 1)]
            else:
                wanted = [(left - off - 1, top, left - off, top), (right + off, top, right + off + 1, top)]
            assert all(any(near((*a, *b), dash) for a, b in dashes) for dash in wanted)


FLUSH = {name: stock for name, stock in VARIANTS.items() if not stock.recess}  # tabs have inner corners, too


@pytest.mark.parametrize("stock", FLUSH.values(), ids=FLUSH)
def test_corners_are_round_towards_the_outside(stock: Stock) -> None:
    radius = stock.corner_radius / 1000
    for cutting in printed(stock)[1]:
        for path in svg_of(cut_svg(cutting)).paths["outlines"]:
            for start, end, middle in zip(path.points, path.points[1:], path.middles, strict=False):
                if middle is None:
                    continue
                assert abs(start[0] - end[0]) == pytest.approx(radius)
                assert abs(start[1] - end[1]) == pytest.approx(radius)
                left, top, right, bottom = path.box
                assert near((middle[0],), (left + radius,), 1e-6) or near((middle[0],), (right - radius,), 1e-6)
                assert near((middle[1],), (top + radius,), 1e-6) or near((middle[1],), (bottom - radius,), 1e-6)
            if path.closed and radius:
                assert sum(middle is not None for middle in path.middles) == 4


def test_inches_millimetres_points_and_pixels_agree() -> None:
    stock = STOCKS["sample"]  # on letter, 8.5 by 11 in
    some, (cutting,) = printed(stock)
    root = ElementTree.fromstring(cut_svg(cutting))
    assert root.attrib["width"] == f"{8.5 * 25.4:g}mm"
    with by_plumber(written([PdfPage(*stock.paper, some[0].front.items)])) as document:
        assert (document.pages[0].width, document.pages[0].height) == (pytest.approx(612), pytest.approx(792))
    pixels = [float(root.attrib[side].removesuffix("mm")) / 25.4 * 96 for side in ("width", "height")]
    assert pixels == [pytest.approx(816), pytest.approx(1056)]
    root = ElementTree.fromstring(cut_svg(Cutting(1, (1,), (148_000, 210_000), ())))
    assert root.attrib["viewBox"] == "0 0 148 210"
    pixels = [float(root.attrib[side].removesuffix("mm")) / 25.4 * 96 for side in ("width", "height")]
    assert pixels == [pytest.approx(559.370, abs=5e-4), pytest.approx(793.701, abs=5e-4)]


@pytest.mark.parametrize(
    ("length", "shown"),
    [(0, "0"), (1, "0.001"), (1_000, "1"), (146_050, "146.05"), (-3_175, "-3.175"), (10_000, "10"), (-50, "-0.05")],
)
def test_lengths_are_written_exactly(length: int, shown: str) -> None:
    assert millimetres(length) == shown


def test_arcs_go_the_way_they_are_meant_to_in_both_files() -> None:
    for clockwise, middle in ((True, (10, 20)), (False, (20, 10))):
        shape = Open((10_000, 10_000), (Arc(20_000, 20_000, 10_000, clockwise), Straight(30_000, 20_000)))
        cutting = Cutting(1, (1,), (100_000, 100_000), (Cut(Layer.OUTLINES, shape),))
        for read in (svg_of(cut_svg(cutting)), dxf_of(cut_dxf(cutting))):
            (path,) = read.paths["outlines"]
            assert not path.closed
            assert path.middles[1] is None
            assert path.middles[0] is not None
            assert near(path.middles[0], middle, 1e-6)


def both_files(name: str) -> bytes:
    return b"".join(cut_svg(cutting) + cut_dxf(cutting) for cutting in printed(VARIANTS[name])[1])


def test_equal_cuttings_give_equal_bytes_in_every_process() -> None:
    code = (
        "import hashlib; from tests.output.test_cut_files import both_files;"
        "print(hashlib.sha256(both_files('A6') + both_files('sample')).hexdigest())"
    )
    found = {hashlib.sha256(both_files("A6") + both_files("sample")).hexdigest()}
    for hashing in ("1", "4242"):
        surroundings = os.environ | {"PYTHONHASHSEED": hashing, "PYTHONPATH": os.pathsep.join(sys.path)}
        ran = subprocess.run([sys.executable, "-c", code], env=surroundings, capture_output=True, text=True, check=True)
        found.add(ran.stdout.strip())
    assert len(found) == 1
    assert not re.search(rb"\d{4}-\d\d-\d\d|HANDSEED|FINGERPRINT", both_files("A6"))
