"""Holes that cannot be punched, with the millimetres by which they miss. Of an edge only the worst is spoken of."""

from __future__ import annotations

from collections.abc import Iterator
from math import isqrt

from dotleader.handbook.stocks.fault import Amiss, millimetres
from dotleader.handbook.stocks.measures import FILM_BESIDE_HOLE, LEAST_SEAL_OF_ALL, in_flap, seals
from dotleader.handbook.stocks.stock import Stock


def hole_faults(stock: Stock) -> Iterator[Amiss]:
    """One of the binding edge at most and one of its ends: where one hole is out, others are too."""
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
    flap = in_flap(stock) and seal_across >= _flap(stock)
    of_edge = list(_flap_faults(stock, seal_across, radius)) if flap else []
    if edge < radius and not flap:
        of_edge.append(
            Amiss(
                "holes",
                f"The holes reach {_beyond(radius - edge, seal_across)}.",
                f"Put them farther from the edge.{_counted(stock)}{_or_in_flap(stock)}",
            )
        )
    yield from of_edge
    if ends < radius:
        yield Amiss(
            "holes",
            f"The outermost holes reach {millimetres(radius - ends, up=True)} beyond the ends of the leaf's edge, "
            f"which is {millimetres(along)} long{_and_film(radius - ends, seal_along)}.",
            "Take fewer holes, or put them closer together.",
        )
    elif not flap and not of_edge and (into := _into_corner(ends, edge, stock.corner_radius, radius)) > 0:
        yield Amiss(
            "holes",
            f"The outermost holes reach {millimetres(into, up=True)} into the rounded corners.",
            "Take smaller corners, or put the holes closer together or farther from the edge.",
        )


def _flap(stock: Stock) -> int:
    """How far film has to reach beyond the leaf for holes through the film alone."""
    return LEAST_SEAL_OF_ALL + stock.hole_diameter + FILM_BESIDE_HOLE


def _flap_faults(stock: Stock, seal: int, radius: int) -> Iterator[Amiss]:
    """Holes beside the leaf leave film on both sides: to seal the leaf's edge, and so that they do not tear out."""
    sealing = -stock.hole_edge - radius
    if sealing < LEAST_SEAL_OF_ALL:
        yield Amiss(
            "holes",
            f"Between the leaf and its holes, {millimetres(LEAST_SEAL_OF_ALL - sealing, up=True)} of film are missing "
            f"to seal it: {millimetres(LEAST_SEAL_OF_ALL)} are needed.",
            f"Put them nearer to the edge.{_counted(stock)}",
        )
    beside = seal + stock.hole_edge - radius
    if beside < FILM_BESIDE_HOLE:
        yield Amiss(
            "holes",
            f"Between the holes and the edge of the film, {millimetres(FILM_BESIDE_HOLE - beside, up=True)} of it are "
            f"missing: with less than {millimetres(FILM_BESIDE_HOLE)} they tear out.",
            f"Put them farther from the edge.{_counted(stock)}",
        )


def _or_in_flap(stock: Stock) -> str:
    if stock.pouch == (0, 0):
        return ""
    return f" For holes beside the leaf the film has to reach {millimetres(_flap(stock), up=True)} beyond it."


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
