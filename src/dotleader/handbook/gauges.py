"""The `gauge` blocks: coloured ranges in the gauge's unit."""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.amounts.arithmetic import exactly_in
from dotleader.handbook.amounts.numerals import number_text
from dotleader.handbook.amounts.quantity import Quantity
from dotleader.handbook.amounts.trouble import Trouble, said
from dotleader.handbook.amounts.units import Unit, shown_unit
from dotleader.handbook.facts import check_head_source, origin_of
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Band, Fact, From, Gauge
from dotleader.handbook.numbers import Numbers, UnworkableError
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Expression, Number, Row, Value

COLOURS = ("red", "yellow", "green", "white", "blue")
"""The colours of 14 CFR 23.1545 and 23.1549 (as before Amdt 23-64)."""


def read_gauge(at: At, numbers: Numbers, sources: dict[str, Fact], ledger: Ledger) -> Gauge | None:
    """A gauge from its block; None where it has no name (said by the parser)."""
    head = at.block.head
    if head.name is None:
        return None
    unit = numbers.unit(head.unit.text, at.spot(head.unit.span)) if head.unit is not None else None
    check_head_source(at, sources, ledger)
    bands: list[Band] = []
    origin: From | None = origin_of(None, head.source, at, sources, ledger)
    for line in at.block.lines:
        row = line.body
        if not isinstance(row, Row) or row.right is None or row.value is None:
            continue
        if row.value.source is not None:
            origin = origin_of(row.value.source, None, at, sources, ledger)
        if folded(row.left.text) not in COLOURS:
            ledger.say(
                "unknown-property",
                at.spot(row.left.span),
                f"`{row.left.text}` is no colour of a gauge.",
                "The colours are " + ", ".join(f"`{colour}`" for colour in COLOURS) + ".",
            )
        try:
            bands.append(_band(row, row.value, at, unit, numbers))
        except UnworkableError:
            continue
    gauge = Gauge(folded(head.name.text), head.name.text, unit, tuple(bands), origin, at.spot(head.name.span))
    if origin is None and bands:
        ledger.say(
            "value-without-source",
            gauge.spot,
            f"The gauge `{gauge.name}` does not say where its ranges come from.",
            f"Say so in its head: `gauge {gauge.name} in {unit.symbol if unit else 'psi'} from engine manual`, "
            "or `from unverified`.",
        )
    return gauge


def _band(row: Row, value: Value, at: At, unit: Unit | None, numbers: Numbers) -> Band:
    first = _number(value.first, at, unit, numbers)
    second = _number(value.second, at, unit, numbers) if value.second is not None else None
    low: Fraction | None = first
    high: Fraction | None = first if second is None else second
    match value.shape:
        case "below" | "at most":
            low = None
        case "above" | "at least":
            high = None
        case "tolerance":
            assert second is not None
            low, high = first - second, first + second
        case _:
            pass
    if low is not None and high is not None and low > high:
        numbers.ledger.say(
            "impossible-value",
            at.spot(value.span),
            f"`{at.spot(value.span).text}` runs from high to low.",
            "Write the lower number first.",
        )
        raise UnworkableError
    return Band(row.left.text, low, high, _shown(low, high, unit), at.spot(row.left.span))


def _number(expression: Expression, at: At, unit: Unit | None, numbers: Numbers) -> Fraction:
    """A number of a row in the gauge's unit, which it has unless it says another."""
    if not isinstance(expression, Number):
        quantity = numbers.finished(expression, at)
    else:
        quantity = numbers.number(expression, at)
    if quantity.unit is None or unit is None:
        return quantity.number
    converted = exactly_in(Quantity(quantity.number, quantity.unit), unit)
    if isinstance(converted, Trouble):
        message, help_ = said(converted)
        numbers.ledger.say("unlike-units", at.spot(expression.span), message, help_)
        raise UnworkableError
    return converted.number


def end_text(number: Fraction, unit: Unit | None) -> str:
    """An end of a range as it prints: `55 psi`."""
    return (number_text(number) or f"{number.numerator}/{number.denominator}") + shown_unit(unit)


def _shown(low: Fraction | None, high: Fraction | None, unit: Unit | None) -> str:
    if low is None and high is None:
        return ""
    if low is None:
        assert high is not None
        return f"below {end_text(high, unit)}"
    if high is None:
        return f"above {end_text(low, unit)}"
    if low == high:
        return end_text(low, unit)
    return f"{end_text(low, None)} to {end_text(high, unit)}"
