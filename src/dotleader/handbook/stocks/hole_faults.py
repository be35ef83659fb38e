"""Holes that cannot be punched, with the millimetres by which they miss. Only the worst hole is spoken of."""

from __future__ import annotations

from collections.abc import Iterator
from math import isqrt

from dotleader.handbook.stocks.fault import Amiss, millimetres
from dotleader.handbook.stocks.measures import seals
from dotleader.handbook.stocks.stock import Stock


def hole_faults(stock: Stock) -> Iterator[Amiss]:
    """At most one: where one hole is out, others are too."""
    if not stock.holes:
        return
    left = stock.bound_at == "left"
    across, along = stock.leaf if left else stock.leaf[::-1]
    seal_across, seal_along = seals(stock) if left else seals(stock)[::-1]
    closest = min((b - a for a, b in zip(stock.holes, stock.holes[1:], strict=False)), default=None)
    if closest is not None and closest <= stock.hole_diameter:
        yield Amiss(
            "holes",
            f"The holes run into one another: they are {millimetres(closest)} apart and "
            f"{millimetres(stock.hole_diameter)} wide.",
            "Check how far apart they are, centre to centre.",
        )
        return
    radius = -(-stock.hole_diameter // 2)
    edge = min(stock.hole_edge, across - stock.hole_edge)
    ends = min(min(at, along - at) for at in stock.holes)
    if edge < radius:
        yield Amiss(
            "holes",
            f"The holes reach {_beyond(radius - edge, seal_across)}.",
            f"Put them farther from the edge.{_counted(stock)}",
        )
    elif ends < radius:
        yield Amiss(
            "holes",
            f"The outermost holes reach {millimetres(radius - ends, up=True)} beyond the ends of the leaf's edge, "
            f"which is {millimetres(along)} long{_and_film(radius - ends, seal_along)}.",
            "Take fewer holes, or put them closer together.",
        )
    elif (into := _into_corner(ends, edge, stock.corner_radius, radius)) > 0:
        yield Amiss(
            "holes",
            f"The outermost holes reach {millimetres(into, up=True)} into the rounded corners.",
            "Take smaller corners, or put the holes closer together or farther from the edge.",
        )


def _beyond(out: int, seal: int) -> str:
    """How far something reaches over the edge of the leaf, or even of the film around it."""
    if seal <= 0:
        return f"{millimetres(out, up=True)} beyond the edge of the leaf"
    if out > seal:
        return f"{millimetres(out - seal, up=True)} beyond the edge of the film"
    return f"{millimetres(out, up=True)} beyond the edge of the leaf, into the seal"


def _and_film(out: int, seal: int) -> str:
    return f", and {millimetres(out - seal, up=True)} beyond the film" if 0 < seal < out else ""


def _counted(stock: Stock) -> str:
    return " They are counted from the edge of the pouch." if stock.pouch != (0, 0) else ""


def _into_corner(along: int, across: int, corner: int, radius: int) -> int:
    """By how much a hole reaches out of a rounded corner; not above zero where it lies inside."""
    if along >= corner or across >= corner:
        return 0
    # from the middle of the corner's circle, rounded up
    squared = (corner - along) ** 2 + (corner - across) ** 2
    return isqrt(squared - 1) + 1 + radius - corner
