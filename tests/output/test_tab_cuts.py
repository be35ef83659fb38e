"""Tabs in cut files, read back and held against the sheets that are printed: within 0.01 mm on both sides."""

from __future__ import annotations

import pytest

from dotleader.handbook.stocks.measures import BLEED
from dotleader.handbook.stocks.stock import Stock
from dotleader.output.cut_dxf import cut_dxf
from dotleader.output.cut_svg import cut_svg
from dotleader.output.pdf import PdfPage
from tests.output.cut_reading import Layers, drawing_of, dxf_of, svg_of
from tests.output.reading import by_plumber, written
from tests.output.test_cut_files import MM, NEAR, printed
from tests.page.tabbed import TABS


def hollow_arcs(read: Layers) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """The ends of arcs whose circle lies to the left as one goes, beside the leaf: at the inner corners of tabs."""
    found = []
    for path in read.paths.get("outlines", []):
        for (x, y), (to_x, to_y), middle in zip(path.points, path.points[1:], path.middles, strict=False):
            if middle is not None and (to_x - x) * (middle[1] - y) - (to_y - y) * (middle[0] - x) < 0:
                found.append(((x, y), (to_x, to_y)))
    return found


@pytest.mark.parametrize("stock", TABS.values(), ids=TABS)
def test_tabs_are_cut_where_they_are_printed_on_both_sides(stock: Stock) -> None:
    some, found = printed(stock)
    width, bleed = stock.paper[0] / 1000, BLEED / 1000
    for cutting in found:
        sheet = next(sheet for sheet in some if sheet.number in cutting.sheets)
        data = written([PdfPage(*stock.paper, side.items) for side in sheet.sides])
        for read in (svg_of(cut_svg(cutting)), dxf_of(cut_dxf(cutting))):
            arcs = hollow_arcs(read)
            assert len(arcs) == 2 * len(sheet.front.leaves)
            with by_plumber(data) as document:
                for page, mirrored in zip(document.pages, (False, True), strict=True):
                    grounds = [
                        (r["x0"] * MM, r["top"] * MM, r["x1"] * MM, r["bottom"] * MM) for r in page.rects if r["fill"]
                    ]
                    if mirrored:
                        grounds = [(width - right, top, width - left, low) for left, top, right, low in grounds]
                    for start, end in arcs:
                        assert any(corner_of(ground, start, end, bleed) for ground in grounds)


def corner_of(
    ground: tuple[float, float, float, float], start: tuple[float, float], end: tuple[float, float], bleed: float
) -> bool:
    """Whether an inner corner of a tab is one of this ground's: on the line of the edge that is cut back the ground
    begins, and it reaches past the tab's side by the bleed."""
    left, top, right, bottom = ground
    for edge, side in ((start, end), (end, start)):  # one end of the arc is on the edge, the other on the tab's side
        upright = min(abs(edge[0] - left), abs(edge[0] - right)) <= NEAR
        if upright and min(abs(side[1] - bleed - top), abs(side[1] + bleed - bottom)) <= NEAR:
            return True
        level = min(abs(edge[1] - top), abs(edge[1] - bottom)) <= NEAR
        if level and min(abs(side[0] - bleed - left), abs(side[0] + bleed - right)) <= NEAR:
            return True
    return False


@pytest.mark.parametrize("stock", TABS.values(), ids=TABS)
def test_bulges_are_of_both_signs(stock: Stock) -> None:
    """Above zero counter-clockwise with y up (DXF reference, group 42): the inner corners of an outline."""
    for cutting in printed(stock)[1]:
        bulges = [
            vertex.dxf.bulge
            for entity in drawing_of(cut_dxf(cutting)).modelspace().query("POLYLINE[layer=='OUTLINES']")
            for vertex in entity.vertices
            if vertex.dxf.bulge
        ]
        hollow = [bulge for bulge in bulges if bulge > 0]
        assert all(abs(bulge) == pytest.approx(0.41421356) for bulge in bulges)  # the tangent of 22.5 degrees
        assert 0 < len(hollow) < len(bulges)
        assert len(hollow) == len(hollow_arcs(svg_of(cut_svg(cutting))))
