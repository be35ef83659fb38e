"""Positions of controls: how they are declared and how a text is matched with them."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

from dotleader.handbook.amounts.numerals import NumberTrouble, number_text, read_number
from dotleader.handbook.amounts.units import Unit, find_unit, shown_unit
from dotleader.syntax.plain import folded


class Positions(NamedTuple):
    """`names` in order; of a lever its ends, then its further marks."""

    names: tuple[str, ...]
    lever: bool = False
    takes_any: bool = False
    unit: str = ""


def read_positions(text: str) -> Positions:
    """The right part of a control: `OFF, ON`, `CUT OFF to RICH, LEANED`, `any hPa`."""
    parts = [part.strip() for part in text.split(",") if part.strip()]
    if parts and (parts[0] == "any" or parts[0].startswith("any ")):
        return Positions((), takes_any=True, unit=parts[0][3:].strip())
    if parts and " to " in parts[0]:
        low, _, high = parts[0].partition(" to ")
        return Positions((low.strip(), high.strip(), *parts[1:]), lever=True)
    return Positions(tuple(parts))


_SEPARATED = re.compile(r"\S\s*[/;|]\s*\S|\sor\s|\sto$|^to\s")


def unlisted(positions: Positions) -> bool:
    """Whether what is read as the only position of a control is several, joined by something else than commas."""
    return len(positions.names) == 1 and _SEPARATED.search(positions.names[0]) is not None


@lru_cache(maxsize=4096)
def matched(text: str) -> str:
    """The form in which positions are compared: folded, and a number with a unit as it prints.

    So `15 deg` as a position and `{takeoff flaps}`, which prints as 15°, are the same.
    """
    if "0" <= text[:1] <= "9" or text.startswith(("-", ".", "−")):
        words = text.replace("°", " deg ").split()
        number = read_number(words[0])
        unit = find_unit(" ".join(words[1:])) if len(words) > 1 else None
        if not isinstance(number, NumberTrouble) and (unit is None or isinstance(unit, Unit)):
            return (number_text(number.value) or words[0]) + shown_unit(unit)  # the same number, however written
    return folded(text)
