"""The `stock` block: what is written, or what stands for it where nothing is, as a stock that can be made."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from dotleader.handbook.ledger import offered
from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.library import (
    PAPERS,
    SIZES,
    STOCKS,
    HoleRow,
    Written,
    paper_named,
    stock_named,
    usual_stock,
)
from dotleader.handbook.stocks.reading import Unread, holes_of, length_of, paper_of, size_of
from dotleader.handbook.stocks.stock import Stock
from dotleader.source.finding import Finding, Related
from dotleader.source.outcome import Outcome
from dotleader.source.record import replace
from dotleader.source.text import SourceText, Span, Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Blank, Comment, Placed, Row, Words

SAMPLES = {
    "leaf": "leaf .... 5.75 x 8.75 in",
    "pouch": "pouch .... 6 x 9 in",
    "corners": "corners .... 6 mm",
    "holes": "holes .... 4, 40 mm apart, 6 mm wide, 12 mm from edge",
    "bound at": "bound at .... left",
    "paper": "paper .... Letter",
    "read at": "read at .... 600 mm",
}
"""Each property of a stock with a line that is right."""


def read_stock(placed: Placed | None, source: SourceText, paper: str, paper_spot: Spot | None = None) -> Outcome[Stock]:
    """The stock of a handbook and what is wrong with it; one that can be made whatever is written.

    `placed` is the `stock` block or None, `paper` what the handbook says of its paper, `""` where it says nothing,
    at `paper_spot`. Where a property cannot be read or the stock cannot be made, the usual one stands in.
    """
    findings: list[Finding] = []
    known_paper = paper_named(paper)
    if paper and not known_paper and paper_spot is not None:
        findings.append(
            Finding(
                "unreadable-value",
                paper_spot,
                f"`{paper}` is no paper that has a name here.",
                f"Write one of {_names(PAPERS)}; other sizes can be given in a `stock` block.",
            )
        )
    usual = usual_stock(known_paper)
    if placed is None:
        stock = _made(_on_paper(STOCKS[usual], known_paper), usual, None)
        if not any(amiss(stock)):
            return Outcome(stock, tuple(findings))
        return Outcome(_made(STOCKS[usual], usual, None), tuple(findings))
    reading = _Reading(placed, source, findings)
    stock = reading.stock(known_paper)
    return Outcome(stock, tuple(findings))


@dataclass(slots=True)
class _Reading:
    """One `stock` block being read."""

    placed: Placed
    source: SourceText
    findings: list[Finding]

    def stock(self, known_paper: str) -> Stock:
        block = self.placed.block
        rows = self._rows()
        here = self._spot(block.head.span)
        name, base = self._base(rows, known_paper)
        before = len(self.findings)
        written = self._written(rows, base)
        stock = _made(written, name, here)
        if len(self.findings) > before:  # what stands in for a property that could not be read proves nothing
            return stock if not any(amiss(stock)) else _made(base, name, here)
        faults = list(amiss(stock))
        for fault in faults:
            spot = self._spot(rows[fault.of].span) if fault.of in rows else here
            self.findings.append(Finding("impossible-stock", spot, fault.message, fault.help))
        return _made(base, name, here) if faults else stock

    def _base(self, rows: dict[str, Words], known_paper: str) -> tuple[str, Written]:
        """The stock that the block's name or its paper stands for, and that its rows change."""
        head, paper = self.placed.block.head.name, rows.get("paper")
        known_paper = (paper_named(paper.text) if paper is not None else "") or known_paper
        if head is not None:
            found = stock_named(head.text)
            if found:
                name, base = found
                moved = _on_paper(base, known_paper)
                return name, moved if not any(amiss(_made(moved, name, None))) else base
            if not self._has_body():
                self._say(
                    "unknown-stock",
                    head.span,
                    f"There is no stock of the name `{head.text}`.",
                    offered(head.text, STOCKS, f"The names are {_names(STOCKS)}; or describe the stock below it."),
                )
        usual = usual_stock(known_paper)
        moved = _on_paper(STOCKS[usual], known_paper)
        name = head.text if head is not None else usual if not rows else ""
        return name, moved if not any(amiss(_made(moved, name, None))) else STOCKS[usual]

    def _has_body(self) -> bool:
        return any(not isinstance(line.body, Blank | Comment) for line in self.placed.block.lines)

    def _rows(self) -> dict[str, Words]:
        """The right parts by the property they are of."""
        rows: dict[str, Words] = {}
        first: dict[str, Spot] = {}
        for line in self.placed.block.lines:
            row = line.body
            if not isinstance(row, Row) or row.right is None:
                continue
            key = folded(row.left.text)
            if key not in SAMPLES:
                near = offered(key, SAMPLES, f"A stock has {_names(SAMPLES)}.")
                message = f"`{row.left.text}` is no property of a stock."
                self._say("unknown-property", row.left.span, message, near)
            elif key in rows:
                self.findings.append(
                    Finding(
                        "name-used-twice",
                        self._spot(row.left.span),
                        f"`{row.left.text}` is given twice.",
                        "Take one of the two lines out.",
                        (Related(first[key], "It is given here first."),),
                    )
                )
            else:
                rows[key], first[key] = row.right, self._spot(row.left.span)
        return rows

    def _written(self, rows: dict[str, Words], base: Written) -> Written:
        """The base with what the rows say; a row that cannot be read is said and changes nothing."""
        written = base
        for key, words in rows.items():
            if words.refs:
                self._unread(key, words, Unread(f"`{words.text}` refers to a value, and a stock is written out."))
                continue
            changed = _changed(written, key, words.text)
            if isinstance(changed, Unread):
                self._unread(key, words, changed)
            else:
                written = changed
        return written

    def _unread(self, key: str, words: Words, unread: Unread) -> None:
        advice = f"Write it like `{SAMPLES[key]}`."
        self._say("unreadable-value", words.span, unread.message, f"{unread.help} {advice}".strip())

    def _say(self, rule: str, span: Span, message: str, help_: str) -> None:
        self.findings.append(Finding(rule, self._spot(span), message, help_))

    def _spot(self, span: Span) -> Spot:
        return Spot(self.source, *span.moved(self.placed.start))


