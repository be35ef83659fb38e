"""From the leaves on a sheet to the paths that cut them, one set for each arrangement of leaves.

Front sides only: a sheet is cut as its front is looked at, and its back is the mirror image of that.

A leaf with waste around it has a closed outline of its own, corners rounded. Leaves that touch each other or fill
their paper have the straight sides that they share cut once, as open lines; where a corner is rounded, its quarter
of a circle is an open line of its own and is cut before the sides. A side that is the paper's own edge, or as good
as that, is not cut: the paper's edge is the leaf's.

A leaf with a cut tab is outlined by steps (`stepped`), and shares three of its sides and the tip of its tab.

A folded card is one piece: it has one outline, and the line of its fold, which is scored and not cut.

Inner before outer: holes, folds, corners, lines between leaves, lines towards waste, outlines. Nothing is cut twice.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from dotleader.handbook.stocks.measures import in_flap, leaves_together
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.extents import Rect
from dotleader.page.face.placement import Side
from dotleader.page.imposition import Slot, folds, on_sheet, united
from dotleader.page.sheet.cut_shapes import Arc, Circle, Cut, Cutting, Layer, Open, Outline, Part, Point, Straight
from dotleader.page.sheet.holes import as_cut, hole_centres, up_to_paper
from dotleader.page.sheet.sheets import LeafPlace, Sheet
from dotleader.page.sheet.stepped import Stepped


def cuttings(papers: Iterable[Sheet], stock: Stock, marks: Sequence[Rect] = ()) -> tuple[Cutting, ...]:
    """How the sheets are cut, each arrangement once, in the order of `Sheet.arrangement`.

    `marks` are printed registration marks.
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
            tuple(_cuts(some[0].front.leaves, stock, marks)),
        )
        for number, some in sorted(alike.items())
    )


def _cuts(leaves: Sequence[LeafPlace], stock: Stock, marks: Sequence[Rect]) -> Iterator[Cut]:
    together = leaves_together(stock)
    lying = [place.rect for place in leaves]
    rects = [up_to_paper(piece, stock.paper) for piece in united(lying, together)]
    paper = Rect(0, 0, *stock.paper)
    joined = [
        rect for at, rect in enumerate(rects) if _at_edge(rect, paper) or _touches(rect, rects[:at] + rects[at + 1 :])
    ]
    stepped = _stepped(leaves, rects, stock)
    yield from (Cut(Layer.HOLES, hole) for place in leaves for hole in _holes(place, stock))
    yield from (Cut(Layer.FOLDS, _straight(fold)) for fold in folds(lying, together))
    for rect in joined:
        inner = stepped[rect].open_paths() if rect in stepped else _corners(rect, stock.corner_radius)
        yield from (Cut(Layer.OUTLINES, path) for path in inner)
    sides = [side for rect in joined for side in (stepped[rect].straight_sides() if rect in stepped else _sides(rect))]
    yield from (Cut(Layer.OUTLINES, line) for line in _lines(sides, paper))
    for rect in rects:
        if rect not in joined:
            whole = stepped[rect].outline() if rect in stepped else outline(rect, stock.corner_radius)
            yield Cut(Layer.OUTLINES, whole)
    yield from (Cut(Layer.REGISTRATION, outline(mark)) for mark in marks)
    if stock.pouch != (0, 0):
        yield from (Cut(Layer.POUCH, outline(_pouch(place, stock))) for place in leaves)
    yield Cut(Layer.PAPER, outline(paper))


def _stepped(leaves: Sequence[LeafPlace], rects: Sequence[Rect], stock: Stock) -> dict[Rect, Stepped]:
    """Leaves with cut tabs by where their sides are."""
    if not stock.recess:
        return {}
    slots = (Slot(place.x, place.y, place.w, place.h, place.turn) for place in leaves)
    return {rect: Stepped(stock, slot, place.tab, rect) for place, slot, rect in zip(leaves, slots, rects, strict=True)}


def _holes(place: LeafPlace, stock: Stock) -> Iterator[Circle]:
    slot = Slot(place.x, place.y, place.w, place.h, place.turn)
    for centre in hole_centres(stock, Side.FRONT, as_cut(stock, slot)) if not in_flap(stock) else ():
        x, y = on_sheet(slot).point(*centre)
        yield Circle(x, y, stock.hole_diameter // 2 + stock.relief)


def _pouch(place: LeafPlace, stock: Stock) -> Rect:
    """The pouch around a leaf that lies in its middle."""
    width, height = stock.pouch if place.turn % 180 == 0 else stock.pouch[::-1]
    left, top = place.x - (width - place.w) // 2, place.y - (height - place.h) // 2
    return Rect(left, top, left + width, top + height)


def _straight(line: Rect) -> Open:
    """A rectangle without width or height as a line."""
    return Open((line.left, line.top), (Straight(line.right, line.bottom),))


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
    if radius:
        yield from (Open(start, (arc,)) for start, arc in _quarters(rect, radius))


def _quarters(rect: Rect, radius: int) -> Iterator[tuple[Point, Arc]]:
    """The quarters of circles clockwise from the upper right corner, each with where it begins."""
    left, top, right, bottom = rect
    yield (right - radius, top), Arc(right, top + radius, radius)
    yield (right, bottom - radius), Arc(right - radius, bottom, radius)
    yield (left + radius, bottom), Arc(left, bottom - radius, radius)
    yield (left, top + radius), Arc(left + radius, top, radius)


# Shared lines


def _sides(rect: Rect) -> Iterator[Rect]:
    """Each as a rectangle without width or height."""
    left, top, right, bottom = rect
    yield from (Rect(at, top, at, bottom) for at in (left, right))
    yield from (Rect(left, at, right, at) for at in (top, bottom))


def _lines(sides: Sequence[Rect], paper: Rect) -> Iterator[Open]:
    """The straight sides of leaves that touch, each stretch once: between leaves first, then towards waste."""
    found = []
    for upright in (True, False):
        lines: dict[int, list[tuple[int, int]]] = {}
        for left, top, right, bottom in sides:
            if (left == right) is not upright:
                continue
            at, start, end = (left, top, bottom) if upright else (top, left, right)
            if at not in ((paper.left, paper.right) if upright else (paper.top, paper.bottom)):
                lines.setdefault(at, []).append((start, end))
        for at, stretches in lines.items():
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
