"""Units of measure: what they are, how they are found in text, how they print.

A speed carries what it is measured by. An indicated, a calibrated and a true airspeed differ by the
aircraft's own correction and by the air, never by a factor, so they are unlike each other and unlike a
plain speed such as wind.
"""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType
from typing import TypeAlias

from dotleader.handbook.amounts.unit_spellings import ALIASES, AMBIGUOUS, MISSPELT
from dotleader.handbook.amounts.unit_table import ROWS, Row
from dotleader.source.record import record

Powers: TypeAlias = tuple[tuple[str, int], ...]


class Basis(StrEnum):
    """What a speed is measured by; `NONE` is a plain speed, or no speed at all."""

    IAS = "IAS"
    CAS = "CAS"
    TAS = "TAS"
    NONE = ""


@record
class Dimension:
    """What can be compared. `powers` counts base dimensions, sorted; `name` is empty where no unit has it.

    Both count: a load factor and a percentage have no powers, and are still unlike.
    """

    name: str
    powers: Powers


@record
class Unit:
    """A unit. The amount in the base of its dimension is ``(number + offset) * factor``, exactly.

    `parts` are the simple units it is made of with their powers, in the order in which they are written;
    `step` is what a conversion into it is rounded to.
    """

    symbol: str
    dimension: Dimension
    factor: Fraction
    parts: Powers
    step: Fraction = Fraction(1)
    offset: Fraction = Fraction(0)
    basis: Basis = Basis.NONE
    shown: str = ""
    glued: bool = False
    grouped: bool = True

    @property
    def listed(self) -> bool:
        """Whether the language has this unit; the product of two units may be one that it has not."""
        return bool(self.dimension.name)


@record
class UnknownUnit:
    """Not a unit of the language; `suggestions`, best first, may be empty."""

    text: str
    suggestions: tuple[Unit, ...]


@record
class AmbiguousUnit:
    """A unit that does not say which, such as `gal`; at least one choice."""

    text: str
    choices: tuple[Unit, ...]


def _powers_of(parts: Powers, bases: dict[str, str]) -> Powers:
    counted: dict[str, int] = {}
    for symbol, power in parts:
        base = bases[symbol]
        counted[base] = counted.get(base, 0) + power
    return tuple(sorted((base, power) for base, power in counted.items() if power))


def _parts_of(row: Row) -> Powers:
    over = (row.symbol,) if row.over is None else row.over
    return (*((symbol, 1) for symbol in over), *((symbol, -1) for symbol in row.under))


def _built() -> dict[str, Unit]:
    bases = {row.symbol: row.dimension for row in ROWS if row.over is None}
    bases |= {basis.value: basis.value for basis in Basis if basis is not Basis.NONE}
    units = {}
    for row in ROWS:
        parts = _parts_of(row)
        basis = next((basis for basis in Basis if (basis.value, 1) in parts), Basis.NONE)
        units[row.symbol] = Unit(
            symbol=row.symbol,
            dimension=Dimension(row.dimension, _powers_of(parts, bases)),
            factor=row.factor,
            parts=parts,
            step=row.step,
            offset=row.offset,
            basis=basis,
            shown=row.shown or row.symbol,
            glued=row.glued,
            grouped=row.grouped,
        )
    return units


UNITS: MappingProxyType[str, Unit] = MappingProxyType(_built())
"""Every unit of the language by its symbol, in the order of the reference."""

_READ: dict[str, Unit | AmbiguousUnit] = {
    **UNITS,
    **{spelling: UNITS[symbol] for spelling, symbol in ALIASES.items()},
    **{text: AmbiguousUnit(text, tuple(UNITS[s] for s in choices)) for text, choices in AMBIGUOUS.items()},
}


def like(left: Unit, right: Unit) -> bool:
    """Whether a number in one unit can be added to, compared with and converted into the other."""
    return left.dimension == right.dimension


