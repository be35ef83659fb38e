"""The stocks of a handbook: its own, which is the first, and those that its books name."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.known import stock_named
from dotleader.handbook.stocks.making import made
from dotleader.handbook.stocks.read import read_stock
from dotleader.handbook.stocks.sizes import SIZES, paper_named
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.record import record, replace
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Placed


@record
class Named:
    """A `stock` block with a name, which a book may ask for; `own` is the handbook's, which is the first."""

    name: str
    stock: Stock
    own: bool
    spot: Spot


def loose(name: str) -> str:
    """A stock's name for comparison: without commas."""
    return folded(name.replace(",", " "))


def read_further(blocks: Sequence[At], first: Stock, paper: str, ledger: Ledger) -> dict[str, Named]:
    """The `stock` blocks that have a name, by it; the first, read already, may have one like the others.

    `paper` is what the handbook says of its paper, `""` where it says nothing.
    """
    found: dict[str, Named] = {}
    for number, at in enumerate(blocks):
        head = at.block.head
        spot = at.spot(head.name.span if head.name is not None else head.span)
        if head.name is None:
            if number:
                ledger.say(
                    "name-used-twice",
                    spot,
                    "This is a further `stock`, and it has no name.",
                    "The first one is the handbook's own. Give this one a name, and name it in a `book`, or take it "
                    "out.",
                )
            continue
        key = loose(head.name.text)
        if key in found:
            ledger.twice("The stock", head.name.text, spot, found[key].spot)
            continue
        stock = first
        if number:
            read = read_stock(Placed(at.start, at.block), at.source, paper)
            ledger.findings.extend(read.findings)
            stock = read.value
        found[key] = Named(head.name.text, stock, not number, spot)
    return found


def say_unused(named: Mapping[str, Named], asked: set[str], ledger: Ledger) -> None:
    """Further stocks that no book is printed on. `asked` are the keys of those that one is."""
    for key, one in named.items():
        if key not in asked and not one.own:
            ledger.say(
                "stock-never-used",
                one.spot,
                f"Nothing is printed on the stock `{one.name}`.",
                f"The first `stock` is the handbook's own. Write `stock .... {one.name}` in a `book`, or take it out.",
            )


def library_stock(name: str, paper: str) -> Stock | None:
    """The known stock of that name, on the handbook's paper where it fits on it; None where there is none."""
    found = stock_named(name)
    if found is None:
        return None
    known, base = found
    paper_name = paper_named(paper)
    if paper_name:
        moved = made(replace(base, paper=SIZES[paper_name], paper_name=paper_name), known, None)
        if not any(amiss(moved)):
            return moved
    return made(base, known, None)
