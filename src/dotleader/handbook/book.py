"""A `book` block: what of a handbook is printed together, on one stock, in type of one size. Data only."""

from __future__ import annotations

from dotleader.handbook.cards import Card
from dotleader.handbook.sections import SECTION_OF_KIND
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.record import record
from dotleader.source.text import Spot

USUAL_TYPE, LARGE_TYPE, LARGEST_TYPE = 100, 125, 150
"""Per cent.

Large type makes the smallest 15 pt where it is 12: at 600 mm its capitals subtend 20 minutes of arc (NUREG-0700,
1.3.1-4, prefers 20 to 22) and its x-height is 2.6 mm (CR-177605, section 6 no. 7: not below 2.54 mm in important
documents).
"""


@record
class DeclaredBook:
    """`sections` are ids, `cards` keys; a book that is `whole` has everything, and then both are empty.

    `stock` is that of its leaves with the size of its type. `name` is `""` where no book is declared.
    """

    name: str
    whole: bool
    sections: tuple[str, ...]
    cards: tuple[str, ...]
    stock: Stock
    spot: Spot

    def has_section(self, section: str) -> bool:
        """Whether all that stands in a section is in the book."""
        return self.whole or section in self.sections

    def has(self, card: Card) -> bool:
        return self.has_section(SECTION_OF_KIND[card.kind]) or card.key in self.cards
