"""Units against NIST SP 811, against the pint library, and against the list of the language."""

from __future__ import annotations

from fractions import Fraction
from itertools import product
from typing import Any

import pint
import pytest

from dotleader.handbook.amounts.arithmetic import exactly_in
from dotleader.handbook.amounts.composing import factor_of_parts
from dotleader.handbook.amounts.quantity import Quantity
from dotleader.handbook.amounts.unit_spellings import ALIASES, AMBIGUOUS, MISSPELT
from dotleader.handbook.amounts.units import (
    UNITS,
    AmbiguousUnit,
    Basis,
    Unit,
    UnknownUnit,
    find_unit,
    like,
    longest_unit,
    shown_unit,
    with_basis,
)

# The units that the language lists, and no others.
LISTED = [
    *("KIAS", "KCAS", "KTAS", "kt", "mph", "mph IAS", "mph CAS", "mph TAS"),
    *("km/h", "km/h IAS", "km/h CAS", "km/h TAS", "m/s", "ft/min"),
    *("ft", "m", "in", "cm", "mm", "NM", "SM", "km", "lb", "kg", "g", "oz"),
    *("US gal", "imp gal", "l", "US qt", "psi", "bar", "hPa", "inHg", "degC", "degF", "deg", "%", "rpm"),
    *("A", "mA", "Ah", "V", "W", "s", "min", "h", "MHz", "kHz", "Hz"),
    *("lb in", "kg m", "N m", "lb ft", "kg/l", "lb/US gal", "US gal/h", "l/h", "G"),
]

# NIST Special Publication 811 (2008), appendix B.8: what one of the unit is in SI. Exact factors (boldface
# there) in full, the others with the digits printed. Read in a reproduction of the table in the source text
# of a units library; which factors are boldface is from memory.
NIST_EXACT = {
    "ft": "0.3048",
    "in": "0.0254",
    "SM": "1609.344",
    "NM": "1852",
    "bar": "1e5",
    "imp gal": "4.54609e-3",
    "l": "1e-3",
    "h": "3600",
    "min": "60",
}
NIST_ROUNDED = {
    "lb": "4.535924e-1",
    "oz": "2.834952e-2",
    "US gal": "3.785412e-3",
    "US qt": "9.463529e-4",
    "psi": "6.894757e3",
    "inHg": "3.386389e3",
    "kt": "5.144444e-1",
}
# The same, for units whose base here is not SI's: a moment is counted in kg m, at standard gravity.
NIST_MOMENTS_IN_NEWTON_METRES = {"kg m": "9.80665", "lb ft": "1.355818", "lb in": "1.129848e-1"}

PINT = {
    **{symbol: symbol for symbol in ("ft", "m", "in", "cm", "mm", "km", "lb", "kg", "g", "oz", "m/s", "ft/min")},
    **{symbol: symbol for symbol in ("psi", "bar", "hPa", "inHg", "degC", "degF", "A", "mA", "V", "W")},
    **{symbol: symbol for symbol in ("s", "min", "MHz", "kHz", "Hz", "kg/l", "l")},
    **{
        "NM": "nautical_mile",
        "SM": "mile",
        "h": "hour",
        "l/h": "liter/hour",
        "Ah": "ampere*hour",
        "deg": "degree",
    },
    **{"US gal": "US_liquid_gallon", "imp gal": "imperial_gallon", "US qt": "US_liquid_quart"},
    **{"lb/US gal": "lb/US_liquid_gallon", "US gal/h": "US_liquid_gallon/hour"},
    **{"lb in": "lbf*inch", "lb ft": "lbf*ft", "kg m": "kgf*m", "N m": "N*m"},
    **{"kt": "knot", "KIAS": "knot", "KCAS": "knot", "KTAS": "knot", "rpm": "rpm", "%": "percent"},
    **{f"mph{basis}": "mph" for basis in ("", " IAS", " CAS", " TAS")},
    **{f"km/h{basis}": "km/hour" for basis in ("", " IAS", " CAS", " TAS")},
}

PAIRS = [(one, other) for one, other in product(UNITS.values(), repeat=2) if one != other and like(one, other)]


def test_every_listed_unit_is_there_and_no_other() -> None:
    assert sorted(UNITS) == sorted(LISTED)


@pytest.mark.parametrize("symbol", NIST_EXACT)
def test_exact_factors_of_nist_sp_811(symbol: str) -> None:
    assert UNITS[symbol].factor == Fraction(NIST_EXACT[symbol])


