"""What is said of a stock that cannot be made, or had better not be."""

from __future__ import annotations

from typing import NamedTuple


class Amiss(NamedTuple):
    """`of` is the property that is at fault, or the one that is most likely to be."""

    of: str
    message: str
    help: str


def millimetres(length: int, up: bool = False) -> str:
    """A length for a message: `3.2 mm`. Rounded to a tenth, upwards where it is the least that is missing."""
    tenths = -(-length // 100) if up else (length + 50) // 100
    return f"{tenths // 10}.{tenths % 10} mm".replace(".0 mm", " mm")


def as_measured(length: int) -> str:
    """A length with all of its digits, where a rounded one would be told from a limit by nothing: `12.06 mm`."""
    return f"{length // 1_000}.{length % 1_000:03}".rstrip("0").rstrip(".") + " mm"
