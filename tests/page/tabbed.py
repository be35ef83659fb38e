"""Stocks with tabs that are cut, for the tests of this folder and of the cut files."""

from __future__ import annotations

from hypothesis import strategies as st

from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.known import STOCK_NAMES, known_stock
from dotleader.handbook.stocks.library import ALSO_CALLED
from dotleader.handbook.stocks.making import made
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.record import replace
from tests.page.leaves import STOCKS, stocks

LIBRARY = {name: made(known_stock(name), name, None) for name in STOCK_NAMES if name not in ALSO_CALLED}
EVERY_STOCK = {f"library: {name}": stock for name, stock in LIBRARY.items()} | STOCKS


def with_tabs(stock: Stock, recess: int = 10_000, corner_radius: int = -1) -> Stock:
    corners = stock.corner_radius if corner_radius < 0 else corner_radius
    return replace(stock, tabs="cut", recess=recess, corner_radius=corners)


CANDIDATES = {f"{name}, tabs": with_tabs(stock) for name, stock in EVERY_STOCK.items()}
TABBED = {name: stock for name, stock in CANDIDATES.items() if not any(amiss(stock))}
"""Of the known stocks all that can have tabs of 10 mm."""


TABS: dict[str, Stock] = {
    **{name: TABBED[f"library: {name}, tabs"] for name in ("A4", "A5", "A6", "A5, bound at top", "half letter")},
    **{name: TABBED[f"library: {name}, tabs"] for name in ("6 x 9 in pouch", "kneeboard, quarter letter")},
    "A5, tabs, square": with_tabs(STOCKS["A5"], 8_000, 0),
    "sample, tabs, large corners": with_tabs(STOCKS["sample"], 5_001, 11_000),
    "two across, shallow tabs": with_tabs(STOCKS["two across"], 4_000),
}
"""Some of each sort, for tests that take their time."""


@st.composite
def tabbed_stocks(draw: st.DrawFn) -> Stock:
    stock = draw(stocks() | st.sampled_from(list(EVERY_STOCK.values())))
    stock = with_tabs(stock, draw(st.integers(4_000, 15_000)), draw(st.sampled_from([0, 3_175, 6_000, 11_000])))
    return stock if not any(amiss(stock)) else TABBED[draw(st.sampled_from(sorted(TABBED)))]
