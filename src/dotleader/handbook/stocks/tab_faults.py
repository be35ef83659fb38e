"""Tabs that cannot be cut, with the millimetres by which they fail."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.fault import Amiss, millimetres
from dotleader.handbook.stocks.hole_faults import hole_faults
from dotleader.handbook.stocks.measures import (
    ABOVE_TABS,
    BELOW_TABS,
    DEEPEST_RECESS,
    HEAD_BELOW_BINDING,
    LEAST_RECESS,
    LEAST_TAB,
    LEAST_TAB_INK,
    LEAST_TEXT_WIDTH,
    TAB_PLACES,
    TABS_FROM_ENDS,
    binding_margin,
    body_of_leaf,
    fills,
    may_fill,
    sides_around,
    tab_radius,
    text_width,
)
from dotleader.handbook.stocks.relief import relief_faults
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.record import replace

_HELP = "Tabs are some millimetres deep, such as `cut, 8 mm deep`; or they are `printed`."

_FOLDED_HELP = "Leave out either `folded` or the tabs that are `cut`."


def tab_faults(stock: Stock) -> Iterator[Amiss]:
    """Of a stock that could be made without its tabs; nothing where they are not cut."""
    if not stock.recess:
        return
    depth = millimetres(stock.recess)
    if stock.folded:
        yield Amiss("tabs", f"A folded card has no leaves between which tabs of {depth} could be seen.", _FOLDED_HELP)
        return
    if stock.recess < LEAST_RECESS:
        short = millimetres(LEAST_RECESS - stock.recess, up=True)
        yield Amiss("tabs", f"Tabs of {depth} are {short} too shallow to be rounded and to bear a word.", _HELP)
        return
    if stock.recess > DEEPEST_RECESS:
        over = millimetres(stock.recess - DEEPEST_RECESS, up=True)
        yield Amiss("tabs", f"Tabs of {depth} are {over} deeper than any that last.", _HELP)
        return
    narrow = LEAST_TEXT_WIDTH - text_width(stock)
    if narrow > 0:
        yield Amiss(
            "tabs",
            f"Beside tabs of {depth} the leaf is {millimetres(narrow, up=True)} too narrow: less than "
            f"{millimetres(LEAST_TEXT_WIDTH)} are left for text.",
            "Take shallower tabs, `printed` ones, or a wider leaf.",
        )
    above = ABOVE_TABS if stock.bound_at == "left" else binding_margin(stock) + HEAD_BELOW_BINDING
    low = above + TAB_PLACES * LEAST_TAB + BELOW_TABS - stock.leaf[1]
    if low > 0:
        yield Amiss(
            "tabs",
            f"The leaf is {millimetres(low, up=True)} too low for {TAB_PLACES} tabs of {millimetres(LEAST_TAB)} below "
            "each other, between head and foot.",
            "Take a higher leaf, or tabs that are `printed`.",
        )
    round_ = tab_radius(stock)
    into = stock.corner_radius + round_ - TABS_FROM_ENDS
    if into > 0:
        yield Amiss(
            "corners",
            f"Corners of {millimetres(stock.corner_radius)} reach {millimetres(into, up=True)} into the first tab, "
            f"which begins {millimetres(TABS_FROM_ENDS)} from the end of the leaf and is rounded by "
            f"{millimetres(round_)}.",
            "Take smaller corners, or tabs that are `printed`.",
        )
    yield from _holes(stock)
    yield from _unprinted(stock)


def divider_faults(stock: Stock) -> Iterator[Amiss]:
    if stock.folded and stock.dividers:
        yield Amiss("dividers", "A folded card has no sections to divide.", "Leave out either `folded` or `dividers`.")


def _holes(stock: Stock) -> Iterator[Amiss]:
    """The holes of an upper edge run on to where the outer edge is cut back."""
    narrowed = replace(stock, leaf=body_of_leaf(stock), tabs="printed", recess=0)
    for fault in (*hole_faults(narrowed), *relief_faults(narrowed)):
        yield Amiss(
            "tabs",
            f"The leaf's outer edge is cut back by {millimetres(stock.recess)} for tabs. {fault.message}",
            "Take shallower tabs, `printed` ones, or holes that are closer together.",
        )


def _unprinted(stock: Stock) -> Iterator[Amiss]:
    """On a leaf that reaches to the paper's edge there a printer leaves a part of each tab white."""
    if _reaches_edge_of_paper(stock):
        short = stock.printable_margin + LEAST_TAB_INK - stock.recess
        if short > 0:
            yield Amiss(
                "tabs",
                f"Tabs of {millimetres(stock.recess)} are {millimetres(short, up=True)} too shallow: they reach to the "
                f"edge of the paper, where the printer leaves {millimetres(stock.printable_margin)} white, and "
                f"{millimetres(LEAST_TAB_INK)} are needed for their words.",
                "Take deeper tabs, a smaller leaf, or a larger paper.",
            )


def _reaches_edge_of_paper(stock: Stock) -> bool:
    """Whether one leaf fills a side of the paper; two across turn their outer edges to the cut between them."""
    around = 2 * sides_around(stock.printable_margin)
    width, height = stock.leaf
    for across, along in (stock.paper, stock.paper[::-1]):
        filling = may_fill(stock) and fills(width, across) == 1 and fills(height, along) > 0
        if filling and width + around > across:
            return True
    return False
