"""Units multiplied, divided and rooted: `lb` times `in` is `lb in`, `US gal` by `US gal/h` is `h`.

Units cancel by the simple units they are made of, so that `kt` times `min` is `NM` and not some odd unit of
length. Where the result is a dimension of the table, one of the table's units stands for it; else a unit
that is not `listed` keeps the sum going: `{a} * {b} / {c}` may pass through something that has no name.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import prod

from dotleader.handbook.amounts.units import UNITS, Basis, Dimension, Powers, Unit

_BASIS_NAMES = {basis.value for basis in Basis if basis is not Basis.NONE}


def composed(left: Unit | None, right: Unit | None, power: int) -> tuple[Unit | None, Fraction]:
    """The unit of `left` times `right` to the power 1 or -1, and what the product of the numbers is
    multiplied by.

    No unit is that of a bare number, which leaves the other unit as it is; so do a percentage and a load
    factor.
    """
    scale = factor_of(left) * factor_of(right) ** power
    if right is None or (_parts(left) and not right.parts):
        unit = left
    elif power == 1 and (left is None or (right.parts and not left.parts)):
        unit = right
    else:
        unit = _unit_of(_folded((*_parts(left), *((part, n * power) for part, n in right.parts))))
    return unit, scale / factor_of(unit)


def rooted(unit: Unit | None) -> tuple[Unit | None, Fraction] | None:
    """The unit of a square root, and what the number is multiplied by before its root is taken.

    `None` where the unit is no square: a root of knots is nothing.
    """
    if any(power % 2 for _, power in _parts(unit)):
        return None
    root = _unit_of(tuple((part, power // 2) for part, power in _parts(unit)))
    return root, factor_of(unit) / factor_of(root) ** 2


def factor_of(unit: Unit | None) -> Fraction:
    """The factor to the base of the unit's dimension; 1 for a bare number."""
    return Fraction(1) if unit is None else unit.factor


def factor_of_parts(parts: Powers) -> Fraction:
    """The factor of a product of simple units. A basis such as IAS counts as a dimension and has no size."""
    return prod((UNITS[part].factor ** power for part, power in parts if part in UNITS), start=Fraction(1))


# `N m` is made of kg and m, but is not their product; so it is not what `kg` times `m` gives.
_BY_PARTS = {
    tuple(sorted(unit.parts)): unit
    for unit in UNITS.values()
    if unit.parts and unit.factor == factor_of_parts(unit.parts)
}


def _parts(unit: Unit | None) -> Powers:
    return () if unit is None else unit.parts


def _base_of(part: str) -> str:
    return part if part in _BASIS_NAMES else UNITS[part].dimension.name


def _folded(parts: Powers) -> Powers:
    """Parts of one base put together in the first of them; those that cancel are gone."""
    first: dict[str, str] = {}
    counted: dict[str, int] = {}
    for part, power in parts:
        kept = first.setdefault(_base_of(part), part)
        counted[kept] = counted.get(kept, 0) + power
    return tuple((part, power) for part, power in counted.items() if power)


def _unit_of(parts: Powers) -> Unit | None:
    """The table's unit for some parts, or the nearest of the same dimension, or a unit that is not listed."""
    if not parts:
        return None
    if unit := _BY_PARTS.get(tuple(sorted(parts))):
        return unit
    powers = tuple(sorted((_base_of(part), power) for part, power in parts))
    same = [unit for unit in UNITS.values() if unit.dimension.powers == powers]
    if same:
        return max(same, key=lambda unit: [(part, power) in unit.parts for part, power in parts])
    return Unit(_text_of(parts), Dimension("", powers), factor_of_parts(parts), parts)


def _text_of(parts: Powers) -> str:
    over = _product_text((part, power) for part, power in parts if power > 0)
    under = _product_text((part, -power) for part, power in parts if power < 0)
    return f"{over or '1'}/{under}" if under else over


def _product_text(parts: Iterable[tuple[str, int]]) -> str:
    return " ".join(part if power == 1 else f"{part}^{power}" for part, power in parts)
