"""What is wrong with a sheet as it is seen: sides that do not fall on each other, ink where a hole or film comes, cuts
that are not where the marks are. A sentence for each fault; none for a sheet that is right.

Both sides are pictures seen from the front (`pixels`); cuts are read back from the files. Millimetres.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from statistics import median

import numpy as np

from dotleader.handbook.stocks.stock import Stock
from tests.output.cut_reading import Layers
from tests.output.pixel_lines import COARSE, DARK, Ink
from tests.output.pixels import Area, Side, Stroke

NEAR = 0.1
"""How far apart front, back, and cuts may be."""

BLEED = 3.0
MARK_OFFSET = 3.5
PIXEL = 1 / COARSE


def sheet_faults(front: Side, back: Side, cut: Layers, stock: Stock) -> Iterator[str]:
    """Everything that is wrong with a sheet of leaves."""
    leaves = [leaf for area in leaf_areas(front, stock) for leaf in parted(area, stock)]
    yield from register_faults(front, back, leaves, stock)
    yield from hole_faults(front, back, cut, stock)
    for side in (front, back):
        for leaf in side.leaves:
            yield from edge_faults(side, leaf)
    yield from cut_faults(front, cut, stock)


def leaf_areas(front: Side, stock: Stock) -> tuple[Area, ...]:
    """The leaves that crop marks show; where there are none, leaves part the paper evenly."""
    if front.leaves:
        return front.leaves
    wide, high = front.paper
    across, down = (length / 1000 for length in stock.leaf)
    if stock.folded:
        across, down = (2 * across, down) if stock.bound_at == "left" else (across, 2 * down)
    ways = [
        (round(wide / a), round(high / b), abs(wide / a % 1 - 0.5) + abs(high / b % 1 - 0.5))
        for a, b in ((across, down), (down, across))
    ]
    columns, rows, _ = max(ways, key=lambda way: way[2])
    return tuple(
        Area(wide * i / columns, high * j / rows, wide * (i + 1) / columns, high * (j + 1) / rows)
        for j in range(rows)
        for i in range(columns)
    )


def parted(area: Area, stock: Stock) -> tuple[Area, ...]:
    """The two leaves of a folded card, which are joined in its middle; or the leaf itself."""
    if not stock.folded:
        return (area,)
    left, top, right, bottom = area
    (width, height), upright = (length / 1000 for length in stock.leaf), stock.bound_at == "left"
    across, along = (2 * width, height) if upright else (2 * height, width)
    if abs(right - left - across) + abs(bottom - top - along) < 4:  # side by side on the sheet
        return Area(left, top, (left + right) / 2, bottom), Area((left + right) / 2, top, right, bottom)
    return Area(left, top, right, (top + bottom) / 2), Area(left, (top + bottom) / 2, right, bottom)


# Both sides


def register_faults(front: Side, back: Side, leaves: Sequence[Area], stock: Stock) -> Iterator[str]:
    """What stands on both sides stands in the same places."""
    yield from _apart("leaf", front.leaves, back.leaves)
    yield from _apart("hole", front.crosses, back.crosses)
    bands = _long(front, leaves), _long(back, leaves)
    if all(bands):  # a divider has one on its front only
        yield from _apart("band", *bands)
    marks = [[(each.upright, each.at, each.start, each.end) for each in side.crop_marks] for side in (front, back)]
    yield from _apart("crop mark", *marks)
    for leaf in leaves:
        rules = front.rules(leaf), back.rules(leaf)
        if not rules[0] and not rules[1] and not front.inked(leaf) and not back.inked(leaf):
            continue  # a place without a leaf
        if not rules[0] or not rules[1]:
            yield "a leaf has no rule on one side"
            continue
        yield from _rule_faults(*rules, None if stock.bound_at == "top" else leaf)


def _rule_faults(front: Sequence[Stroke], back: Sequence[Stroke], leaf: Area | None) -> Iterator[str]:
    """The rules of both sides are as long as the column; the one at the foot is at the foot of both.

    That is not so where a leaf is bound at the top, and is not asked then: its back has its head at the front's foot,
    and the holes below its own foot.
    """
    if len({each.upright for each in (*front, *back)}) > 1:
        yield "the text of one side is across that of the other"
        return
    columns = [(median(each.start for each in side), median(each.end for each in side)) for side in (front, back)]
    off = max(abs(one - other) for one, other in zip(*columns, strict=True))
    if off > NEAR:
        yield f"the columns of a leaf are {off:.2f} mm apart"
    if leaf is None:
        return
    ends = (leaf.left, leaf.right) if front[0].upright else (leaf.top, leaf.bottom)
    outermost = min((each.at for each in front), key=lambda at: min(at - ends[0], ends[1] - at))
    off = min(abs(each.at - outermost) for each in back)
    if off > NEAR:
        yield f"the rules at the foot of a leaf are {off:.2f} mm apart"


def _long(side: Side, leaves: Sequence[Area]) -> list[Area]:
    """The bands as long as a leaf: those of emergencies, which stand on both sides."""
    least = 0.9 * min((min(leaf.right - leaf.left, leaf.bottom - leaf.top) for leaf in leaves), default=0.0)
    return [band for band in side.bands if max(band.right - band.left, band.bottom - band.top) > least]


def _apart(what: str, front: Iterable[tuple[float, ...]], back: Iterable[tuple[float, ...]]) -> Iterator[str]:
    """Each thing has one of the other side within reach, and there are as many."""
    ones, others = list(front), list(back)
    if len(ones) != len(others):
        yield f"there are {len(ones)} times a {what} on the front and {len(others)} on the back"
        return
    for one in ones:
        off = min(max(abs(a - b) for a, b in zip(one, other, strict=True)) for other in others)
        if off > NEAR:
            yield f"a {what} is {off:.2f} mm off on the back"


# Holes


def hole_faults(front: Side, back: Side, cut: Layers, stock: Stock) -> Iterator[str]:
    """A hole goes where the file says and the stock wants it, and takes nothing with it but its own mark."""
    circles = [(x, y) for x, y, _ in cut.circles.get("holes", [])]
    yield from (fault.replace("back", "paths") for fault in _apart("hole", front.crosses, circles))
    for leaf in front.leaves if stock.holes else ():
        if not any(_has(front.crosses, wanted) for wanted in hole_patterns(stock, leaf)):
            yield "the holes of a leaf are not where its stock has them"
    for side in (front, back):
        for x, y in front.crosses:
            yield from _hole_fault(side, x, y, stock.hole_diameter / 2000 + stock.relief / 1000)


def hole_patterns(stock: Stock, leaf: Area) -> Iterator[list[tuple[float, float]]]:
    """Where a leaf has its holes, in each of the four ways that it may lie."""
    edge, places = stock.hole_edge / 1000, [at / 1000 for at in stock.holes]
    width, height = (length / 1000 for length in stock.leaf)
    points = [(edge, at) if stock.bound_at == "left" else (at, edge) for at in places]
    for turn in range(4):
        lies = (width, height) if turn % 2 == 0 else (height, width)
        if max(abs(leaf.right - leaf.left - lies[0]), abs(leaf.bottom - leaf.top - lies[1])) < NEAR:
            yield [(leaf.left + x, leaf.top + y) for x, y in points]
        points = [(y, lies[0] - x) for x, y in points]  # a quarter counter-clockwise, seen with y downwards


def _has(found: Sequence[tuple[float, float]], wanted: Sequence[tuple[float, float]]) -> bool:
    return all(any(math.dist(one, other) < NEAR for other in found) for one in wanted)


def _hole_fault(side: Side, x: float, y: float, radius: float) -> Iterator[str]:
    reach = radius + 3 * PIXEL
    ink, away, across, along = around(side, x, y, reach)
    ring = (np.abs(away - radius) < 1.5 * PIXEL) & (ink > DARK)
    angles = np.floor(np.degrees(np.arctan2(along, across)) / 10).astype(int)
    if len(np.unique(angles[ring])) < 36:
        yield "a hole has no circle around it"
    arm = 2.0
    mark = ((np.abs(across) < 0.2) & (np.abs(along) < arm)) | ((np.abs(along) < 0.2) & (np.abs(across) < arm))
    if (ink[(away < radius - 0.2) & ~mark] > 8).any():
        yield f"there is ink in the hole at {x:.1f}, {y:.1f}"


def around(side: Side, x: float, y: float, reach: float) -> tuple[Ink, np.ndarray, np.ndarray, np.ndarray]:
    """The pixels about a point; how far the middle of each is from it, across and along it."""
    per_x, per_y = side.per_mm
    left, top = int((x - reach) * per_x), int((y - reach) * per_y)
    ink = side.ink[top : top + int(2 * reach * per_y) + 2, left : left + int(2 * reach * per_x) + 2]
    rows, columns = np.indices(ink.shape)
    across, along = (columns + left + 0.5) / per_x - x, (rows + top + 0.5) / per_y - y
    return ink, np.hypot(across, along), across, along


# Seals


def edge_faults(side: Side, leaf: Area) -> Iterator[str]:
    """Around a leaf, where film is sealed, there is no ink but what runs off its edge, over the whole of the bleed.

    Between bleed and crop marks there is none at all.
    """
    for name, outwards in _outwards(side, leaf):
        inside, bleed, beyond = outwards[:3].min(axis=0), outwards[6:33], outwards[37:39]
        steady = _steady(inside > DARK)
        if (bleed[:, steady & (inside <= 8)] > 8).any():
            yield f"there is ink in the seal on the {name}"
        if (bleed[:, steady & (inside > DARK)] <= DARK).any():
            yield f"a band ends within the bleed on the {name}"
        if (beyond > 8).any():
            yield f"there is ink between bleed and crop marks on the {name}"
    for x, y in ((leaf.left, leaf.top), (leaf.right, leaf.top), (leaf.left, leaf.bottom), (leaf.right, leaf.bottom)):
        right, low = x == leaf.right, y == leaf.bottom
        outer = Area(
            x + 0.2 if right else x - BLEED + 0.2,
            y + 0.2 if low else y - BLEED + 0.2,
            x + BLEED - 0.2 if right else x - 0.2,
            y + BLEED - 0.2 if low else y - 0.2,
        )
        within = Area(x - 0.5, y - 0.5, x - 0.2, y - 0.2)
        within = Area(*(at + 0.7 * shift for at, shift in zip(within, (not right, not low) * 2, strict=True)))
        dark = bool((side.cut_out(within) > DARK).any())
        if not dark and side.inked(outer):
            yield "there is ink in the seal at a corner"


def _outwards(side: Side, leaf: Area) -> Iterator[tuple[str, Ink]]:
    """Along each edge of a leaf, rows of pixels from 0.5 mm inside of it to 3.4 mm outside."""
    inner, outer = 5, 34
    per_x, per_y = side.per_mm
    left, right = round(leaf.left * per_x), round(leaf.right * per_x)
    top, bottom = round(leaf.top * per_y), round(leaf.bottom * per_y)
    level, upright = slice(left + 5, right - 5), slice(top + 5, bottom - 5)
    yield "left", side.ink[upright, left - outer : left + inner][:, ::-1].T
    yield "right", side.ink[upright, right - inner : right + outer].T
    yield "top", side.ink[top - outer : top + inner, level][::-1]
    yield "bottom", side.ink[bottom - inner : bottom + outer, level]


def _steady(dark: np.ndarray) -> np.ndarray:
    """Where it is the same for three pixels to both sides: the ends of a band may be out by one."""
    same = np.ones_like(dark)
    for shift in (1, 2, 3):
        same[shift:] &= dark[shift:] == dark[:-shift]
        same[:-shift] &= dark[shift:] == dark[:-shift]
    return same


# Cuts


def cut_faults(front: Side, cut: Layers, stock: Stock) -> Iterator[str]:
    """Each side of a leaf that is not the paper's own is cut, and bands end at the cuts of leaves that fill the paper.

    Where tabs are cut, the outer side is cut at a tab, and beside it farther in by the recess.
    """
    parts, recess = straight_parts(cut), stock.recess / 1000
    for leaf in leaf_areas(front, stock):
        for upright, at, start, end in sides_of(leaf):
            if min(at, front.paper[not upright] - at) < 1:
                continue
            along = [each for each in parts if each.upright is upright and each.start < end and each.end > start]
            off = min((abs(each.at - at) for each in along), default=math.inf)
            reached = [each for each in along if min(abs(each.at - at), abs(abs(each.at - at) - recess)) <= NEAR]
            if NEAR < off < 1:
                yield f"a cut is {off:.2f} mm off where the leaf ends"
            elif (off > NEAR and not recess) or sum(each.length for each in reached) < (end - start) / 2:
                yield "a side is not cut"
    if front.leaves or recess:
        return
    for band in _long(front, leaf_areas(front, stock)):
        level = band.right - band.left > band.bottom - band.top
        edges = (band.top, band.bottom) if level else (band.left, band.right)
        cuts = [each.at for each in parts if each.upright is not level]
        off = min((abs(edge - at) for edge in edges for at in cuts), default=0.0)
        if off > NEAR:
            yield f"a cut is {off:.2f} mm off the band that ends there"


def straight_parts(cut: Layers) -> list[Stroke]:
    found = []
    for path in cut.paths.get("outlines", []):
        for (x, y), (p, q), middle in zip(path.points, path.points[1:], path.middles, strict=False):
            if middle is None and math.dist((x, y), (p, q)) > 0:
                upright = abs(x - p) < abs(y - q)
                found.append(Stroke(upright, *((x, *sorted((y, q))) if upright else (y, *sorted((x, p))))))
    return found


def sides_of(leaf: Area) -> Iterator[tuple[bool, float, float, float]]:
    for x in (leaf.left, leaf.right):
        yield True, x, leaf.top, leaf.bottom
    for y in (leaf.top, leaf.bottom):
        yield False, y, leaf.left, leaf.right
