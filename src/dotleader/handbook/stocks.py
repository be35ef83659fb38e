"""The stock that a handbook is printed on (being written: the default stock only)."""

from __future__ import annotations

from dotleader.handbook.gather import At
from dotleader.handbook.stock import Stock
from dotleader.source.outcome import Outcome


def read_stock(at: At | None, paper: str) -> Outcome[Stock]:
    """The stock of a `stock` block, or the default one."""
    a5 = Stock(
        "A5", (148000, 210000), (0, 0), 0, (65000, 145000), 6000, 12000, "left", (210000, 297000), "A4", 600000, None
    )
    return Outcome(a5)
