"""The declared airspeeds that the rules compare, by their symbols, and which of them stands out of order.

Only speeds of one basis can be compared: no factor leads from an indicated airspeed to a calibrated one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Exact
from dotleader.handbook.amounts.speed_symbols import speed_symbol
from dotleader.handbook.amounts.units import Basis, Dimension, Unit
from dotleader.handbook.model import Declared, Handbook
from dotleader.source.record import record
from dotleader.syntax.plain import folded


@record
class Speed:
    """`amount` is in the base unit of its dimension; `plain` where nothing but brackets stands behind the symbol."""

    symbol: str
    declared: Declared
    amount: Fraction
    unit: Unit
    plain: bool


@record
class OutOfOrder:
    """A speed with those below which it should stand and does not, and those above which it should."""

    speed: Speed
    not_below: tuple[Speed, ...]
    not_above: tuple[Speed, ...]

    @property
    def all(self) -> tuple[Speed, ...]:
        return (self.speed, *self.not_below, *self.not_above)


_CHAIN = ("VS0", "VS1", "VA", "VNO", "VNE")
_PAIRS = (
    *((low, high) for at, low in enumerate(_CHAIN) for high in _CHAIN[at + 1 :]),
    ("VS0", "VFE"),
    ("VFE", "VNO"),
)
_STALLS = ("VS0", "VS1")
_FIRST = ("VFE", "VNE", "VNO", "VA", "VS0", "VS1")
"""Which of two that contradict one another is marked; a stalling speed is what the others rest on."""


_AT_ANGLE = re.compile(r"\bat (\d+(?:\.\d+)?) ?(?:deg|°)$", re.IGNORECASE)


def known_speeds(handbook: Handbook) -> dict[Dimension, dict[str, list[Speed]]]:
    """By what they measure, then by symbol, in the order of the source."""
    found: dict[Dimension, dict[str, list[Speed]]] = {}
    for declared in handbook.values.values():
        symbol = speed_symbol(declared.name) if declared.speed else None
        if symbol is None:
            continue
        match declared.shape:
            case Exact(quantity) | AtLeast(quantity) | AtMost(quantity):
                unit = quantity.unit
            case _:
                continue
        if unit is not None and unit.basis is not Basis.NONE:
            plain = len(declared.name.split()) == 1
            speed = Speed(symbol.symbol, declared, quantity.number * unit.factor, unit, plain)
            found.setdefault(unit.dimension, {}).setdefault(symbol.symbol, []).append(speed)
    return found


def out_of_order(by_symbol: dict[str, list[Speed]]) -> list[OutOfOrder]:
    """The fewest speeds that have to move so that the rest is in order, the one in most people's way first.

    Where a symbol is declared several times (for two weights, two flap settings) there is a fault only if none fits.
    Flaps that are further out bear less speed.
    """
    wrong = list(_wrong_pairs(by_symbol))
    found = list(_by_angle(by_symbol.get("VFE", [])))
    while wrong:
        met = {speed.symbol: speed for pair in wrong for speed in pair}
        blamed = {symbol: _rests_on(speed, met) for symbol, speed in met.items()}
        symbols = [blamed[speed.symbol] for pair in wrong for speed in pair]
        worst = max(
            dict.fromkeys(symbols),
            key=lambda symbol: (symbols.count(symbol), not _derived(symbol, by_symbol), -_FIRST.index(symbol)),
        )
        below = tuple(high for low, high in wrong if low.symbol == worst)
        above = tuple(low for low, high in wrong if high.symbol == worst)
        speed = next(speed for pair in wrong for speed in pair if speed.symbol == worst)
        found.append(OutOfOrder(speed, below, above))
        wrong = [pair for pair in wrong if worst not in (blamed[pair[0].symbol], blamed[pair[1].symbol])]
    return found


def _rests_on(speed: Speed, met: dict[str, Speed]) -> str:
    """What is to blame for a speed: another that it is worked out from and that is out of order too, else itself."""
    parts = speed.declared.parts
    return next((symbol for symbol, other in met.items() if folded(other.declared.name) in parts), speed.symbol)


def _by_angle(speeds: list[Speed]) -> Iterator[OutOfOrder]:
    angles = [(Fraction(found[1]), speed) for speed in speeds if (found := _AT_ANGLE.search(speed.declared.name))]
    angles.sort(key=lambda one: one[0])
    for (_, less), (_, more) in pairwise(angles):
        if more.amount > less.amount:
            yield OutOfOrder(more, (less,), ())


def _derived(symbol: str, by_symbol: dict[str, list[Speed]]) -> bool:
    return any(speed.declared.parts for speed in by_symbol[symbol])


def _wrong_pairs(by_symbol: dict[str, list[Speed]]) -> Iterator[tuple[Speed, Speed]]:
    for lower, upper in _PAIRS:
        if lower in by_symbol and upper in by_symbol:
            low = min(by_symbol[lower], key=lambda speed: speed.amount)
            high = max(by_symbol[upper], key=lambda speed: speed.amount)
            may_be_equal = lower not in _STALLS or upper in _STALLS
            if low.amount > high.amount or (low.amount == high.amount and not may_be_equal):
                yield low, high
