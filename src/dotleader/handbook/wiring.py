"""What is said of the electric circuit of a control: what it draws, what protects it, the wire to it. Data only."""

from __future__ import annotations

from fractions import Fraction

from dotleader.source.record import record
from dotleader.source.text import Spot

OFF = "off"
"""The position, folded, in which nothing is drawn."""


@record
class Draw:
    """`draws .... 4.5 A`: in amperes, or in watts where `watts`.

    `position` is that of `draws in POSITION`, `moving` where it is `draws while moving`; neither is every position
    but OFF.
    """

    amount: Fraction
    watts: bool
    position: str
    moving: bool
    spot: Spot


@record
class Protector:
    """`breaker .... 7.5 A` or `fuse .... 5 A`; `word` says which."""

    word: str
    amps: Fraction
    spot: Spot


@record
class Wire:
    """`wire .... AWG 18, 2.4 m, 150 degC`. AWG 1/0 is gauge 0, 2/0 is -1, and so on; `length` in metres and
    `rated`, what its insulation stands in degrees Celsius, are None where they are not said."""

    gauge: int
    length: Fraction | None
    rated: Fraction | None
    spot: Spot


@record
class Wiring:
    draws: tuple[Draw, ...] = ()
    protector: Protector | None = None
    wire: Wire | None = None
