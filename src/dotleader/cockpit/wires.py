"""What copper wire carries and loses: tables 11-3 and 11-9 of FAA AC 43.13-1B (CHG 1), pages 11-15 and 11-23.

Between two sizes the thinner one is taken, and between two temperatures the lower one: nothing is interpolated. A
wire thinner than the thinnest of a table carries less than that; of one thicker than the thickest nothing is said.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

FOOT = Fraction(3048, 10_000)
"""In metres, exactly."""

_SIZES = (24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0)


def _row(sizes: tuple[int, ...], *numbers: str) -> Mapping[int, Fraction]:
    return MappingProxyType(dict(zip(sizes, map(Fraction, numbers), strict=True)))


# Table 11-3: wire and circuit protector, amperes. For AWG 1 and 0 it has no breaker.
PROTECTORS: Mapping[str, Mapping[int, Fraction]] = MappingProxyType(
    {
        "breaker": _row(_SIZES[1:-2], "5", "7.5", "10", "15", "20", "30", "40", "50", "80", "100", "125"),
        "fuse": _row(_SIZES[1:], "5", "5", "10", "10", "15", "20", "30", "50", "70", "70", "100", "150", "150"),
    }
)

# Table 11-9: amperes that tin-plated copper carries in a bundle, by what its insulation stands, degrees Celsius.
# Its basis: 70 degC around it, 33 and more wires (from AWG 8 up: 9), at most 20 per cent of the bundle's capacity
# used, 60,000 ft.
CARRIED: Mapping[int, Mapping[int, Fraction]] = MappingProxyType(
    {
        105: _row(_SIZES, "2.5", "3", "4", "6", "7", "10", "13", "17", "38", "50", "68", "95", "113", "128"),
        150: _row(_SIZES, "4", "5", "7", "9", "11", "14", "19", "26", "57", "76", "103", "141", "166", "192"),
        200: _row(_SIZES, "5", "6", "9", "12", "14", "18", "25", "32", "71", "97", "133", "179", "210", "243"),
    }
)

# Table 11-9: ohms in 1,000 ft at 20 degC, at most.
OHMS = _row(
    _SIZES, "28.40", "16.20", "9.88", "6.23", "4.81", "3.06", "2.02", "1.26", "0.70", "0.44", "0.28", "0.18", "0.15",
    "0.12",
)  # fmt: skip

# Volts that may be lost on the way to what works for long, by the volts of the system: tables 11-7 and 11-8, page
# 11-26, for 14, 28, 115 and 200 V. A system of 14 or 28 V is also named by its battery, 12 or 24 V.
ALLOWED_DROP = ((12, Fraction(1, 2)), (24, Fraction(1)), (115, Fraction(4)), (200, Fraction(7)))
FOR_MOMENTS = 2
"""What works only for moments may lose so many times as much (from memory)."""


def largest_protector(word: str, gauge: int) -> Fraction | None:
    """The largest `breaker` or `fuse` for a wire by table 11-3; None where the table does not tell."""
    return _of(PROTECTORS[word], gauge)


def carried(gauge: int, rated: Fraction | None) -> tuple[Fraction | None, int]:
    """The amperes that a wire carries for long, and the column of table 11-9 that they are from.

    Without a temperature that its insulation stands it is the lowest column.
    """
    column = max((heat for heat in CARRIED if rated is not None and heat <= rated), default=min(CARRIED))
    return _of(CARRIED[column], gauge), column


def drop(gauge: int, metres: Fraction, amps: Fraction) -> Fraction | None:
    """The volts lost along a wire at 20 degC: ohms a foot, times feet, times amperes (AC 43.13-1B, table 11-7)."""
    ohms = _of(OHMS, gauge)
    return None if ohms is None else ohms / 1000 * (metres / FOOT) * amps


def thick_enough(metres: Fraction, amps: Fraction, volts: Fraction) -> int | None:
    """The thinnest size of the table along which no more than so many volts are lost; None where none is."""
    return next((size for size in OHMS if (drop(size, metres, amps) or 0) <= volts), None)


def allowed_drop(volts: Fraction) -> Fraction | None:
    """What may be lost for long in a system of so many volts; None below any that the source names."""
    return max((most for system, most in ALLOWED_DROP if system <= volts), default=None)


def _of(table: Mapping[int, Fraction], gauge: int) -> Fraction | None:
    """The number for a size; for one between two that of the thinner one, for one thinner than all that of the
    thinnest. None for one that is thicker than all."""
    if gauge < min(table):
        return None
    return table[min((size for size in table if size >= gauge), default=max(table))]
