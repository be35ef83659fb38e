"""Sheets as pixels: what can be seen on a printed side, found in the picture and not asked of the program.

The back of a sheet is looked at through the paper: turned about the long edge, what is at (x, y) lies behind
(W - x, y), about the short edge behind (x, H - y). These are IPP's `two-sided-long-edge` and `two-sided-short-edge`
(Internet Printing Protocol, RFC 8011, 5.2.8, from memory). The picture of a back is mirrored so, whole, before anything
is looked for in it.

Lengths in millimetres from the upper left corner of the front. Lines are measured by the middle of their ink, which is
good to some hundredths of a millimetre; pdfium draws filled boxes on whole pixels, so that their edges are measured in
a picture of that place, four times as fine.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal, NamedTuple

import numpy as np

from tests.output.pixel_lines import COARSE, DARK, Ink, boxes, eroded, thin

Seen = Literal["front", "long-edge", "short-edge"]
"""The front, or a back through the paper, turned about that edge."""

FINE = 40
"""Pixels to the millimetre where edges are measured."""

MARK = 5.0
"""A crop mark is 5 mm long (common practice among print shops)."""

CROSS = 3.6
CLUSTER = 0.15


class Area(NamedTuple):
    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True)
class Stroke:
    """A thin straight line: where it stands, and from where to where it goes along itself."""

    upright: bool
    at: float
    start: float
    end: float

    @property
    def length(self) -> float:
        return self.end - self.start

    @property
    def middle(self) -> float:
        return (self.start + self.end) / 2


class Side:
    """One side of a sheet. `page` is pdfium's, `Any` at the border to it; `paper` its size."""

    def __init__(self, page: Any, paper: tuple[float, float], seen: Seen) -> None:
        self._page, self.paper, self.seen = page, paper, seen

    def _picture(self, scale: int, crop: tuple[float, ...] = (0, 0, 0, 0)) -> Ink:
        drawn = self._page.render(scale=scale * 25.4 / 72, grayscale=True, crop=crop)
        return 255 - np.asarray(drawn.to_numpy()).reshape(drawn.height, drawn.width)

    @cached_property
    def ink(self) -> Ink:
        return mirrored(self._picture(COARSE), self.seen)

    @property
    def per_mm(self) -> tuple[float, float]:
        """Pixels to the millimetre: a picture has whole pixels, and its page is stretched to them."""
        high, wide = self.ink.shape
        return wide / self.paper[0], high / self.paper[1]

    @cached_property
    def strokes(self) -> tuple[Stroke, ...]:
        """All thin lines of 3 mm and more."""
        across, along = self.per_mm
        level = [Stroke(False, y / along, a / across, b / across) for y, a, b in thin(self.ink)]
        upright = [Stroke(True, x / across, a / along, b / along) for x, a, b in thin(self.ink.T)]
        apart = {(each.upright, round(each.at, 1), round(each.start)): each for each in (*level, *upright)}
        return tuple(apart.values())  # a ruler's line is found anew between each two of its ticks

    @cached_property
    def crop_marks(self) -> tuple[Stroke, ...]:
        """The lines of 5 mm with nothing beside them."""
        return tuple(each for each in self.strokes if abs(each.length - MARK) < 0.2 and self._alone(each))

    def _alone(self, stroke: Stroke) -> bool:
        along = stroke.start - 0.4, stroke.end + 0.4
        for near, far in ((-0.7, -0.25), (0.25, 0.7)):
            beside = stroke.at + near, stroke.at + far
            area = Area(beside[0], along[0], beside[1], along[1])
            if not stroke.upright:
                area = Area(along[0], beside[0], along[1], beside[1])
            if self.inked(area):
                return False
        return True

    @cached_property
    def crosses(self) -> tuple[tuple[float, float], ...]:
        """The middles of the marks of holes: two lines of 3.6 mm across each other."""
        return self.crossings(CROSS)

    def crossings(self, length: float) -> tuple[tuple[float, float], ...]:
        some = [each for each in self.strokes if abs(each.length - length) < 0.2]
        pairs = ((a, b) for a in some if not a.upright for b in some if b.upright)
        return tuple(
            (b.at, a.at) for a, b in pairs if abs(a.middle - b.at) < CLUSTER and abs(b.middle - a.at) < CLUSTER
        )

    @cached_property
    def leaves(self) -> tuple[Area, ...]:
        """The rectangles at each of whose corners two crop marks point, and that have no smaller one in them."""
        xs = _clusters(mark.at for mark in self.crop_marks if mark.upright)
        ys = _clusters(mark.at for mark in self.crop_marks if not mark.upright)
        found = [
            Area(left, top, right, bottom)
            for i, left in enumerate(xs)
            for right in xs[i + 1 :]
            for j, top in enumerate(ys)
            for bottom in ys[j + 1 :]
            if all(self._pointed_at(x, y, x == right, y == bottom) for x in (left, right) for y in (top, bottom))
        ]
        return tuple(one for one in found if not any(other != one and _within(other, one) for other in found))

    def _pointed_at(self, x: float, y: float, right: bool, bottom: bool) -> bool:
        """Whether marks stand off a corner on its outer side, level and upright."""
        ends = {False: (x, y, right), True: (y, x, bottom)}
        for upright, (along, at, outer) in ends.items():
            gaps = [
                (mark.start - along if outer else along - mark.end)
                for mark in self.crop_marks
                if mark.upright is upright and abs(mark.at - at) < CLUSTER
            ]
            if not any(2.5 < gap < 5 for gap in gaps):
                return False
        return True

    def rules(self, within: Area) -> tuple[Stroke, ...]:
        """The longest thin lines inside of a leaf: as long as its column of text is wide."""
        lines = [each for each in self.strokes if each.length > 30 and _within(self._area(each), within)]
        longest = max((each.length for each in lines), default=0.0)
        return tuple(each for each in lines if each.length > longest - 0.3)

    def _area(self, stroke: Stroke) -> Area:
        if stroke.upright:
            return Area(stroke.at, stroke.start, stroke.at, stroke.end)
        return Area(stroke.start, stroke.at, stroke.end, stroke.at)

    @cached_property
    def bands(self) -> tuple[Area, ...]:
        """Black bands of 40 mm and more, their edges measured finely. A word in white may stand in one."""
        dark = self.ink > DARK
        long, thick = 40 * COARSE, COARSE
        found = []
        for upright in (True, False):
            mask = dark if upright else dark.T
            solid = eroded(eroded(mask, thick).T, long).T
            across, along = self.per_mm if upright else self.per_mm[::-1]
            for left, top, right, bottom in boxes(solid, gap=6 * COARSE):
                box = left / across, top / along, (right + thick - 1) / across, (bottom + long - 1) / along
                found.append(self._fine(Area(*box) if upright else Area(box[1], box[0], box[3], box[2])))
        return tuple(found)

    def _fine(self, rough: Area) -> Area:
        """The edges of a band, each looked at 8 mm from a corner."""
        inner = 8 if rough.bottom - rough.top > rough.right - rough.left else 2
        level = rough.top + inner
        upright = rough.left + (2 if inner == 8 else 8)
        edges = {side: self._edge(x, level, across=True) for side, x in (("l", rough.left), ("r", rough.right))}
        edges |= {side: self._edge(upright, y, across=False) for side, y in (("t", rough.top), ("b", rough.bottom))}
        return Area(edges["l"], edges["t"], edges["r"], edges["b"])

    def _edge(self, x: float, y: float, across: bool) -> float:
        """Where white turns to black near a point, across the paper or down it."""
        half = 1.0
        width, height = self.paper
        px, py = (width - x if self.seen == "long-edge" else x), (height - y if self.seen == "short-edge" else y)
        unit = 72 / 25.4 / FINE
        whole = math.ceil(self._page.get_width() / unit), math.ceil(self._page.get_height() / unit)
        left, top = (max(0, round((at - half) * FINE)) for at in (px, py))
        right, low = (min(side, round((at + half) * FINE)) for side, at in zip(whole, (px, py), strict=True))
        crop = (left * unit, (whole[1] - low) * unit, (whole[0] - right) * unit, top * unit)
        part = self._picture(FINE, tuple(max(0.0, side - unit / 100) for side in crop))
        dark = (part > 127).mean(axis=0 if across else 1)
        share = float(dark.sum())
        pixel = (left if across else top) + (len(dark) - share if dark[-1] > dark[0] else share)
        at = pixel * self.paper[not across] / whole[not across]  # a page is stretched to whole pixels
        flipped = self.seen == ("long-edge" if across else "short-edge")
        return self.paper[not across] - at if flipped else at

    def inked(self, area: Area) -> bool:
        """Whether there is any ink in an area, at all."""
        return bool((self.cut_out(area) > 8).any())

    def cut_out(self, area: Area) -> Ink:
        """The pixels that lie in an area as a whole."""
        across, along = self.per_mm
        left, right = math.ceil(area.left * across - 0.01), math.floor(area.right * across + 0.01)
        top, bottom = math.ceil(area.top * along - 0.01), math.floor(area.bottom * along + 0.01)
        return self.ink[max(0, top) : max(0, bottom), max(0, left) : max(0, right)]


def mirrored(ink: Ink, seen: Seen) -> Ink:
    match seen:
        case "long-edge":
            return ink[:, ::-1]
        case "short-edge":
            return ink[::-1]
        case _:
            return ink


def _clusters(values: Iterator[float]) -> list[float]:
    """Values that are as good as one, taken together, in their order."""
    groups: list[list[float]] = []
    for value in sorted(values):
        if groups and value - groups[-1][-1] < CLUSTER:
            groups[-1].append(value)
        else:
            groups.append([value])
    return [sum(group) / len(group) for group in groups]


def _within(one: Area, other: Area) -> bool:
    return (
        one.left >= other.left - 0.01
        and one.top >= other.top - 0.01
        and one.right <= other.right + 0.01
        and one.bottom <= other.bottom + 0.01
    )