def with_basis(unit: Unit, basis: Basis) -> Unit:
    """A plain `kt`, `mph` or `km/h` as the airspeed of that basis; any other unit as it is."""
    if unit.basis is not Basis.NONE or basis is Basis.NONE:
        return unit
    name = f"{unit.symbol} {basis.value}"
    return UNITS.get(ALIASES.get(name, name), unit)


def shown_unit(unit: Unit | None) -> str:
    """The unit as it follows a number on a face, with its space: ``" KIAS"``, ``"°"``, ``" °C"``."""
    if unit is None:
        return ""
    return unit.shown if unit.glued else f" {unit.shown}"


def find_unit(text: str) -> Unit | UnknownUnit | AmbiguousUnit:
    """The unit that a text names. Runs of spaces count as one; case counts (`G` is not `g`)."""
    folded = "/".join(part.strip() for part in " ".join(text.split()).split("/"))
    found = _READ.get(folded)
    if found is None and (lower := folded.lower()) in AMBIGUOUS:
        return AmbiguousUnit(folded, tuple(UNITS[symbol] for symbol in AMBIGUOUS[lower]))  # `Gal`
    return found or UnknownUnit(folded, _suggestions(folded))


def longest_unit(words: str) -> tuple[Unit | AmbiguousUnit, str] | None:
    """The longest unit that a text begins with, and the text after it; `None` when it begins with none.

    The unit ends where a word ends: `in` is read at the head of `in from kit manual`, and not in `inside`
    or `in/h`.
    """
    start = len(words) - len(words.lstrip())
    best = start
    found: Unit | AmbiguousUnit | None = None
    for spelling, unit in _READ.items():
        end = _end_of(spelling, words, start)
        if end > best and _word_ends(words, end):
            best, found = end, unit
    return None if found is None else (found, words[best:])


def _end_of(spelling: str, words: str, at: int) -> int:
    """Where a spelling that stands at an offset ends; 0 when it does not stand there."""
    for sign in spelling:
        if sign in " /":
            spaces = len(words[at:]) - len(words[at:].lstrip())
            at += spaces
            if sign == " ":
                if not spaces:
                    return 0
                continue
        if words[at : at + 1] != sign:
            return 0
        at += 1
        if sign == "/":
            at += len(words[at:]) - len(words[at:].lstrip())
    return at


def _word_ends(words: str, at: int) -> bool:
    """Whether a unit ends here, and no longer word or compound; a division by a number may follow it."""
    rest = words[at:]
    if not rest or words[at - 1] == "%":
        return True
    if rest[0].isalnum() or rest[0] in "_°º%":
        return False
    joined = rest[0] in "/-·" and rest[1:2].isalpha()
    return not joined or rest[1:].startswith("root of")


def _squeezed(text: str) -> str:
    return "".join(sign for sign in text.lower() if sign not in " .-·")


def _suggestions(text: str) -> tuple[Unit, ...]:
    key = _squeezed(text)
    if not key:
        return ()
    if symbols := MISSPELT.get(key):
        return tuple(UNITS[symbol] for symbol in symbols)
    same = tuple(unit for unit in UNITS.values() if _squeezed(unit.symbol) == key)
    if same or len(key) < 3:
        return tuple(sorted(same, key=lambda unit: unit.symbol.replace(" ", "") != text))
    return tuple(unit for unit in UNITS.values() if _one_slip_apart(_squeezed(unit.symbol), key))[:3]


def _one_slip_apart(one: str, other: str) -> bool:
    """Whether one letter added, left out, changed or swapped with its neighbour makes one text the other."""
    shorter, longer = sorted((one, other), key=len)
    if len(longer) - len(shorter) > 1 or len(shorter) < 2:
        return False
    at = next((i for i, sign in enumerate(shorter) if sign != longer[i]), len(shorter))
    if len(shorter) < len(longer):
        return shorter[at:] == longer[at + 1 :]
    changed = shorter[at + 1 :] == longer[at + 1 :]
    swapped = shorter[at : at + 2] == longer[at : at + 2][::-1] and shorter[at + 2 :] == longer[at + 2 :]
    return changed or swapped
