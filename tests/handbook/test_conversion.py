"""Conversion of values: published figures, safe sides, ranges and tolerances."""

from __future__ import annotations

import pytest

from dotleader.handbook.amounts.conversion import convert
from dotleader.handbook.amounts.printing import shown, shown_quantity
from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Exact, Quantity, Shape
from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.shapes import convert_shape, quantity_of, range_of, tolerance_of
from dotleader.handbook.amounts.speed_symbols import safe_side
from dotleader.handbook.amounts.trouble import Kind, Trouble
from dotleader.handbook.amounts.units import UNITS
from tests.handbook.amounts import a_range, a_tolerance, q, worked


def in_unit(text: str, symbol: str, step: str, side: Side = Side.NEAREST) -> str | Kind:
    return worked(convert(q(text), UNITS[symbol], side, q(step).number))


# 1 NM is 1852 m and 1 SM is 1609.344 m (NIST SP 811, exact); the figures are calculated from these.
@pytest.mark.parametrize(
    ("knots", "mph", "kmh"),
    [
        ("40", "46.03", "74.08"),
        ("60", "69.05", "111.12"),
        ("65", "74.80", "120.38"),
        ("100", "115.08", "185.20"),
        ("120", "138.09", "222.24"),
        ("180", "207.14", "333.36"),
    ],
)
def test_speeds(knots: str, mph: str, kmh: str) -> None:
    assert in_unit(f"{knots} kt", "mph", "0.01") == f"{mph} mph"
    assert in_unit(f"{knots} KIAS", "km/h IAS", "0.01") == f"{kmh} km/h IAS"


@pytest.mark.parametrize(
    ("text", "symbol", "step", "expected"),
    [
        ("1 kt", "mph", "0.000000001", "1.150779448 mph"),
        ("1 mph", "kt", "0.000000001", "0.868976242 kt"),
        ("100 ft/min", "m/s", "0.001", "0.508 m/s"),
        ("60 psi", "bar", "0.00001", "4.13685 bar"),
        ("1 bar", "psi", "0.00001", "14.50377 psi"),
        ("29.92 inHg", "hPa", "0.01", "1013.21 hPa"),
        ("1013.25 hPa", "inHg", "0.0001", "29.9213 inHg"),
        ("100 degF", "degC", "0.01", "37.78 degC"),
        ("-40 degC", "degF", "1", "-40 degF"),
        ("1 imp gal", "US gal", "0.001", "1.201 US gal"),
        ("1 US gal", "l", "0.001", "3.785 l"),
    ],
)
def test_published_figures(text: str, symbol: str, step: str, expected: str) -> None:
    """NIST SP 811 factors; pressures with the conventional inch of mercury, 3386.389 Pa."""
    converted = in_unit(text, symbol, step)
    assert isinstance(converted, str)
    assert converted.replace(",", "") == expected


def test_limits_are_rounded_to_the_safe_side() -> None:
    """87.45 mph is the stall at 76 KIAS: the pilot is told 88. 162.26 mph is VNE at 141 KIAS: 162."""
    mph = UNITS["mph IAS"]
    assert worked(convert(q("76 KIAS"), mph, safe_side("VS0"))) == "88 mph IAS"
    assert worked(convert(q("141 KIAS"), mph, safe_side("VNE"))) == "162 mph IAS"
    assert worked(convert(q("82 KIAS"), mph, safe_side("VG"))) == "94 mph IAS"


def test_a_conversion_into_the_own_unit_changes_nothing() -> None:
    assert convert(q("82.50 KIAS"), UNITS["KIAS"], Side.UP) == q("82.5 KIAS")
    shown_text = convert(q("82.50 KIAS"), UNITS["KIAS"], Side.UP)
    assert isinstance(shown_text, Quantity)
    assert shown_quantity(shown_text) == "82.50 KIAS"


def test_no_conversion_keeps_fewer_than_two_figures() -> None:
    assert worked(convert(q("4 kt"), UNITS["mph"], Side.NEAREST)) == "4.6 mph"
    assert worked(convert(q("42 mm"), UNITS["m"], Side.DOWN)) == "0.042 m"
    assert worked(convert(q("45 min"), UNITS["h"], Side.NEAREST)) == "0.75 h"
    assert worked(convert(q("0 mm"), UNITS["m"], Side.DOWN)) == "0 m"
    assert worked(convert(q("1 US gal"), UNITS["US qt"], Side.DOWN)) == "4.0 US qt"


