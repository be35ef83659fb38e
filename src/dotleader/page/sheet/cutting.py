"""From the leaves on a sheet to the paths that cut them, one set for each arrangement of leaves.

Front sides only: a sheet is cut as its front is looked at, and its back is the mirror image of that.

A leaf with waste around it has a closed outline of its own, corners rounded. Leaves that touch each other or fill
their paper have the straight sides that they share cut once, as open lines; where a corner is rounded, its quarter
of a circle is an open line of its own and is cut before the sides. A side that is the paper's own edge, or as good
as that, is not cut: the paper's edge is the leaf's.

Inner before outer: holes, corners, lines between leaves, lines towards waste, outlines. Nothing is cut twice.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from dotleader.handbook.stocks.measures import DUPLEX_ERROR, FILLING, binding_margin
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import mm
from dotleader.page.extents import Rect
from dotleader.page.face.placement import Side
from dotleader.page.imposition import Slot
from dotleader.page.sheet.cut_shapes import Arc, Circle, Cut, Cutting, Layer, Open, Outline, Part, Point, Straight
from dotleader.page.sheet.sheet_marks import hole_centres
from dotleader.page.sheet.sheets import LeafPlace, Sheet, on_sheet

LEAST_PAPER = mm(1)
"""What must be left of the paper beside a widened hole (common practice, no source)."""


def cuttings(papers: Iterable[Sheet], stock: Stock, relief: int = 0, marks: Sequence[Rect] = ()) -> tuple[Cutting, ...]:
    """How the sheets are cut, each arrangement once, in the order of `Sheet.arrangement`.

    `relief` is how much wider, all round, holes are cut than they will be punched, so that film seals around them;
    a ValueError where the leaf has no room for it (`relief_room`). `marks` are printed registration marks.
    """
    alike: dict[int, list[Sheet]] = {}
    for sheet in papers:
        if sheet.arrangement:
            alike.setdefault(sheet.arrangement, []).append(sheet)
    return tuple(
        Cutting(
            number,
            tuple(sheet.number for sheet in some),
            stock.paper,
            tuple(_cuts(some[0].front.leaves, stock, relief, marks)),
        )
        for number, some in sorted(alike.items())
    )


def relief_room(stock: Stock) -> int:
    """The most by which holes can be widened all round; 0 without film, which alone could seal them.

    Paper must be left between a widened hole and its neighbour, the edges and the rounded corners, and it must not
    reach what is printed, be the back out of register or not. With 6 mm holes and 3 mm of seal, 12 mm are cut out.
    """
    if stock.pouch == (0, 0) or not stock.holes:
        return 0
    across, along = stock.leaf if stock.bound_at == "left" else stock.leaf[::-1]
    radius = -(-stock.hole_diameter // 2)
    edge = min(stock.hole_edge, across - stock.hole_edge)
    ends = min(stock.holes[0], along - stock.holes[-1])
    room = [edge - LEAST_PAPER, ends - LEAST_PAPER, binding_margin(stock) - stock.hole_edge - DUPLEX_ERROR]
    room += [(b - a - LEAST_PAPER) // 2 for a, b in zip(stock.holes, stock.holes[1:], strict=False)]
    corner = stock.corner_radius
    if edge < corner and ends < corner:
        from_middle = ((corner - edge) ** 2 + (corner - ends) ** 2) ** 0.5
        room.append(int(corner - from_middle) - LEAST_PAPER)
    return max(0, min(room) - radius)


def _cuts(leaves: Sequence[LeafPlace], stock: Stock, relief: int, marks: Sequence[Rect]) -> Iterator[Cut]:
    if relief and relief > relief_room(stock):
        raise ValueError(f"a leaf has room to widen its holes by {relief_room(stock)}, not by {relief}")
    rects = [_up_to_paper(place, stock.paper) for place in leaves]
    paper = Rect(0, 0, *stock.paper)
    joined = [
        rect for at, rect in enumerate(rects) if _at_edge(rect, paper) or _touches(rect, rects[:at] + rects[at + 1 :])
    ]
    yield from (Cut(Layer.HOLES, hole) for place in leaves for hole in _holes(place, stock, relief))
    if stock.corner_radius:
        yield from (Cut(Layer.OUTLINES, corner) for rect in joined for corner in _corners(rect, stock.corner_radius))
    yield from (Cut(Layer.OUTLINES, line) for line in _lines(joined, paper))
    yield from (Cut(Layer.OUTLINES, outline(rect, stock.corner_radius)) for rect in rects if rect not in joined)
    yield from (Cut(Layer.REGISTRATION, outline(mark)) for mark in marks)
    if stock.pouch != (0, 0):
        yield from (Cut(Layer.POUCH, outline(_pouch(place, stock))) for place in leaves)
    yield Cut(Layer.PAPER, outline(paper))


def _holes(place: LeafPlace, stock: Stock, relief: int) -> Iterator[Circle]:
    there = on_sheet(Slot(place.x, place.y, place.w, place.h, place.turn))
    for centre in hole_centres(stock, Side.FRONT):
        x, y = there.point(*centre)
        yield Circle(x, y, stock.hole_diameter // 2 + relief)


def _pouch(place: LeafPlace, stock: Stock) -> Rect:
    """The pouch around a leaf that lies in its middle."""
    width, height = stock.pouch if place.turn % 180 == 0 else stock.pouch[::-1]
    left, top = place.x - (width - place.w) // 2, place.y - (height - place.h) // 2
    return Rect(left, top, left + width, top + height)


def _up_to_paper(place: LeafPlace, paper: tuple[int, int]) -> Rect:
    """The leaf, each side that is as good as the paper's edge moved there."""
    right, bottom = place.x + place.w, place.y + place.h
    return Rect(
        0 if place.x <= FILLING else place.x,
        0 if place.y <= FILLING else place.y,
        paper[0] if paper[0] - right <= FILLING else right,
        paper[1] if paper[1] - bottom <= FILLING else bottom,
    )


