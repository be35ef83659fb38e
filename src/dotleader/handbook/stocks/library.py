"""Stocks and papers that are known by name.

Sizes: ISO 216 for A3 to A7; the United States' papers are 8.5 x 11 in and its half. Holes: ISO 838 (two of
6 mm, 80 mm apart, 12 mm from the edge); three on letter 4.25 in apart and on half letter 2.75 in apart. The width of
American holes (9/32 in) and their distance from the edge (1/2 in) are not standardised and from memory.
"""

from __future__ import annotations

from fractions import Fraction
from types import MappingProxyType

from dotleader.source.record import record
from dotleader.syntax.plain import folded

INCH = 25_400


def inches(value: str) -> int:
    """Whole micrometres of a length in inches, given as an exact decimal or fraction."""
    return micrometres(Fraction(value) * INCH)


def micrometres(length: Fraction) -> int:
    """A length in micrometres rounded to whole ones, a half up."""
    return (2 * length.numerator + length.denominator) // (2 * length.denominator)


@record
class HoleRow:
    """Holes as they are written: `edge` is counted from the edge of the pouch, or of the leaf without one."""

    count: int
    apart: int
    diameter: int
    edge: int


@record
class Written:
    """A stock as it is written, before it is known whether it can be."""

    leaf: tuple[int, int]
    holes: HoleRow
    paper: tuple[int, int]
    paper_name: str
    pouch: tuple[int, int] = (0, 0)
    corners: int = 3_175  # 1/8 in, the small hand corner rounder (from memory)
    bound_at: str = "left"
    read_at: int = 600_000


SIZES: MappingProxyType[str, tuple[int, int]] = MappingProxyType(
    {
        "A3": (297_000, 420_000),
        "A4": (210_000, 297_000),
        "A5": (148_000, 210_000),
        "A6": (105_000, 148_000),
        "A7": (74_000, 105_000),
        "Letter": (inches("8.5"), inches("11")),
        "Legal": (inches("8.5"), inches("14")),
        "half letter": (inches("5.5"), inches("8.5")),
    }
)
PAPERS = ("A3", "A4", "A5", "Letter", "Legal")

ISO_838 = HoleRow(2, 80_000, 6_000, 12_000)
THREE_ON_LETTER = HoleRow(3, inches("4.25"), inches("9/32"), inches("1/2"))
THREE_ON_HALF_LETTER = HoleRow(3, inches("2.75"), inches("9/32"), inches("1/2"))

STOCKS: MappingProxyType[str, Written] = MappingProxyType(
    {
        "A5": Written(SIZES["A5"], ISO_838, SIZES["A4"], "A4"),
        "A5, two holes": Written(SIZES["A5"], ISO_838, SIZES["A4"], "A4"),
        "A6": Written(SIZES["A6"], ISO_838, SIZES["A4"], "A4"),
        "A6, two holes": Written(SIZES["A6"], ISO_838, SIZES["A4"], "A4"),
        "A4": Written(SIZES["A4"], ISO_838, SIZES["A4"], "A4"),
        "A4, two holes": Written(SIZES["A4"], ISO_838, SIZES["A4"], "A4"),
        "half letter": Written(SIZES["half letter"], THREE_ON_HALF_LETTER, SIZES["Letter"], "Letter"),
        "half letter, three holes": Written(SIZES["half letter"], THREE_ON_HALF_LETTER, SIZES["Letter"], "Letter"),
        "letter": Written(SIZES["Letter"], THREE_ON_LETTER, SIZES["Letter"], "Letter"),
        "letter, three holes": Written(SIZES["Letter"], THREE_ON_LETTER, SIZES["Letter"], "Letter"),
    }
)

_AMERICAN = ("Letter", "Legal")
_PAPERS = {folded(name): name for name in PAPERS} | {"us letter": "Letter", "us legal": "Legal"}
_SIZES = {folded(name): size for name, size in SIZES.items()}


def _loose(name: str) -> str:
    """A stock's name for comparison: without commas."""
    return folded(name.replace(",", " "))


_STOCKS = {_loose(name): (name, stock) for name, stock in STOCKS.items()}


def paper_named(text: str) -> str:
    """The known paper of that name as we write it, or `""`."""
    return _PAPERS.get(folded(text), "")


def size_named(text: str) -> tuple[int, int] | None:
    """Width and height of a leaf's, pouch's or paper's size that has a name."""
    return _SIZES.get(folded(text))


def stock_named(text: str) -> tuple[str, Written] | None:
    """The known stock of that name, as we write the name."""
    return _STOCKS.get(_loose(text))


def usual_stock(paper_name: str) -> str:
    """The name of the stock that is taken where none is written."""
    return "half letter, three holes" if paper_name in _AMERICAN else "A5, two holes"
