"""The symbols of speeds, which are printed with subscripts."""

from __future__ import annotations

import re

from dotleader.handbook.model import Handbook

_SYMBOL = re.compile(r"V[A-Z0-9]{1,6}")


def symbols_of(handbook: Handbook) -> frozenset[str]:
    """The symbols that declared speeds begin with: `VS0`, and `VFE` of `VFE at 10 deg`. They get subscripts."""
    firsts = (value.name.split()[0] for value in handbook.values.values() if value.speed and value.name.split())
    return frozenset(first for first in firsts if _SYMBOL.fullmatch(first))