@pytest.mark.parametrize("symbol", NIST_ROUNDED)
def test_rounded_factors_of_nist_sp_811(symbol: str) -> None:
    assert f"{float(UNITS[symbol].factor):.6e}" == f"{float(NIST_ROUNDED[symbol]):.6e}"


@pytest.mark.parametrize("symbol", NIST_MOMENTS_IN_NEWTON_METRES)
def test_moments_of_nist_sp_811(symbol: str) -> None:
    newton_metres = UNITS[symbol].factor / UNITS["N m"].factor
    assert f"{float(newton_metres):.6e}" == f"{float(NIST_MOMENTS_IN_NEWTON_METRES[symbol]):.6e}"


def test_factors_exact_by_definition() -> None:
    """The international pound and the 231 cubic inches of the US gallon; NIST SP 811 prints them rounded."""
    assert UNITS["lb"].factor == Fraction("0.45359237")
    assert UNITS["US gal"].factor == Fraction("0.003785411784")


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[Any]:
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize(("one", "other"), PAIRS, ids=lambda unit: unit.symbol)
def test_every_convertible_pair_against_pint(registry: pint.UnitRegistry[Any], one: Unit, other: Unit) -> None:
    """pint is told to calculate with fractions, so the two must agree exactly."""
    for number in (Fraction(1), Fraction(-40), Fraction("100.3")):
        expected = registry.Quantity(number, PINT[one.symbol]).to(PINT[other.symbol]).magnitude
        assert exactly_in(Quantity(number, one), other) == Quantity(Fraction(expected), other)


def test_pint_sees_the_same_dimensions(registry: pint.UnitRegistry[Any]) -> None:
    """What pint cannot convert we do not either.

    Not compared: airspeeds and load factors, which pint does not know, and angle, ratio and rotation, which
    it counts as plain numbers.
    """
    known = set(PINT) - {"deg", "%", "rpm"}
    physical = [unit for unit in UNITS.values() if unit.symbol in known and unit.basis is Basis.NONE]
    for one, other in product(physical, repeat=2):
        same = registry.Unit(PINT[one.symbol]).is_compatible_with(registry.Unit(PINT[other.symbol]))
        assert like(one, other) == same, (one.symbol, other.symbol)


def test_units_made_of_units_are_their_product() -> None:
    """`kt` is a nautical mile an hour and so on; only `N m` is not the product of what it is made of."""
    odd = {unit.symbol for unit in UNITS.values() if unit.parts and unit.factor != factor_of_parts(unit.parts)}
    assert odd == {"N m"}


def test_airspeeds_of_different_kinds_are_unlike() -> None:
    speeds = [UNITS[symbol] for symbol in ("KIAS", "KCAS", "KTAS", "kt")]
    assert [(a.symbol, b.symbol) for a, b in product(speeds, repeat=2) if like(a, b)] == [
        (unit.symbol, unit.symbol) for unit in speeds
    ]
    assert like(UNITS["KIAS"], UNITS["mph IAS"])
    assert not like(UNITS["KIAS"], UNITS["mph"])
    assert [UNITS[symbol].basis for symbol in ("KIAS", "km/h CAS", "KTAS", "m/s")] == list(Basis)


def test_a_plain_speed_takes_the_basis_of_the_handbook() -> None:
    assert with_basis(UNITS["kt"], Basis.IAS) == UNITS["KIAS"]
    assert with_basis(UNITS["mph"], Basis.CAS) == UNITS["mph CAS"]
    assert with_basis(UNITS["km/h"], Basis.TAS) == UNITS["km/h TAS"]
    assert with_basis(UNITS["kt"], Basis.NONE) == UNITS["kt"]
    assert with_basis(UNITS["KCAS"], Basis.IAS) == UNITS["KCAS"]
    assert with_basis(UNITS["psi"], Basis.IAS) == UNITS["psi"]


