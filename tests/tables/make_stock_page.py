"""Make `docs/stocks.md` from the library: run `python -m tests.tables.make_stock_page` at the top."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from dotleader.handbook.stocks.known import STOCK_NAMES, known_stock
from dotleader.handbook.stocks.library import ALSO_CALLED, LIBRARY
from dotleader.handbook.stocks.making import made
from dotleader.handbook.stocks.measures import open_size, seals

PAGE = Path(__file__).parents[2] / "docs" / "stocks.md"

_HEAD = """\
# Stocks

Made from the library itself. `stock NAME` in a handbook takes one of these; rows below it change what they name; or
copy the block, give it a name of its own, and change what you like. `docs/language.md` says what each row means.

The two holes are those of ISO 838. The spacings of three holes and of six and seven rings are those of what is sold.
How wide American holes are and how far from the edge stands in no standard that we have read, nor does anything of
rings: **punch a piece of paper and measure it** before you print.

Below any of them but a folded card `tabs .... cut, 8 mm deep` cuts tabs for the sections into the outer edge (9 mm at
least on leaves of A4 and letter), and `dividers .... yes` puts a leaf before each section. In a pouch tabs are cut into
the paper; the film stays whole.

A leaf is what is read at one time: of a folded card, one of its four faces.

In millimetres, the centres of the holes counted from the upper end of the leaf's edge (the left end where it is bound
at the top), and the distance of the centres from that edge:

| stock | leaf | centres of the holes | from edge |
|---|---|---|---|
"""


def wanted() -> str:
    """The page as it should stand."""
    return _HEAD + "".join(_rows()) + "\n" + _also() + "\n```\n" + LIBRARY.replace("\n\n", "\n```\n\n```\n") + "```\n"


def _rows() -> Iterator[str]:
    for name in STOCK_NAMES:
        if name in ALSO_CALLED:
            continue
        stock = made(known_stock(name), name, None)
        size = " x ".join(map(_mm, stock.leaf))
        edge = _mm(stock.hole_edge) if stock.holes else ""
        film = f" in a pouch of {' x '.join(map(_mm, stock.pouch))}" if any(seals(stock)) else ""
        fold = f", folded once from {' x '.join(map(_mm, open_size(stock)))}" if stock.folded else ""
        yield f"| `{name}` | {size}{film}{fold} | {', '.join(map(_mm, stock.holes)) or 'none'} | {edge} |\n"


def _also() -> str:
    return "Other names: " + ", ".join(f"`{name}` for `{of}`" for name, of in ALSO_CALLED.items()) + ".\n"


def _mm(length: int) -> str:
    return f"{length // 1000}.{length % 1000:03}".rstrip("0").rstrip(".")


def main() -> None:
    PAGE.write_text(wanted(), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