def test_what_cannot_be_converted() -> None:
    assert convert(q("82 KIAS"), UNITS["mph"], Side.UP) == Trouble(Kind.BASIS, "82 KIAS", "0 mph")
    assert worked(convert(q("82 KIAS"), UNITS["lb"], Side.UP)) == Kind.UNLIKE
    assert worked(convert(q("82"), UNITS["lb"], Side.UP)) == Kind.BARE
    unlike = convert_shape(a_tolerance("90 degC", "5 degC"), UNITS["lb"])
    assert unlike == Trouble(Kind.UNLIKE, "90 degC", "0 lb")


@pytest.mark.parametrize(
    ("shape", "expected"),
    [
        (Exact(q("82 KIAS")), "82 KIAS"),
        (a_range("55 psi", "95 psi"), "55 to 95 psi"),
        (a_range("55 psi", "6.5 bar"), "55 psi to 6.5 bar"),
        (a_range("10 deg", "40 deg"), "10° to 40°"),
        (a_range("-20 degC", "40 degC"), "−20 to 40 °C"),
        (a_range("600 rpm", "2700 rpm"), "600 to 2700 rpm"),
        (a_range("1", "2"), "1 to 2"),
        (a_tolerance("62 mm", "2 mm"), "62 ± 2 mm"),
        (a_tolerance("15 deg", "1 deg"), "15° ± 1°"),
        (AtLeast(q("5 US qt")), "at least 5 US qt"),
        (AtMost(q("118 degC")), "at most 118 °C"),
    ],
)
def test_how_shapes_print(shape: Shape, expected: str) -> None:
    assert shown(shape) == expected


@pytest.mark.parametrize(
    ("shape", "symbol", "expected"),
    [
        (Exact(q("38 US gal")), "l", "143.8 l"),
        (AtLeast(q("5 US qt")), "l", "at least 4.8 l"),  # 4.73
        (AtMost(q("1,320 lb")), "kg", "at most 598 kg"),  # 598.74
        (a_range("55 psi", "95 psi"), "bar", "3.80 to 6.55 bar"),  # 3.792 to 6.550
        (a_tolerance("62 mm", "2 mm"), "in", "2.441 ± 0.078 in"),  # 2.3622 to 2.5197
        (a_tolerance("90 degC", "5 degC"), "degF", "194 ± 9 °F"),
        (a_range("-40 degC", "100 degC"), "degF", "−40 to 212 °F"),
    ],
)
def test_how_shapes_convert(shape: Shape, symbol: str, expected: str) -> None:
    converted = convert_shape(shape, UNITS[symbol])
    assert not isinstance(converted, Trouble)
    assert shown(converted) == expected


def test_shapes_that_cannot_be() -> None:
    assert range_of(q("95 psi"), q("55 psi")) == Trouble(Kind.BACKWARDS, "95 psi", "55 psi")
    assert range_of(q("5 lb"), q("6 psi")) == Trouble(Kind.UNLIKE, "5 lb", "6 psi")
    assert tolerance_of(q("62 mm"), q("-2 mm")) == Trouble(Kind.BELOW_ZERO, "-2 mm")
    assert tolerance_of(q("62 mm"), q("2 lb")) == Trouble(Kind.UNLIKE, "62 mm", "2 lb")


def test_a_bare_part_takes_the_unit_of_the_other() -> None:
    assert range_of(q("55"), q("95 psi")) == range_of(q("55 psi"), q("95")) == a_range("55 psi", "95 psi")
    assert tolerance_of(q("62"), q("2 mm")) == tolerance_of(q("62 mm"), q("2")) == a_tolerance("62 mm", "2 mm")
    assert range_of(q("1"), q("1")) == a_range("1", "1")


def test_a_range_that_a_step_would_swallow() -> None:
    narrow = convert_shape(a_tolerance("62 mm", "2 mm"), UNITS["in"], step=q("1").number)
    assert narrow == Trouble(Kind.TOO_COARSE, "62 mm +/- 2 mm", "in")
    narrow = convert_shape(a_range("60 psi", "61 psi"), UNITS["bar"], step=q("1").number)
    assert narrow == Trouble(Kind.TOO_COARSE, "60 psi to 61 psi", "bar")


def test_only_an_exact_value_can_be_worked_with() -> None:
    assert quantity_of(Exact(q("82 KIAS"))) == q("82 KIAS")
    assert quantity_of(a_range("55 psi", "95 psi")) == Trouble(Kind.NOT_EXACT, "55 psi to 95 psi")
    assert quantity_of(AtLeast(q("5 US qt"))) == Trouble(Kind.NOT_EXACT, "at least 5 US qt")
