"""Holes that are cut wider into the paper than they will be punched, so that film seals around them.

Punching through paper opens its edge to damp. For 3 mm of seal around a hole of 6 mm, 12 mm are cut out of the paper.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import isqrt

from dotleader.handbook.stocks.fault import Amiss, millimetres
from dotleader.handbook.stocks.measures import LEAST_SEAL, LEAST_SEAL_OF_ALL, body_of_leaf, in_flap
from dotleader.handbook.stocks.stock import Stock

LEAST_PAPER = 1_000
"""What must be left of the paper beside a widened hole (common practice, no source)."""


def relief_room(stock: Stock) -> tuple[int, str]:
    """The most by which holes can be widened all round, and beside what no more paper would be left.

    0 without film, which alone could seal them; it can be below zero. Text makes room by itself (`hole_strip`).
    """
    if stock.pouch == (0, 0) or not stock.holes:
        return 0, ""
    across, along = body_of_leaf(stock) if stock.bound_at == "left" else body_of_leaf(stock)[::-1]
    edge = min(stock.hole_edge, across - stock.hole_edge)
    ends = min(stock.holes[0], along - stock.holes[-1])
    rooms = [
        (edge - LEAST_PAPER, "the edge of the leaf"),
        (ends - LEAST_PAPER, "the end of the leaf's edge"),
    ]
    rooms += [
        ((there - here - LEAST_PAPER) // 2, "the next hole")
        for here, there in zip(stock.holes, stock.holes[1:], strict=False)
    ]
    corner = stock.corner_radius
    if edge < corner and ends < corner:
        squared = (corner - edge) ** 2 + (corner - ends) ** 2  # of the way from the middle of the corner's circle
        rooms.append((corner - isqrt(squared) - 1 - LEAST_PAPER, "the rounded corner"))
    room, beside = min(rooms)
    return room + stock.hole_diameter // -2, beside


def relief_faults(stock: Stock) -> Iterator[Amiss]:
    """A relief for which there is no film, no hole, or no paper."""
    if not stock.relief:
        return
    if stock.pouch == (0, 0):
        yield Amiss(
            "relief",
            "There is no film to seal around wider holes.",
            "Leave `relief` out, or say in `pouch` or `seal` how large the film is.",
        )
        return
    if not stock.holes:
        yield Amiss(
            "relief", "There are no holes to be cut wider.", "Leave `relief` out, or say in `holes` where they are."
        )
        return
    if in_flap(stock):
        yield Amiss("relief", "The holes go through film alone, and no paper is in their way.", "Leave `relief` out.")
        return
    room, beside = relief_room(stock)
    if stock.relief > room:
        most = (
            f"`{millimetres(room // 100 * 100)}` is the most that there is room for"
            if room >= 100
            else "There is room for none"
        )
        yield Amiss(
            "relief",
            f"Holes that are {millimetres(stock.relief)} wider all round leave "
            f"{millimetres(stock.relief - room, up=True)} too little paper beside {beside}.",
            f"{most}: {millimetres(LEAST_PAPER)} of paper has to be left.",
        )


def narrow_relief(stock: Stock) -> Iterator[Amiss]:
    """Film that seals around holes, and less of it than around a leaf."""
    if 0 < stock.relief < LEAST_SEAL_OF_ALL:
        yield Amiss(
            "relief",
            f"Around the holes the film seals {millimetres(stock.relief)}, "
            f"{millimetres(LEAST_SEAL - stock.relief, up=True)} less than 1/8 in.",
            "Cut the holes wider, or expect gaps where they are punched out of the middle.",
        )
