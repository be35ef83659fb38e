"""The `electrical` block: what feeds, with what it needs for it, and what is to be done when it fails."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from dotleader.handbook.controls import Reading
from dotleader.handbook.facts import check_head_source, origin_of
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Electrical, Gauge, Supply
from dotleader.handbook.names import offered
from dotleader.handbook.numbers import Numbers, UnworkableError
from dotleader.handbook.wiring_reading import amount_in, measured
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Line, Row

ROWS = {
    "system": "system .... 14 V",
    "alternator": "alternator .... 40 A  from kit manual",
    "generator": "generator .... 20 A  from kit manual",
    "battery": "battery .... 16 Ah  from kit manual",
    "always on": "always on .... 1.2 A  from systems tests",
    "wires rated": "wires rated .... 150 degC",
}
BELOW_ALTERNATOR = {
    "needs": "needs .... Alternator ON",
    "read on": "read on .... Ammeter",
    "when it fails": "when it fails .... Alternator failure",
}
BELOW_BATTERY = {
    "needs": "needs .... Master switch ON",
    "shed after": "shed after .... 5 min",
    "landing takes": "landing takes .... 10 min",
    "must last": "must last .... 30 min",
}
_UNITS = {
    "system": "V", "alternator": "A", "generator": "A", "battery": "Ah", "always on": "A", "wires rated": "degC",
    "shed after": "min", "landing takes": "min", "must last": "min",
}  # fmt: skip
_SOURCED = ("alternator", "generator", "battery", "always on")
_BELOW = {"alternator": BELOW_ALTERNATOR, "generator": BELOW_ALTERNATOR, "battery": BELOW_BATTERY}
_MAY_REPEAT = ("needs", "when it fails")


def read_electrical(
    at: At, controls: Reading, numbers: Numbers, gauges: Mapping[str, Gauge], titles: Mapping[str, str]
) -> Electrical:
    """The block as far as it can be read; `titles` are those of the cards by their keys."""
    return _Block(at, controls, numbers, gauges, titles).electrical()


class _Block:
    def __init__(
        self, at: At, controls: Reading, numbers: Numbers, gauges: Mapping[str, Gauge], titles: Mapping[str, str]
    ) -> None:
        self.at, self.controls, self.numbers = at, controls, numbers
        self.gauges, self.titles = gauges, titles
        self.ledger: Ledger = numbers.ledger
        self.amounts: dict[str, Fraction] = {}
        self.spots: dict[str, Spot] = {}

    def electrical(self) -> Electrical:
        check_head_source(self.at, self.numbers.sources, self.ledger)
        below: dict[str, list[tuple[str, Row]]] = {key: [] for key in _BELOW}
        lines = [line for line in self.at.block.lines if isinstance(line.body, Row)]
        for line, key, row in self._rows(lines, ROWS, "An electrical block"):
            self._number(key, row)
            known = _BELOW.get(key, {})
            children = [child for child in line.children if isinstance(child.body, Row)]
            below.setdefault(key, []).extend(
                (name, child) for _, name, child in self._rows(children, known, f"`{row.left.text}`")
            )
        for key, row in below["battery"]:
            if key != "needs":
                self._number(key, row)
        alternator = "alternator" if "alternator" in self.amounts else "generator"
        read_on = [self._gauge(row) for key, row in below[alternator] if key == "read on"]
        fails = [self._card(row) for key, row in below[alternator] if key == "when it fails"]
        times = {name: self.amounts[key] for key, name in _TIMES.items() if key in self.amounts}
        return Electrical(
            spot=self.at.spot(self.at.block.head.span),
            volts=self.amounts.get("system") or None,
            alternator=self._supply(alternator, below[alternator]),
            battery=self._supply("battery", below["battery"]),
            always_on=self.amounts.get("always on", Fraction(0)),
            wires_rated=self.amounts.get("wires rated"),
            read_on="".join(read_on[:1]),
            when_it_fails=tuple(dict.fromkeys(filter(None, fails))),
            **times,
        )

    def _rows(self, lines: list[Line], known: Mapping[str, str], what: str) -> list[tuple[Line, str, Row]]:
        """The rows that can stand here, with their keys; others are said, and what stands twice."""
        found: list[tuple[Line, str, Row]] = []
        first: dict[str, Spot] = {}
        for line in lines:
            row = line.body
            if not isinstance(row, Row) or row.right is None:
                continue
            key, spot = folded(row.left.text), self.at.spot(row.left.span)
            if key not in known:
                has = ", ".join(f"`{name}`" for name in known)
                help_ = f"{what} has {has}." if known else f"{what} has nothing below it."
                message = f"`{row.left.text}` is nothing that can be said here."
                self.ledger.say("unknown-property", spot, message, offered(key, known, help_))
            elif _once(key) in first and key not in _MAY_REPEAT:
                self.ledger.again("The row", row.left.text, spot, first[_once(key)])
            else:
                first.setdefault(_once(key), spot)
                found.append((line, key, row))
        return found

    def _number(self, key: str, row: Row) -> None:
        if row.value is None or row.right is None:
            return
        value, spot = row.value, self.at.spot(measured(row.value))
        try:
            found = amount_in((_UNITS[key],), value, self.at, self.numbers)
        except UnworkableError:
            return
        origin = origin_of(value.source, self.at.block.head.source, self.at, self.numbers.sources, self.ledger)
        if found is None or (not found[0] and key in ("system", *_BELOW)):
            help_ = f"Write it like `{(ROWS | BELOW_BATTERY)[key]}`."
            self.ledger.say("unreadable-value", spot, f"`{row.right.text}` cannot be read after `{key}`.", help_)
            return
        if origin is None and key in _SOURCED and "{" not in spot.text:
            self.ledger.say(
                "value-without-source",
                self.at.spot(row.left.span),
                f"`{row.left.text}` does not say where its number comes from.",
                "Say so at the end of the row, `from kit manual`, or `unverified` while nobody has confirmed it.",
            )
        self.amounts[key], self.spots[key] = found[0], spot

    def _supply(self, key: str, below: list[tuple[str, Row]]) -> Supply | None:
        needs = [
            self.controls.needed("", row.right.text, self.at.spot(row.right.span))
            for name, row in below
            if name == "needs" and row.right is not None
        ]
        return Supply(key, self.amounts[key], tuple(needs), self.spots[key]) if key in self.amounts else None

    def _gauge(self, row: Row) -> str:
        assert row.right is not None
        text, spot = row.right.text, self.at.spot(row.right.span)
        key = folded(text)
        if key in self.gauges:
            self.ledger.mention("gauge", key, spot)
            return key
        known = [gauge.name for gauge in self.gauges.values()]
        help_ = offered(text, known, "Declare it: `gauge Ammeter in A from kit manual`.")
        self.ledger.say("unknown-gauge", spot, f"No gauge `{text}` is declared.", help_)
        return ""

    def _card(self, row: Row) -> str:
        assert row.right is not None
        text, spot = row.right.text, self.at.spot(row.right.span)
        key = folded(text)
        if key in self.titles:
            self.ledger.mention("card", key, spot)
            return key
        help_ = "Write its title as it stands after `abnormal` or `emergency`."
        message = f"There is no card `{text}`."
        self.ledger.say("unknown-card", spot, message, offered(text, self.titles.values(), help_))
        return ""


_TIMES = {"shed after": "shed_after", "landing takes": "landing_takes", "must last": "must_last"}


def _once(key: str) -> str:
    """An alternator and a generator are one thing here."""
    return "alternator" if key == "generator" else key
