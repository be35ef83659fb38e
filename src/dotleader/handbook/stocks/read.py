"""The `stock` block: what is written, or what stands for it where nothing is, as a stock that can be made."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.handbook.names import nearest, offered
from dotleader.handbook.stocks.fault import Amiss, millimetres
from dotleader.handbook.stocks.faults import amiss, doubtful
from dotleader.handbook.stocks.known import STOCK_NAMES, known_stock, stock_named, usual_stock
from dotleader.handbook.stocks.library import ALSO_CALLED
from dotleader.handbook.stocks.making import made
from dotleader.handbook.stocks.measures import seals
from dotleader.handbook.stocks.reading import Unread
from dotleader.handbook.stocks.rows import SAMPLES, changed
from dotleader.handbook.stocks.sizes import PAPERS, SIZES, paper_named
from dotleader.handbook.stocks.stock import Stock
from dotleader.handbook.stocks.written import HoleRow, Written
from dotleader.source.finding import Finding, Fix, Related
from dotleader.source.outcome import Outcome
from dotleader.source.record import replace
from dotleader.source.text import SourceText, Span, Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Blank, Comment, Placed, Row, Words


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
        stock = made(_on_paper(known_stock(usual), known_paper), usual, None)
        if not any(amiss(stock)):
            return Outcome(stock, tuple(findings))
        return Outcome(made(known_stock(usual), usual, None), tuple(findings))
    reading = _Reading(placed, source, findings)
    stock = reading.stock(known_paper)
    return Outcome(stock, tuple(findings))


_ALIKE = {"pouch": ("seal", "leaf"), "paper thickness": ("paper weight",), "cut lines": ("leaf",)}
"""Rows that say the same in another way."""


class _Reading:
    """One `stock` block being read."""

    def __init__(self, placed: Placed, source: SourceText, findings: list[Finding]) -> None:
        self.placed, self.source, self.findings = placed, source, findings

    def stock(self, known_paper: str) -> Stock:
        block = self.placed.block
        rows = self._rows()
        here = self._spot(block.head.span)
        name, base = self._base(rows, known_paper)
        before = len(self.findings)
        written = self._written(rows, base)
        stock = self._with_spots(made(written, name, here), rows)
        if len(self.findings) > before:  # what stands in for a property that could not be read proves nothing
            return stock if not any(amiss(stock)) else made(base, name, here)
        faults = list(amiss(stock))
        self._faults("impossible-stock", faults, rows)
        self._faults("narrow-seal", () if faults else doubtful(stock), rows)
        return made(base, name, here) if faults else stock

    def _with_spots(self, stock: Stock, rows: dict[str, Words]) -> Stock:
        return replace(stock, rings_spot=self._spot(rows["rings"].span)) if "rings" in rows else stock

    def _base(self, rows: dict[str, Words], known_paper: str) -> tuple[str, Written]:
        """The stock that the block's name or its paper stands for, and that its rows change."""
        head, paper = self.placed.block.head.name, rows.get("paper")
        known_paper = (paper_named(paper.text) if paper is not None else "") or known_paper
        if head is not None:
            found = stock_named(head.text)
            if found:
                name, base = found
                moved = _on_paper(base, known_paper)
                return name, moved if not any(amiss(made(moved, name, None))) else base
            self._unknown_name(head, rows)
        usual = usual_stock(known_paper)
        moved = _on_paper(known_stock(usual), known_paper)
        name = head.text if head is not None else usual if not rows else ""
        return name, moved if not any(amiss(made(moved, name, None))) else known_stock(usual)

    def _unknown_name(self, head: Words, rows: dict[str, Words]) -> None:
        """A name of one's own needs a leaf below it; one that is almost a known name was meant for that."""
        if "leaf" in rows:
            return
        names = f"The names are {_names(name for name in STOCK_NAMES if name not in ALSO_CALLED)}"
        if not self._has_body():
            near = offered(head.text, STOCK_NAMES, f"{names}; or describe the stock below it.")
        elif nearest(head.text, STOCK_NAMES):
            near = offered(head.text, STOCK_NAMES, "")
        else:
            return
        self._say("unknown-stock", head.span, f"There is no stock of the name `{head.text}`.", near)

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
                # Only a stock with a fault in it pays for this import.
                from dotleader.handbook.mending import respelt  # noqa: PLC0415

                fix = respelt(self._spot(row.left.span), row.left.text, SAMPLES)
                self._say("unknown-property", row.left.span, message, near, fix)
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
        for key in (key for key in SAMPLES if key in rows):
            words = rows[key]
            if words.refs:
                self._unread(key, words, Unread(f"`{words.text}` refers to a value, and a stock is written out."))
                continue
            one = changed(written, key, words.text)
            if isinstance(one, Unread):
                self._unread(key, words, one)
            else:
                written = one
        if "folded" in rows and written.folded:
            # the stock that is changed may have holes and film; only those that are written here are a mistake
            if "holes" not in rows:
                written = replace(written, holes=HoleRow(0, (), 0, 0), relief=written.relief if "relief" in rows else 0)
            if not {"pouch", "seal"} & rows.keys():
                written = replace(written, pouch=(0, 0), seal=-1, film=0)
        return self._with_film(rows, written)

    def _with_film(self, rows: dict[str, Words], written: Written) -> Written:
        """Pouch and seal say the same in two ways: the one that is written here goes, and both have to agree."""
        if "seal" in rows and "pouch" not in rows:
            written = replace(written, pouch=(0, 0))
        elif "pouch" in rows and "seal" not in rows:
            written = replace(written, seal=-1)
        elif "seal" in rows and written.seal >= 0:
            left = [seal - written.seal for seal in seals(made(written, "", None))]
            worst = max(left, key=abs)
            if worst:
                differs = f"{millimetres(abs(worst), up=True)} {'more' if worst > 0 else 'less'}"
                fault = Amiss(
                    "seal",
                    f"The pouch leaves a seal of {millimetres(max(0, written.seal + worst))}, {differs} than is "
                    "written here.",
                    "Leave one of the two rows out: the seal is half of what the pouch is larger than the leaf.",
                )
                self._faults("impossible-stock", [fault], rows)
        if "film" in rows and written.film and written.pouch == (0, 0) and written.seal < 0:
            fault = Amiss("film", "There is film, and no pouch for it.", "Say in `pouch` or `seal` how large it is.")
            self._faults("impossible-stock", [fault], rows)
        return written

    def _faults(self, rule: str, faults: Iterable[Amiss], rows: dict[str, Words]) -> None:
        """Each on the row that it is about, or on the block's head where there is none."""
        for fault in faults:
            of = next((key for key in (fault.of, *_ALIKE.get(fault.of, ())) if key in rows), None)
            span = rows[of].span if of else self.placed.block.head.span
            self.findings.append(Finding(rule, self._spot(span), fault.message, fault.help))

    def _unread(self, key: str, words: Words, unread: Unread) -> None:
        advice = f"Write it like `{SAMPLES[key]}`."
        self._say("unreadable-value", words.span, unread.message, f"{unread.help} {advice}".strip())

    def _say(self, rule: str, span: Span, message: str, help_: str, fix: Fix | None = None) -> None:
        self.findings.append(Finding(rule, self._spot(span), message, help_, fix=fix))

    def _spot(self, span: Span) -> Spot:
        return Spot(self.source, *span.moved(self.placed.start))


def _on_paper(written: Written, name: str) -> Written:
    return replace(written, paper=SIZES[name], paper_name=name) if name else written


def _names(names: Iterable[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