def _at_edge(rect: Rect, paper: Rect) -> bool:
    return any(own == edge for own, edge in zip(rect, paper, strict=True))


def _touches(rect: Rect, others: Iterable[Rect]) -> bool:
    """Whether a stretch of a side is one of another leaf's, too."""
    for other in others:
        left, top, right, bottom = rect.common(other)
        if (left == right and top < bottom) or (top == bottom and left < right):
            return True
    return False


# Closed outlines, and corners by themselves


def outline(rect: Rect, radius: int = 0) -> Outline:
    """Clockwise from where the upper side begins."""
    start = here = rect.left + radius, rect.top
    parts: list[Part] = []
    for before, arc in _quarters(rect, radius):
        if before != here:
            parts.append(Straight(*before))
        if radius:
            parts.append(arc)
        here = arc.x, arc.y
    return Outline(start, tuple(parts))


def _corners(rect: Rect, radius: int) -> Iterator[Open]:
    for start, arc in _quarters(rect, radius):
        yield Open(start, (arc,))


def _quarters(rect: Rect, radius: int) -> Iterator[tuple[Point, Arc]]:
    """The quarters of circles clockwise from the upper right corner, each with where it begins."""
    left, top, right, bottom = rect
    yield (right - radius, top), Arc(right, top + radius, radius)
    yield (right, bottom - radius), Arc(right - radius, bottom, radius)
    yield (left + radius, bottom), Arc(left, bottom - radius, radius)
    yield (left, top + radius), Arc(left + radius, top, radius)


# Shared lines


def _lines(rects: Sequence[Rect], paper: Rect) -> Iterator[Open]:
    """The straight sides of leaves that touch, each stretch once: between leaves first, then towards waste."""
    found = []
    for upright in (True, False):
        sides: dict[int, list[tuple[int, int]]] = {}
        for rect in rects:
            start, end = (rect.top, rect.bottom) if upright else (rect.left, rect.right)
            for at in (rect.left, rect.right) if upright else (rect.top, rect.bottom):
                if at not in ((paper.left, paper.right) if upright else (paper.top, paper.bottom)):
                    sides.setdefault(at, []).append((start, end))
        for at, stretches in sides.items():
            for start, end, shared in _merged(stretches):
                found.append((not shared, upright, at, start, end))
    for _, upright, at, start, end in sorted(found):
        yield Open((at, start), (Straight(at, end),)) if upright else Open((start, at), (Straight(end, at),))


def _merged(stretches: Iterable[tuple[int, int]]) -> list[tuple[int, int, bool]]:
    """Stretches of one line that overlap or touch as one, and whether two of them overlap."""
    merged: list[tuple[int, int, bool]] = []
    for start, end in sorted(stretches):
        if merged and start <= merged[-1][1]:
            first, last, shared = merged[-1]
            merged[-1] = first, max(last, end), shared or start < last
        else:
            merged.append((start, end, False))
    return merged
