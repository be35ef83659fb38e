"""How thick a pile of leaves is, and what the rings hold. Whole micrometres, rounded to the safe side."""

from __future__ import annotations

from math import isqrt

from dotleader.handbook.stocks.fault import Amiss, as_measured, millimetres
from dotleader.handbook.stocks.measures import seals
from dotleader.handbook.stocks.stock import Stock


def stack_thickness(stock: Stock, leaves: int) -> int:
    """Of so many finished leaves that lie on each other: paper, and film on both sides of it."""
    return leaves * (2 * stock.film + stock.paper_thickness)


def hole_from_edge(stock: Stock) -> int:
    """From the centre of a hole to the edge of what is bound: of the pouch, or of the leaf without one."""
    return stock.hole_edge + seals(stock)[0 if stock.bound_at == "left" else 1]


def ring_capacity(stock: Stock) -> int:
    """How thick a pile the rings hold so that leaves still turn; 0 where nothing is said of rings.

    What lies inside a closed ring is as high as the pile and as long as from the holes to the edge: a rectangle in a
    circle, so that its diagonal is the ring's width at most. A fifth of the height is left free for turning (common
    practice, no source).
    """
    room = stock.ring_width**2 - hole_from_edge(stock) ** 2
    return isqrt(room) * 4 // 5 if stock.ring_width and room > 0 else 0


def narrowest_ring(stock: Stock, thick: int) -> int:
    """The inner width that rings need for a pile of that thickness."""
    height = -(-thick * 5 // 4)
    return isqrt(height**2 + hole_from_edge(stock) ** 2) + 2  # rounded up, here and where it is used to measure


def overfull(stock: Stock, leaves: int) -> Amiss | None:
    """What is to be said where a pile of so many leaves is too thick for the rings."""
    thick, most = stack_thickness(stock, leaves), ring_capacity(stock)
    if not stock.ring_width or thick <= most:
        return None
    held = most // stack_thickness(stock, 1)
    return Amiss(
        "rings",
        f"{_leaves(leaves)} {'is' if leaves == 1 else 'are'} {millimetres(thick, up=True)} thick, "
        f"{millimetres(thick - most, up=True)} more than rings of {as_measured(stock.ring_width)} hold so that leaves "
        "still turn.",
        f"Take rings of {millimetres(narrowest_ring(stock, thick), up=True)} or more, or divide the book: these hold "
        f"{_leaves(held)}.",
    )


def _leaves(count: int) -> str:
    return "1 leaf" if count == 1 else f"{count} leaves"
