"""Amperes, volts and minutes in words, rounded to the side on which nobody counts on too much."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from math import ceil, floor

from dotleader.cockpit.loads import ALWAYS_ON, On
from dotleader.handbook.amounts.numerals import number_text
from dotleader.handbook.model import Control

UNSWITCHED = "what is always on"


def load(amps: Fraction) -> str:
    """A load: tenths of an ampere, rounded up."""
    return f"{_plain(Fraction(ceil(amps * 10), 10))} A"


def rating(amps: Fraction) -> str:
    """What something gives, carries or opens at: exact where it comes out even, else rounded down."""
    return f"{number_text(amps) or _plain(Fraction(floor(amps * 100), 100))} A"


def share(amps: Fraction, of: Fraction) -> str:
    """A load as percents of a rating, rounded up."""
    return f"{ceil(amps * 100 / of)} %"


def loss(volts: Fraction) -> str:
    """Volts that are lost: hundredths, rounded up."""
    return f"{_plain(Fraction(ceil(volts * 100), 100))} V"


def minutes(time: Fraction) -> str:
    """Minutes that are left or gained: whole ones, rounded down; tenths where there are fewer than ten."""
    whole = Fraction(floor(time)) if time >= 10 else Fraction(floor(time * 10), 10)
    return f"{_plain(whole)} min"


def listed_loads(on: Iterable[On], controls: Mapping[str, Control], most: int = 0) -> str:
    """`Pitot heat 7.5 A, Landing light 4.2 A`, the largest first; with `most` no more than so many of them."""
    ordered = sorted(on, key=lambda one: -one.amps)
    words = [f"{name_of(one.control, controls)} {load(one.amps)}" for one in (ordered[:most] if most else ordered)]
    return ", ".join(words)


def name_of(control: str, controls: Mapping[str, Control]) -> str:
    return UNSWITCHED if control == ALWAYS_ON else controls[control].name


def _plain(number: Fraction) -> str:
    """A number of a few decimals, which comes out even."""
    return number_text(number) or str(number)
