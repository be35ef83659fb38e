"""The outline of a leaf with a cut tab: its outer edge is cut back but at the tab, all its corners are rounded.

On a leaf as its front is read, and clockwise, the outer edge goes down: in at the leaf's corner, out along the upper
end of the tab (an inner corner, counter-clockwise), around the tab, and back in. The rest is that of any leaf. Where
leaves share their cuts, the sides that they share are lines of their own; of the outer edge only the tip of the tab
lies on one.
"""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.measures import body_of_leaf, tab_radius
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.extents import Rect, Turned
from dotleader.page.face.thumb_index import slot_span
from dotleader.page.imposition import Slot, on_sheet
from dotleader.page.sheet.cut_shapes import Arc, Open, Outline, Part, Point, Straight
from dotleader.source.record import record

Path = tuple[Point, tuple[Part, ...]]


@record
class Stepped:
    """A leaf at its place on the front of a sheet, with its tab in one of the slots of the thumb index.

    `bounds` is where its sides are on the sheet: those of the slot, or the paper's edge beside it.
    """

    stock: Stock
    slot: Slot
    tab: int
    bounds: Rect

    def outline(self) -> Outline:
        """All of it, as a closed path."""
        left, top, _, bottom = self._sides
        radius = self.stock.corner_radius
        (start, upper), (tip, lower) = self._outer
        parts = [*upper, Straight(*tip), *lower, Straight(left + radius, bottom)]
        if radius:
            parts.append(Arc(left, bottom - radius, radius))
        parts.append(Straight(left, top + radius))
        if radius:
            parts.append(Arc(left + radius, top, radius))
        parts.append(Straight(*start))
        return Outline(self._point(*start), tuple(map(self._there, parts)))

    def open_paths(self) -> Iterator[Open]:
        """Its rounded corners at the binding edge, and its outer edge above and below the tip of the tab."""
        left, top, _, bottom = self._sides
        radius = self.stock.corner_radius
        paths: list[Path] = list(self._outer)
        if radius:
            paths.append(((left + radius, bottom), (Arc(left, bottom - radius, radius),)))
            paths.append(((left, top + radius), (Arc(left + radius, top, radius),)))
        for start, parts in paths:
            yield Open(self._point(*start), tuple(map(self._there, parts)))

    def straight_sides(self) -> Iterator[Rect]:
        """What may be shared with another leaf, as rectangles without width or height: three sides, and the tip."""
        left, top, right, bottom = self._sides
        radius = tab_radius(self.stock)
        upper, lower = slot_span(self.stock, self.tab)
        for side in (
            (left, top, right, top),
            (left, bottom, right, bottom),
            (left, top, left, bottom),
            (right, upper + radius, right, lower - radius),
        ):
            yield self._turned.rect(*side)

    @property
    def _turned(self) -> Turned:
        return on_sheet(self.slot)

    @property
    def _sides(self) -> Rect:
        """The bounds in the coordinates of the leaf."""
        place = self._turned
        left, top, right, bottom = self.bounds
        back = Turned(0, 0, (360 - place.turn) % 360)
        return back.rect(left - place.x, top - place.y, right - place.x, bottom - place.y)

    @property
    def _outer(self) -> tuple[Path, Path]:
        """The outer edge from the upper side to where the tip of the tab begins, and from its end to the lower side."""
        _, top, right, bottom = self._sides
        edge, _ = body_of_leaf(self.stock)
        corner, radius = self.stock.corner_radius, tab_radius(self.stock)
        upper, lower = slot_span(self.stock, self.tab)
        before: list[Part] = [Arc(edge, top + corner, corner)] if corner else []
        before += [Straight(edge, upper - radius), Arc(edge + radius, upper, radius, clockwise=False)]
        after: list[Part] = [Arc(right - radius, lower, radius)]
        if right - radius > edge + radius:
            before.append(Straight(right - radius, upper))
            after.append(Straight(edge + radius, lower))
        before.append(Arc(right, upper + radius, radius))
        after += [Arc(edge, lower + radius, radius, clockwise=False), Straight(edge, bottom - corner)]
        if corner:
            after.append(Arc(edge - corner, bottom, corner))
        return ((edge - corner, top), tuple(before)), ((right, lower - radius), tuple(after))

    def _point(self, x: int, y: int) -> Point:
        return self._turned.point(x, y)

    def _there(self, part: Part) -> Part:
        x, y = self._point(part.x, part.y)
        return Arc(x, y, part.radius, part.clockwise) if isinstance(part, Arc) else Straight(x, y)