def _changed(written: Written, key: str, text: str) -> Written | Unread:
    """A written stock with one property read from a text."""
    value: object
    match key:
        case "leaf":
            value = size_of(text)
        case "pouch":
            value = (0, 0) if folded(text) == "none" else size_of(text)
        case "corners":
            value = 0 if folded(text) in ("none", "square", "0", "0 mm", "0 in") else length_of(text)
        case "holes":
            value = holes_of(text)
        case "bound at":
            value = folded(text)
            if value not in ("left", "top"):
                return Unread(f"`{text}` is no edge that a leaf is bound at.", "It is `left` or `top`.")
        case "paper":
            paper = paper_of(text)
            return paper if isinstance(paper, Unread) else replace(written, paper_name=paper[0], paper=paper[1])
        case _:
            value = length_of(text)
    if isinstance(value, Unread):
        return value
    field = {"bound at": "bound_at", "read at": "read_at"}.get(key, key)
    return replace(written, **{field: value})


def _on_paper(written: Written, name: str) -> Written:
    return replace(written, paper=SIZES[name], paper_name=name) if name else written


def _made(written: Written, name: str, spot: Spot | None) -> Stock:
    """Holes stand symmetrically about the middle of the binding edge, and are counted from the leaf's edge."""
    upright = written.bound_at == "left"
    along, across = (1, 0) if upright else (0, 1)
    seal = (written.pouch[across] - written.leaf[across]) // 2 if written.pouch != (0, 0) else 0
    row: HoleRow = written.holes
    first = written.leaf[along] - (row.count - 1) * row.apart
    return Stock(
        name=name,
        leaf=written.leaf,
        pouch=written.pouch,
        corner_radius=written.corners,
        holes=tuple((first + 2 * n * row.apart) // 2 for n in range(row.count)),
        hole_diameter=row.diameter,
        hole_edge=row.edge - seal if row.count else 0,
        bound_at=written.bound_at,
        paper=written.paper,
        paper_name=written.paper_name,
        reading_distance=written.read_at,
        spot=spot,
    )


def _names(names: Iterable[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
