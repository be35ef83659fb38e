"""Speeds and values worked out: each row evaluated once, when it is first asked for, so that order does not matter."""

from __future__ import annotations

from typing import NoReturn

from dotleader.handbook.amounts import arithmetic
from dotleader.handbook.amounts.numerals import NumberTrouble, read_number
from dotleader.handbook.amounts.quantity import Operand, Quantity, Shape
from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.shapes import quantity_of
from dotleader.handbook.amounts.speed_symbols import speed_symbol
from dotleader.handbook.amounts.trouble import Kind, Trouble, said, said_of_number
from dotleader.handbook.amounts.units import Basis, Unit, with_basis
from dotleader.handbook.bands import Bands
from dotleader.handbook.facts import origin_of
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Declared, Fact, Gauge
from dotleader.handbook.shaping import shape_text, shaped, unit_of
from dotleader.handbook.unit_reading import read_unit
from dotleader.handbook.value_help import value_help
from dotleader.source.finding import Related
from dotleader.source.record import record
from dotleader.source.text import Span, Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Binary, Expression, Negative, Number, Ref, Root, Rounded, Row, Value

_RULE_OF = {
    **dict.fromkeys((Kind.UNLIKE, Kind.BASIS, Kind.BARE, Kind.TEMPERATURE, Kind.NO_UNIT), "unlike-units"),
    Kind.DIVISION_BY_ZERO: "division-by-zero",
    **dict.fromkeys((Kind.UNEVEN, Kind.NOT_ROUNDED, Kind.NESTED_ROOT), "uneven-number"),
}
_OPERATIONS = {
    "+": arithmetic.add,
    "-": arithmetic.subtract,
    "*": arithmetic.multiply,
    "/": arithmetic.divide,
}


@record
class Entry:
    """A row of `speeds` or `values` that may not have been worked out yet."""

    name: str
    at: At
    row: Row
    speed: bool


class UnworkableError(Exception):
    """Raised inside this module where a value cannot be worked out; what was wrong has been said."""


