"""Where a control stands on a panel: `panel 42 mm, 110 mm`."""

from __future__ import annotations

import re
from fractions import Fraction

from dotleader.source.record import record
from dotleader.syntax.plain import folded

_AT = re.compile(r"(\S.*?)\s+(\d+(?:\.\d+)?)\s*(mm|cm|in)\s*,\s*(\d+(?:\.\d+)?)\s*(mm|cm|in)$")
_MILLIMETRES = {"mm": Fraction(1), "cm": Fraction(10), "in": Fraction("25.4")}


@record
class Place:
    """On which panel a control stands, and how far right and up from its lower left corner, in millimetres."""

    panel: str
    right: Fraction
    up: Fraction


def read_place(text: str) -> Place | None:
    """The place that a text names; None where it has another form."""
    found = _AT.match(text)
    if found is None:
        return None
    right, up = Fraction(found[2]) * _MILLIMETRES[found[3]], Fraction(found[4]) * _MILLIMETRES[found[5]]
    return Place(folded(found[1]), right, up)
