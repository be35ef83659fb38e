"""Sizes, thicknesses and numbers as they are written on the sheet."""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.stocks.fault import millimetres
from dotleader.handbook.stocks.sizes import INCH
from dotleader.handbook.stocks.stock import USUAL_PAPER

_MIL = 25.4
_STEPS = 16
"""Inches are said where a length is whole sixteenths of one."""

_GRAMS = 75
"""Of a square metre of paper as thick as is usual (20 lb bond); others weigh about as much in proportion."""


def counted(number: int, one: str, many: str = "") -> str:
    return f"{number} {one if number == 1 else many or one + 's'}"


def size_said(size: tuple[int, int]) -> str:
    """`152.4 × 228.6 mm (6 × 9 in)`, to the micrometre."""
    said = f"{_exact(size[0])} × {_exact(size[1])} mm"
    across, along = (_inches(length) for length in size)
    return f"{said} ({across} × {along} in)" if across and along else said


def _exact(length: int) -> str:
    """Millimetres with as many digits as there are."""
    return f"{length // 1000}.{length % 1000:03d}".rstrip("0").rstrip(".")


def _inches(length: int) -> str:
    """`5.75`, or nothing where a length is no plain number of inches."""
    exact = Fraction(length, INCH)
    if exact.denominator > _STEPS or _STEPS % exact.denominator:
        return ""
    return f"{float(exact):.4f}".rstrip("0").rstrip(".")


def film_said(film: int) -> str:
    """The thickness of film on one side: `0.127 mm (5 mil)`, and without mil where it is no whole number of halves."""
    halves = round(film / _MIL * 2)
    said = f"{film / 1000:.3f}".rstrip("0").rstrip(".") + " mm"
    return f"{said} ({halves / 2:g} mil)" if abs(halves * _MIL / 2 - film) <= 1 else said


def paper_said(thickness: int) -> str:
    """Paper by its thickness and by what it then weighs, about."""
    grams = round(thickness * _GRAMS / USUAL_PAPER)
    weight = "75 g/m² (20 lb bond)" if thickness == USUAL_PAPER else f"{grams} g/m²"
    return f"{thickness / 1000:.2f} mm thick, about {weight}"


def places_said(places: tuple[int, ...]) -> str:
    """`65 and 145 mm`."""
    parts = [millimetres(place)[: -len(" mm")] for place in places]
    return (" and ".join((", ".join(parts[:-1]), parts[-1])) if len(parts) > 1 else parts[0]) + " mm"
