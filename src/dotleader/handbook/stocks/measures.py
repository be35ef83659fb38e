"""What a workshop needs around and inside a leaf. Lengths in whole micrometres.

Sources stand beside the measures; "common practice, no source" where there is none.
"""

from __future__ import annotations

from dotleader.handbook.stocks.stock import PRINTABLE_MARGIN as PRINTABLE_MARGIN  # noqa: PLC0414  # a measure like the rest
from dotleader.handbook.stocks.stock import Stock

LEAST_SEAL = 3_175
"""1/8 in: the film that is to be left around a leaf (film makers' and binderies' advice)."""

LEAST_SEAL_OF_ALL = 3_000
"""What pouches that are sold in whole millimetres leave: A5 in 154 x 216 mm (common practice, no source)."""

FILM_BESIDE_HOLE = 3_000
"""In a flap of film, from a hole to the edge of the film (common practice, no source)."""

USUAL_FILM = 127
"""5 mil, the middle one of the films that are sold (common practice, no source). On each side of the leaf."""

BLEED = 3_000
"""How far ink that reaches the edge is printed past it (common practice among print shops)."""

MARK_OFFSET = 3_500
"""How far a crop mark stands off the trim: outside the bleed, so that it is cut away with it."""

MARK_LENGTH = 5_000
FILLING = 1_500
"""Leaves fill a paper when they leave no more of it than this: ISO 216 allows a side that much."""

BINDING_MARGIN = 18_000
"""Least width beside the binding that is free of text, for hole strip and thumb."""

OUTER_MARGIN = 14_000
"""Free of text on the outer side: room for a thumb used as a cursor."""

FREE_EDGE = 6_000
"""No text stands nearer to a leaf's edge. Where a printer leaves more than this white, no leaf can fill the paper."""

FOLD_MARGIN = 10_000
"""Least width beside a fold that is free of text: nothing is bound there, and a fold takes little (our own measure)."""

HOLE_CLEARANCE = 1_000
DUPLEX_ERROR = 1_000
"""How far the back of a sheet may be out of register with its front (a copier's service limit)."""

LEAST_RECESS, DEEPEST_RECESS = 4_000, 15_000
"""How far the outer edge is cut back beside tabs (common practice, no source)."""

TAB_ROUND = 3_000
"""To which the corners of tabs are rounded, outer and inner ones, where they are deep enough: a blade has to turn
there, and film has to seal (common practice, no source)."""

TABS_FROM_ENDS = 15_000
"""No tab stands nearer to the head or the foot of a leaf."""

TAB_PLACES, LEAST_TAB = 7, 8_000
"""How many tabs stand below each other, and how high each is at least, for its roundings and its word."""

ABOVE_TABS, BELOW_TABS = 17_000, 25_000
"""What head and foot of a leaf take at most; below a binding at the top the head takes `HEAD_BELOW_BINDING`."""

HEAD_BELOW_BINDING = 10_000

LEAST_TAB_INK = 4_000
"""What is to be printed of a tab's depth, for its words."""

LEAST_TEXT_WIDTH = 50_000
LEAST_LEAF_HEIGHT = 90_000
"""Below this, nothing is left between head and foot but a few items."""


def in_flap(stock: Stock) -> bool:
    """Whether the holes go through the film alone, in a flap of it beside the leaf: nothing is punched into paper."""
    return bool(stock.holes) and stock.hole_edge < 0


def hole_strip(stock: Stock) -> int:
    """How far from the binding edge nothing may be printed but the marks of the holes; 0 without holes in the leaf."""
    if not stock.holes or in_flap(stock):
        return 0
    radius = -(-stock.hole_diameter // 2)
    return stock.hole_edge + radius + stock.relief + HOLE_CLEARANCE + DUPLEX_ERROR


def binding_margin(stock: Stock) -> int:
    """How far from the binding edge, or from the fold of a folded card, text may begin."""
    if stock.folded:
        return FOLD_MARGIN
    return max(BINDING_MARGIN, hole_strip(stock))


def text_width(stock: Stock) -> int:
    """Width of the column of text; may be below zero on a stock that cannot be."""
    inner = binding_margin(stock) if stock.bound_at == "left" else OUTER_MARGIN
    return stock.leaf[0] - inner - OUTER_MARGIN - stock.recess


def body_of_leaf(stock: Stock) -> tuple[int, int]:
    """Width and height of a leaf but for its tab, which stands out at the right of a front."""
    return stock.leaf[0] - stock.recess, stock.leaf[1]


def tab_radius(stock: Stock) -> int:
    """To which tabs that are cut are rounded."""
    return min(TAB_ROUND, stock.recess // 2)


def fills(length: int, paper: int) -> int:
    """How many leaves of that length make up a length of paper, leaving nothing to cut away; 0 if they do not."""
    count = paper // length if length > 0 else 0
    return count if count and paper - count * length <= FILLING else 0


def may_fill(stock: Stock) -> bool:
    """Whether leaves may reach to the paper's edges: not where each is to have cut lines of its own, nor where a
    printer would leave out what stands at their foot."""
    return stock.cut_lines != "separate" and stock.printable_margin <= FREE_EDGE


def leaves_together(stock: Stock) -> int:
    """How many leaves are cut out in one piece."""
    return 2 if stock.folded else 1


def open_size(stock: Stock) -> tuple[int, int]:
    """Width and height of what is cut out in one piece: a leaf, or a folded card that lies open."""
    width, height = stock.leaf
    if not stock.folded:
        return width, height
    return (2 * width, height) if stock.bound_at == "left" else (width, 2 * height)


def sides_around(printable_margin: int = PRINTABLE_MARGIN) -> int:
    """What a leaf needs of the paper on each of its sides where it does not fill it: marks, and the unprintable."""
    return printable_margin + MARK_OFFSET + MARK_LENGTH


def seals(stock: Stock) -> tuple[int, int]:
    """The film beyond the leaf at its left and right, and above and below it; (0, 0) without a pouch.

    Below zero on a stock that cannot be.
    """
    if stock.pouch == (0, 0):
        return 0, 0
    return (stock.pouch[0] - stock.leaf[0]) // 2, (stock.pouch[1] - stock.leaf[1]) // 2