class Numbers:
    """The declared values. `declared` works out all of them."""

    def __init__(
        self,
        entries: dict[str, Entry],
        gauges: dict[str, Gauge],
        sources: dict[str, Fact],
        basis: Basis,
        ledger: Ledger,
    ) -> None:
        self.entries = entries
        self.gauges = gauges
        self.sources = sources
        self.basis = basis
        self.ledger = ledger
        self.bands = Bands(gauges, ledger)
        self.done: dict[str, Declared] = {}
        self.open: list[str] = []

    def declared(self) -> dict[str, Declared]:
        return {key: self.value(key) for key in self.entries}

    def key_of(self, name: str) -> str:
        """The key that a reference names: the row's name, with or without the meaning in round brackets behind it."""
        key, plain = folded(name), folded(name.partition("(")[0])
        whole = self.entries[plain].name if plain in self.entries and key not in self.entries else ""
        return plain if folded(whole) == key else key

    def value(self, key: str) -> Declared:
        """The declared value of that key, worked out when first asked for."""
        if key not in self.done:
            self.open.append(key)
            try:
                self.done[key] = self._work_out(key)
            finally:
                self.open.pop()
        return self.done[key]

    def _work_out(self, key: str) -> Declared:
        entry = self.entries[key]
        row, at = entry.row, entry.at
        name, bracket = entry.name, ""
        if entry.speed and name.endswith(")") and "(" in name:
            name, _, bracket = name[:-1].partition("(")
        symbol = speed_symbol(name) if entry.speed else None
        meaning = bracket.strip() or (symbol.meaning if symbol else "")
        spot = at.spot(row.left.span)
        parts: list[str] = []
        shape = None
        origin = None
        if row.value is not None:
            try:
                shape = self._shape(row.value, at, entry.speed, parts)
            except UnworkableError:
                shape = None
            # What is derived has the sources of its parts, and not that of its block.
            head = None if parts else at.block.head.source
            origin = origin_of(row.value.source, head, at, self.sources, self.ledger)
        text = shape_text(shape) if shape is not None else ""
        formula = at.spot(_worked(row.value)).text if row.value is not None and _is_worked(row.value) else ""
        if row.value is not None and origin is None and not parts and shape is not None:
            self._no_source(entry, spot)
        return Declared(
            key=key,
            name=name.strip(),
            speed=entry.speed,
            meaning=meaning,
            shape=shape,
            shown=text or f"{{{entry.name}}}",
            formula=formula,
            parts=tuple(dict.fromkeys(parts)),
            origin=origin,
            spot=spot,
        )

    def _no_source(self, entry: Entry, spot: Spot) -> None:
        self.ledger.say(
            "value-without-source",
            spot,
            f"`{entry.name}` does not say where its number comes from.",
            "Say so at the end of the row, `from kit manual`, or `unverified` while nobody has confirmed it.",
        )

    def _shape(self, value: Value, at: At, speed: bool, parts: list[str]) -> Shape:
        if value.shape in ("below", "above"):
            self.ledger.say(
                "unreadable-value",
                at.spot(value.span),
                f"`{value.shape}` belongs to the rows of a gauge.",
                "In `values` write `at least` or `at most` before the number.",
            )
            raise UnworkableError
        first = self._finished(value.first, at, speed, parts)
        second = self._finished(value.second, at, speed, parts) if value.second is not None else None
        shape = shaped(value.shape, first, second)
        if isinstance(shape, Trouble):
            self._trouble(shape, at.spot(value.span))
        if speed:
            self._must_be_speed(shape, at.spot(value.first.span))
        return shape

    def _must_be_speed(self, shape: Shape, spot: Spot) -> None:
        unit = unit_of(shape)
        if unit is None or not unit.dimension.name.endswith("speed"):
            self.ledger.say(
                "unlike-units",
                spot,
                f"`{spot.text}` is no speed, and every row of `speeds` is one.",
                "Give it a unit of speed, such as `KIAS`, or declare it under `values`.",
            )

    def finished(self, expression: Expression, at: At) -> Quantity:
        """An expression outside the blocks of values, worked out; raises UnworkableError where it cannot be (said)."""
        return self._finished(expression, at, False, [])

    def _finished(self, expression: Expression, at: At, speed: bool, parts: list[str]) -> Quantity:
        operand = self._operand(expression, at, speed, parts)
        result = arithmetic.finished(operand)
        if isinstance(result, Trouble):
            self._trouble(result, at.spot(expression.span))
        return result

    def _trouble(self, trouble: Trouble, spot: Spot) -> NoReturn:
        """Say what is wrong; does not return."""
        message, help_ = said(trouble)
        self.ledger.say(_RULE_OF.get(trouble.kind, "impossible-value"), spot, message, help_)
        raise UnworkableError

    def _operand(self, expression: Expression, at: At, speed: bool, parts: list[str]) -> Operand:
        result: Operand | Trouble
        match expression:
            case Number():
                return self.number(expression, at, speed)
            case Ref():
                return self._reference(expression, at, parts)
            case Negative(of):
                return arithmetic.negate(self._operand(of, at, speed, parts))
            case Root(of):
                result = arithmetic.root(self._operand(of, at, speed, parts))
            case Binary(operator, left, right):
                try:
                    one = self._operand(left, at, speed, parts)
                except UnworkableError:
                    self._operand(right, at, speed, parts)  # what it refers to is used all the same
                    raise
                other = self._operand(right, at, speed, parts)
                result = _OPERATIONS[operator](one, other)
            case Rounded(of, direction, step):
                inner = self._operand(of, at, speed, parts)
                size = self.number(step, at, speed)
                if size.unit is None and inner.unit is not None:
                    size = Quantity(size.number, inner.unit, size.written)
                result = arithmetic.rounded(inner, size, Side(direction))
        if isinstance(result, Trouble):
            self._trouble(result, at.spot(expression.span))
        return result

    def number(self, number: Number, at: At, speed: bool = False) -> Quantity:
        """A number with its unit; a unit or digits that cannot be read are said and end the value."""
        spot = at.spot(number.span)
        read = read_number(number.digits)
        if isinstance(read, NumberTrouble):
            message, help_ = said_of_number(read)
            self.ledger.say("unreadable-value", spot, message, help_)
            raise UnworkableError
        if not number.unit:
            return Quantity(read.value, None, read.written)
        unit = self.unit(number.unit, at.spot(number.unit_span))
        if unit is None:
            raise UnworkableError
        return Quantity(read.value, with_basis(unit, self.basis) if speed else unit, read.written)

    def unit(self, text: str, spot: Spot) -> Unit | None:
        """The unit that a text names; said and None where it names none or does not say which."""
        return read_unit(text, spot, self.ledger)

    def _reference(self, ref: Ref, at: At, parts: list[str]) -> Quantity:
        spot = at.spot(ref.span)
        key = self.key_of(ref.name)
        if key in self.open:
            self._circle(key, spot)
        if key in self.entries:
            parts.append(key)
            self.ledger.mention("value", key, spot)
            shape = self.value(key).shape
            if shape is None:
                raise UnworkableError
            result = quantity_of(shape)
            if isinstance(result, Trouble):
                self._trouble(result, spot)
            return result
        found = self.bands.find(ref.name, spot)
        if found is not None:
            gauge, band, end = found
            parts.append(gauge.key)
            number = band.low if end == "low" or (not end and band.low == band.high) else band.high
            if number is not None and (end or band.low == band.high):
                return Quantity(number, gauge.unit)
            self._trouble(Trouble(Kind.NOT_EXACT, ref.name), spot)
        elif not self.bands.named(ref.name):
            self.unknown(ref.name, spot)
        raise UnworkableError

    def _circle(self, key: str, spot: Spot) -> NoReturn:
        names = [self.entries[k].name for k in (*self.open[self.open.index(key) :], key)]
        entry = self.entries[key]
        self.ledger.say(
            "circular-value",
            spot,
            f"`{names[0]}` is worked out from itself: {' > '.join(names)}.",
            "Give one of them a number.",
            Related(entry.at.spot(entry.row.left.span), "The circle begins here."),
        )
        raise UnworkableError

    def unknown(self, name: str, spot: Spot) -> None:
        """Say that a reference names nothing, and what may be meant."""
        names = {key: (entry.name, entry.speed) for key, entry in self.entries.items()}
        help_ = value_help(name, names, self.gauges.values())
        # Only a book with a fault in it pays for this import.
        from dotleader.handbook.mending import reference_offered  # noqa: PLC0415

        fix = reference_offered(help_, spot)
        self.ledger.say("unknown-value", spot, f"No value `{name}` is declared.", help_, fix=fix)


def _is_worked(value: Value) -> bool:
    return not isinstance(value.first, Number) or not isinstance(value.second, Number | None)


def _worked(value: Value) -> Span:
    """Where the arithmetic of a value stands, both its numbers where there are two."""
    return value.first.span if value.second is None else Span(value.first.span.start, value.second.span.end)
