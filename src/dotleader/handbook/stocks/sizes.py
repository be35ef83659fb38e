"""Sizes of leaves, pouches and papers that are known by name, in whole micrometres.

ISO 216 for A3 to A7; the papers of the United States are 8.5 x 11 in, 8.5 x 14 in and half the first.
1 in is 25.4 mm exactly (NIST SP 811).
"""

from __future__ import annotations

from fractions import Fraction
from types import MappingProxyType

from dotleader.syntax.plain import folded

Size = tuple[int, int]

INCH = 25_400


def inches(value: str) -> int:
    """Whole micrometres of a length in inches, given as an exact decimal or fraction."""
    return micrometres(Fraction(value) * INCH)


def micrometres(length: Fraction) -> int:
    """A length in micrometres rounded to whole ones, a half up."""
    return (2 * length.numerator + length.denominator) // (2 * length.denominator)


SIZES: MappingProxyType[str, Size] = MappingProxyType(
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

_PAPERS = {folded(name): name for name in PAPERS} | {"us letter": "Letter", "us legal": "Legal"}
_SIZES = {folded(name): size for name, size in SIZES.items()}


def paper_named(text: str) -> str:
    """The known paper of that name as we write it, or `""`."""
    return _PAPERS.get(folded(text), "")


def size_named(text: str) -> Size | None:
    """Width and height of a leaf's, pouch's or paper's size that has a name."""
    return _SIZES.get(folded(text))
