"""Numbers with a unit as they are typed in a response, in capitals or not."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from dotleader.handbook.amounts.unit_spellings import ALIASES
from dotleader.handbook.amounts.units import UNITS, Basis, Unit


class Typed(NamedTuple):
    """A number with its unit: `start` and `end` of the whole, `number` as typed."""

    start: int
    end: int
    number: str
    unit: Unit


def typed_amounts(text: str) -> Iterator[Typed]:
    if not any(map(str.isdigit, text)):
        return
    pattern, by_key = _table()
    for found in pattern.finditer(text):
        written = " ".join(found["unit"].split())
        unit = by_key.get(written) or by_key.get(written.casefold())
        if unit is not None:
            yield Typed(found.start(), found.end(), found["number"], unit)


def same_scale(one: Unit, other: Unit) -> bool:
    """Whether a number is the same in both: `kt` and `KIAS` are read on the same marks."""
    return (one.factor, one.offset) == (other.factor, other.offset)


def comparable(one: Unit, other: Unit) -> bool:
    """Whether both measure the same thing, an airspeed by whatever basis it has."""
    if one.dimension == other.dimension:
        return True
    return _is_airspeed(one) and _is_airspeed(other)


def _is_airspeed(unit: Unit) -> bool:
    return unit.basis is not Basis.NONE or unit.symbol in ("kt", "mph", "km/h")


@lru_cache(maxsize=1)
def _table() -> tuple[re.Pattern[str], dict[str, Unit]]:
    """What is found behind a number. Single letters count as they are written, longer units in any case."""
    spelt = {**UNITS, **{spelling: UNITS[symbol] for spelling, symbol in ALIASES.items()}}
    by_key = dict(spelt)
    for spelling, unit in spelt.items():
        if len(spelling) > 1:
            by_key.setdefault(spelling.casefold(), unit)
    by_key["L"] = UNITS["l"]
    longest_first = sorted((*spelt, "L"), key=len, reverse=True)
    words = "|".join(re.escape(spelling).replace(r"\ ", r"\s+") for spelling in longest_first)
    number = r"(?<![\w.])(?P<number>[-\N{MINUS SIGN}]?\d[\d,]*(?:\.\d+)?)"
    return re.compile(rf"{number}\s*(?P<unit>{words})(?![\w/])", re.IGNORECASE), by_key
