"""What cannot be where a card is folded."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.fault import Amiss
from dotleader.handbook.stocks.stock import Stock


def fold_faults(stock: Stock) -> Iterator[Amiss]:
    """Holes, which would lie on the fold, and film, which does not fold."""
    if not stock.folded:
        return
    if stock.holes:
        yield Amiss(
            "holes",
            f"A folded card has its fold at the {stock.bound_at}, where its holes would be.",
            "Leave out either `holes` or `folded`.",
        )
    if stock.pouch != (0, 0):
        yield Amiss(
            "pouch",
            "A card in film does not fold: the film cracks or springs open.",
            "Leave out either the film or `folded`.",
        )