@pytest.mark.parametrize("symbol", UNITS)
def test_every_unit_is_found_however_it_is_spaced(symbol: str) -> None:
    spaced = f" {symbol.replace(' ', '  ').replace('/', ' / ')}\t"
    no_break = symbol.replace(" ", "\u00a0")
    assert find_unit(symbol) is find_unit(spaced) is find_unit(no_break) is UNITS[symbol]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("knots", "kt KIAS"),
        ("kts", "kt KIAS"),
        ("kias", "KIAS"),
        ("KAIS", "KIAS"),
        ("° C", "degC"),
        ("ºC", "degC"),
        ("℃", "degC"),
        ("litres", "l"),
        ("L", "l"),
        ("ltr", "l"),
        ("lbs", "lb"),
        ("lbs.", "lb"),
        ("in.", "in"),
        ("mins", "min"),
        ("PSI", "psi"),
        ("M.P.H.", "mph"),
        ("ft-lb", "lb ft"),
        ("in·lb", "lb in"),
        ("Nm", "N m/NM"),
        ("nm", "NM/N m"),
        ("USG", "US gal"),
        ("degrees", "deg degC degF"),
        ("qt", "US qt"),
        ("hp", ""),
        ("furlongs", ""),
        ("", ""),
    ],
)
def test_an_unknown_unit_is_answered_with_the_nearest(text: str, expected: str) -> None:
    found = find_unit(text)
    assert isinstance(found, UnknownUnit)
    between = "/" if "N m" in expected else " "
    joined = between.join(unit.symbol for unit in found.suggestions)
    assert joined == expected


@pytest.mark.parametrize(("spelling", "symbol"), [("°C", "degC"), ("°F", "degF"), ("°", "deg"), ("kt  IAS", "KIAS")])
def test_the_signs_of_a_face_are_read(spelling: str, symbol: str) -> None:
    assert find_unit(spelling) is UNITS[symbol]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("gal", ["US gal", "imp gal"]),
        ("Gal", ["US gal", "imp gal"]),
        ("GALLONS", ["US gal", "imp gal"]),
        ("gal/h", ["US gal/h"]),
        ("GPH", ["US gal/h"]),
    ],
)
def test_a_gallon_has_to_say_which(text: str, expected: list[str]) -> None:
    found = find_unit(text)
    assert isinstance(found, AmbiguousUnit)
    assert [unit.symbol for unit in found.choices] == expected


def test_the_spelling_tables_are_sound() -> None:
    """Every spelling leads to units that are there, in its own normal form, and hides no right spelling."""
    for spelling, symbols in MISSPELT.items():
        assert spelling == "".join(sign for sign in spelling.lower() if sign not in " .-·")
        assert set(symbols) <= set(UNITS)
        assert spelling not in UNITS
        found = find_unit(spelling)
        if isinstance(found, UnknownUnit):
            assert tuple(unit.symbol for unit in found.suggestions) == symbols
    assert set(ALIASES.values()) <= set(UNITS)
    assert not set(AMBIGUOUS) & set(UNITS)


@pytest.mark.parametrize(
    ("words", "symbol", "rest"),
    [
        ("in from kit manual", "in", " from kit manual"),
        ("US gal from weighing, tank by tank", "US gal", " from weighing, tank by tank"),
        (" kt  IAS rounded", "KIAS", " rounded"),
        ("lb / US gal", "lb/US gal", ""),
        ("lb in in kg m", "lb in", " in kg m"),
        ("lb/2", "lb", "/2"),
        ("lb/{passengers}", "lb", "/{passengers}"),
        ("ft/root of (4)", "ft", "/root of (4)"),
        ("m - 3 m", "m", " - 3 m"),
        ("deg, 20 deg", "deg", ", 20 deg"),
        ("%", "%", ""),
        ("min", "min", ""),
        ("mph IAS)", "mph IAS", ")"),
        ("gal from weighing", "gal", " from weighing"),
    ],
)
def test_the_longest_unit_at_the_head_of_a_text(words: str, symbol: str, rest: str) -> None:
    found = longest_unit(words)
    assert found is not None
    unit, left = found
    assert (unit.text if isinstance(unit, AmbiguousUnit) else unit.symbol, left) == (symbol, rest)


@pytest.mark.parametrize("words", ["", "inside", "lb/ft", "m²", "mmm", "from kit manual", "KIASx", "ft-lb", "/h"])
def test_no_unit_at_the_head_of_a_text(words: str) -> None:
    assert longest_unit(words) is None


def test_units_as_they_stand_on_a_face() -> None:
    shown = {symbol: shown_unit(UNITS[symbol]) for symbol in ("KIAS", "deg", "degC", "degF", "%", "US gal")}
    assert shown == {"KIAS": " KIAS", "deg": "°", "degC": " °C", "degF": " °F", "%": "%", "US gal": " US gal"}
    assert shown_unit(None) == ""
