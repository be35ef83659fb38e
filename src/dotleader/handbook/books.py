"""The `book` blocks: what of a handbook is printed together, and on what."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from dotleader.handbook.book import LARGE_TYPE, LARGEST_TYPE, USUAL_TYPE, DeclaredBook
from dotleader.handbook.cards import Card
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Handbook
from dotleader.handbook.names import offered
from dotleader.handbook.sections import NUMBERS, SECTION_OF_KIND, SECTIONS, TEXTS
from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.handbook.stocks.several import Named, library_stock, loose, read_further, say_unused
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.record import replace
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Row, Words

SAMPLES = {
    "stock": "stock .... half letter, three holes",
    "section": "section .... Emergency",
    "card": "card .... Before takeoff",
    "type": "type .... large",
}
"""Each row of a book with a line that is right. `section` and `card` may stand several times."""

_SEVERAL = ("section", "card")
_FRONT_MATTER = "0"
_PERCENT = re.compile(r"(\d{1,4})\s*%")
_TYPES = {"usual": USUAL_TYPE, "large": LARGE_TYPE}


def _short(name: str) -> str:
    """What a section is called in a word: `Emergency`."""
    return name.removesuffix(" procedures").partition(",")[0]


_SHORT = {section: _short(name) for section, name in SECTIONS.items() if section != _FRONT_MATTER}
_NAMED = {folded(name): section for section in _SHORT for name in (section, SECTIONS[section], _SHORT[section])}


_EMPTY = {
    TEXTS: "Texts and sources stand there.",
    NUMBERS: "Speeds, values and gauges stand there.",
    **{section: f"The {kind.value} cards stand there." for kind, section in SECTION_OF_KIND.items()},
}


def read_books(
    blocks: Sequence[At], stocks: Sequence[At], handbook: Handbook, paper: str, ledger: Ledger
) -> tuple[DeclaredBook, ...]:
    """The books of a handbook in the order of the source. `stocks` are its `stock` blocks, `paper` what it says of it.

    What is wrong with a book is said, and the rest of it is read.
    """
    named = read_further(stocks, handbook.stock, paper, ledger)
    reading = _Reading(handbook, named, paper, ledger)
    books: dict[str, DeclaredBook] = {}
    for at in blocks:
        if at.block.head.name is None:  # said by the parser
            continue
        book = reading.book(at, at.block.head.name)
        key = folded(book.name)
        if key in books:
            ledger.twice("The book", book.name, book.spot, books[key].spot)
        else:
            books[key] = book
    say_unused(named, reading.asked, ledger)
    return tuple(books.values())


class _Reading:
    """The books of one handbook being read. `asked` are the keys of its own stocks that one of them is printed on."""

    def __init__(self, handbook: Handbook, stocks: Mapping[str, Named], paper: str, ledger: Ledger) -> None:
        self.handbook, self.stocks, self.paper, self.ledger = handbook, stocks, paper, ledger
        self.asked: set[str] = set()
        self.cards: dict[str, Card] = {}
        for card in handbook.cards:
            self.cards.setdefault(folded(card.title), card)

    def book(self, at: At, name: Words) -> DeclaredBook:
        rows = self._rows(at)
        sections = [self._section(words, at) for words in rows["section"]]
        cards = [self._card(words, at) for words in rows["card"]]
        stock = self.handbook.stock
        for words in rows["stock"]:
            stock = self._stock(words, at) or stock
        for words in rows["type"]:
            stock = replace(stock, type_percent=self._type(words, at))
        return DeclaredBook(
            name=name.text,
            whole=not sections and not cards,
            sections=tuple(filter(None, sections)),
            cards=tuple(filter(None, cards)),
            stock=stock,
            spot=at.spot(name.span),
        )

    def _rows(self, at: At) -> dict[str, list[Words]]:
        """The right parts by the row that they are of."""
        rows: dict[str, list[Words]] = {key: [] for key in SAMPLES}
        first: dict[tuple[str, str], Spot] = {}
        for line in at.block.lines:
            row = line.body
            if not isinstance(row, Row) or row.right is None:
                continue
            key, spot = folded(row.left.text), at.spot(row.left.span)
            # A section or card is given twice where it is the same one, any other row wherever it stands again.
            again = (key, folded(row.right.text) if key in _SEVERAL else "")
            if key not in SAMPLES:
                known = ", ".join(f"`{name}`" for name in SAMPLES)
                message = f"`{row.left.text}` is no property of a book."
                self.ledger.say("unknown-property", spot, message, offered(key, SAMPLES, f"A book has {known}."))
            elif again in first:
                what = (f"The {key}", row.right.text) if key in _SEVERAL else ("The row", row.left.text)
                self.ledger.again(*what, spot, first[again])
            elif row.right.refs:
                message = f"`{row.right.text}` refers to a value, and a book is written out."
                self.ledger.say(
                    "unreadable-value", at.spot(row.right.span), message, f"Write it like `{SAMPLES[key]}`."
                )
                if key in _SEVERAL:  # what was meant is not known, but not everything
                    rows[key].append(Words((), row.right.span))
            else:
                rows[key].append(row.right)
                first[again] = spot
        return rows

    def _section(self, words: Words, at: At) -> str:
        """The id of the section that is named, `""` where there is none."""
        if not words.pieces:
            return ""
        section = _NAMED.get(folded(words.text), "")
        spot = at.spot(words.span)
        if not section:
            names = ", ".join(f"`{name}`" for name in _SHORT.values())
            listed = any(folded(part) in _NAMED for part in words.text.split(","))
            known = f"The sections are {names}, each in a row of its own."
            help_ = known if listed else offered(words.text, _SHORT.values(), known)
            self.ledger.say("unknown-section", spot, f"There is no section `{words.text}`.", help_)
        elif not self._filled(section):
            self.ledger.say(
                "empty-section",
                spot,
                f"There is nothing in the section `{_SHORT[section]}`.",
                f"{_EMPTY.get(section, 'Nothing can be written into it yet.')} Or take the row out.",
            )
        return section

    def _filled(self, section: str) -> bool:
        handbook = self.handbook
        if section == TEXTS:
            return bool(handbook.essays or handbook.sources)
        if section == NUMBERS:
            return bool(handbook.values or handbook.gauges)
        return any(SECTION_OF_KIND[card.kind] == section for card in handbook.cards)

    def _card(self, words: Words, at: At) -> str:
        """The key of the card that is named, `""` where there is none."""
        if not words.pieces:
            return ""
        card = self.cards.get(folded(words.text))
        spot = at.spot(words.span)
        if card is not None:
            self.ledger.mention("card", card.key, spot)
            return card.key
        titles = [one.title for one in self.handbook.cards]
        help_ = "Write its title as it stands after `emergency`, `abnormal` or `normal`."
        self.ledger.say("unknown-card", spot, f"There is no card `{words.text}`.", offered(words.text, titles, help_))
        return ""

    def _stock(self, words: Words, at: At) -> Stock | None:
        key = loose(words.text)
        if key in self.stocks:
            self.asked.add(key)
            return self.stocks[key].stock
        stock = library_stock(words.text, self.paper)
        if stock is None:
            own = [one.name for one in self.stocks.values()]
            help_ = offered(
                words.text,
                (*own, *STOCK_NAMES),
                "Describe it in a `stock` block of that name; docs/stocks.md has more.",
            )
            self.ledger.say("unknown-stock", at.spot(words.span), f"There is no stock `{words.text}`.", help_)
        return stock

    def _type(self, words: Words, at: At) -> int:
        """The size of the type in per cent; the usual where it cannot be read."""
        text = folded(words.text)
        if text in _TYPES:
            return _TYPES[text]
        found = _PERCENT.fullmatch(text)
        help_ = f"Type is `usual`, `large` (which is {LARGE_TYPE} %), or {USUAL_TYPE} % to {LARGEST_TYPE} %."
        if found is None:
            near = offered(text, _TYPES, help_)
            self.ledger.say("unreadable-value", at.spot(words.span), f"`{words.text}` is no size of type.", near)
            return USUAL_TYPE
        percent = int(found[1])
        if USUAL_TYPE <= percent <= LARGEST_TYPE:
            return percent
        why = "smaller than can be read in flight" if percent < USUAL_TYPE else "so large that cards come apart"
        self.ledger.say("unreadable-value", at.spot(words.span), f"Type of {percent} % would be {why}.", help_)
        return USUAL_TYPE
