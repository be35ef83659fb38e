"""The stocks of the library by their names, read when they are asked for: a lint needs one of them."""

from __future__ import annotations

from functools import lru_cache

from dotleader.handbook.stocks.library import ALSO_CALLED, LIBRARY
from dotleader.handbook.stocks.reading import Unread
from dotleader.handbook.stocks.rows import changed
from dotleader.handbook.stocks.written import HoleRow, Written
from dotleader.syntax.parse import parse_block
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Row

_AMERICAN = ("Letter", "Legal")
_BLOCKS = {block.partition("\n")[0].removeprefix("stock "): block for block in LIBRARY.split("\n\n")}

STOCK_NAMES = (*_BLOCKS, *ALSO_CALLED)


def _loose(name: str) -> str:
    """A stock's name for comparison: without commas."""
    return folded(name.replace(",", " "))


_NAMES = {_loose(name): name for name in STOCK_NAMES}


def stock_named(text: str) -> tuple[str, Written] | None:
    """The known stock of that name, as we write the name."""
    name = _NAMES.get(_loose(text))
    return None if name is None else (name, known_stock(name))


@lru_cache(maxsize=64)
def known_stock(name: str) -> Written:
    """A stock of the library. Raises KeyError for a name that is none of `STOCK_NAMES`."""
    parsed = parse_block(_BLOCKS[ALSO_CALLED.get(name, name)])
    written = Written(leaf=(0, 0), holes=HoleRow(0, (), 0, 0), paper=(0, 0), paper_name="")
    for line in parsed.block.lines:
        if isinstance(line.body, Row) and line.body.right is not None:
            row = changed(written, folded(line.body.left.text), line.body.right.text)
            assert not isinstance(row, Unread), row.message  # the library is ours, and a test reads all of it
            written = row
    return written


def usual_stock(paper_name: str) -> str:
    """The name of the stock that is taken where none is written."""
    return "half letter, three holes" if paper_name in _AMERICAN else "A5, two holes"
