"""A `stock` block from its rows, and what comes of reading it."""

from __future__ import annotations

from dotleader.handbook.stocks.read import read_stock
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.finding import Finding
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText
from dotleader.syntax.parse import parse


def read(text: str, paper: str = "") -> Outcome[Stock]:
    source = SourceText("book.cards", text)
    (placed,) = parse(source).value.blocks
    return read_stock(placed, source, paper)


def block(*rows: str, name: str = "") -> str:
    return "\n".join([f"stock {name}".rstrip(), *(f"  {row}" for row in rows)]) + "\n"


def only(outcome: Outcome[Stock]) -> Finding:
    (finding,) = outcome.findings
    return finding
