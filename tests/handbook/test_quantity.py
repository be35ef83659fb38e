"""Exact arithmetic over quantities, and what cannot be worked out."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dotleader.handbook.amounts.arithmetic import (
    add,
    compare,
    divide,
    finished,
    multiply,
    negate,
    root,
    root_rounded,
    rounded,
    subtract,
)
from dotleader.handbook.amounts.printing import plain, shown_quantity
from dotleader.handbook.amounts.quantity import Operand, Quantity
from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.trouble import Kind, Trouble, said
from tests.handbook.amounts import of, q, worked


def up(value: Operand | Trouble, step: str) -> str | Kind:
    return worked(value if isinstance(value, Trouble) else rounded(value, q(step), Side.UP))


def down(value: Operand | Trouble, step: str) -> str | Kind:
    return worked(value if isinstance(value, Trouble) else rounded(value, q(step), Side.DOWN))


def nearest(value: Operand | Trouble, step: str) -> str | Kind:
    return worked(value if isinstance(value, Trouble) else rounded(value, q(step), Side.NEAREST))


def product(*texts: str) -> Operand:
    result: Operand = q(texts[0])
    for text in texts[1:]:
        step = multiply(result, q(text))
        assert not isinstance(step, Trouble)
        result = step
    return result


def root_of(value: Operand) -> Operand:
    result = root(value)
    assert not isinstance(result, Trouble)
    return result


def test_a_product_that_binary_floating_point_gets_wrong() -> None:
    """1.1 * 50 is 55.00000000000001 in floating point, and would round up to 56."""
    assert up(product("1.1", "50"), "1") == "55"
    assert up(product("1.1", "50 KIAS"), "1 KIAS") == "55 KIAS"


@pytest.mark.parametrize(
    ("left", "right", "expected"),
    [
        ("51 KIAS", "2", "102 KIAS"),
        ("2", "51 mph IAS", "102 mph IAS"),
        ("412 lb", "101.9 in", "41,982.8 lb in"),
        ("80 kg", "2.5 m", "200 kg m"),
        ("6 lb/US gal", "38 US gal", "228 lb"),
        ("120 kt", "90 min", "180 NM"),
        ("500 ft/min", "6 min", "3,000 ft"),
        ("9.5 US gal/h", "2 h", "19 US gal"),
        ("4 A", "30 min", "2 Ah"),
        ("14 V", "4.5 A", "63 W"),
        ("50 %", "200 kt", "100 kt"),
        ("2", "50 %", "100 %"),
        ("50 %", "50 %", "0.25"),
        ("3.8 G", "100 lb", "380 lb"),
        ("1.5", "3.8 G", "5.7 G"),
        ("2 N m", "3", "6 N m"),
    ],
)
def test_products(left: str, right: str, expected: str) -> None:
    assert worked(multiply(q(left), q(right))) == worked(multiply(q(right), q(left))) == expected


@pytest.mark.parametrize(
    ("left", "right", "expected"),
    [
        ("102 KIAS", "2", "51 KIAS"),
        ("102 KIAS", "51 KIAS", "2"),
        ("1 SM", "1 ft", "5,280"),
        ("1,850 lb in", "100 in", "18.5 lb"),
        ("19 US gal", "9.5 US gal/h", "2 h"),
        ("10 NM", "5 min", "120 kt"),
        ("16 Ah", "4 A", "4 h"),
        ("63 W", "500 mA", "126 V"),
        ("60 lb", "10 US gal", "6 lb/US gal"),
        ("98.0665 N m", "2 m", "5 kg"),
        ("3.8 G", "2", "1.9 G"),
        ("50", "50 %", "100"),
        ("100 kt", "50 %", "200 kt"),
    ],
)
def test_quotients(left: str, right: str, expected: str) -> None:
    assert worked(divide(q(left), q(right))) == expected


def test_sums_are_in_the_unit_of_the_left() -> None:
    assert worked(add(q("1 ft"), q("6 in"))) == "1.5 ft"
    assert worked(subtract(q("6 in"), q("1 ft"))) == "-6 in"
    assert worked(add(q("1 h"), q("30 min"))) == "1.5 h"
    assert worked(add(q("82 KIAS"), negate(q("2 KIAS")))) == "80 KIAS"
    assert worked(add(q("1"), q("2.5"))) == "3.5"


@pytest.mark.parametrize(
    ("left", "right", "kind"),
    [
        ("82 KIAS", "5 lb", Kind.UNLIKE),
        ("82 KIAS", "5 KCAS", Kind.BASIS),
        ("82 KIAS", "5 kt", Kind.BASIS),
        ("82 mph IAS", "5 mph TAS", Kind.BASIS),
        ("82 KIAS", "5", Kind.BARE),
        ("5", "82 KIAS", Kind.BARE),
        ("3.8 G", "50 %", Kind.UNLIKE),
        ("2700 rpm", "45 Hz", Kind.UNLIKE),
    ],
)
def test_sums_of_unlike_values(left: str, right: str, kind: Kind) -> None:
    for work in (add, subtract):
        assert work(q(left), q(right)) == Trouble(kind, left, right)
    order = compare(q(left), q(right))
    assert order == Trouble(kind, left, right)


def test_temperatures_are_points_on_a_scale() -> None:
    assert worked(add(q("15 degC"), q("10"))) == worked(add(q("10"), q("15 degC"))) == "25 degC"
    assert worked(subtract(q("15 degC"), q("20"))) == "-5 degC"
    assert worked(subtract(q("30 degC"), q("59 degF"))) == "15"
    assert worked(subtract(q("59 degF"), q("30 degC"))) == "-27"
    assert worked(negate(q("20 degC"))) == "-20 degC"
    assert worked(add(q("15 degC"), q("10 degC"))) == Kind.TEMPERATURE
    assert worked(subtract(q("10"), q("15 degC"))) == Kind.BARE
    for work in (multiply, divide):
        assert worked(work(q("15 degC"), q("2"))) == Kind.TEMPERATURE
        assert worked(work(q("2"), q("15 degC"))) == Kind.TEMPERATURE
    assert worked(root(q("16 degC"))) == Kind.TEMPERATURE
    assert nearest(q("100 degF"), "1 degC") == "38 degC"


def test_division_by_zero() -> None:
    assert divide(q("82 KIAS"), q("0")) == Trouble(Kind.DIVISION_BY_ZERO, "82 KIAS", "0")
    assert worked(divide(q("0"), q("0 lb"))) == Kind.DIVISION_BY_ZERO
    nothing = subtract(root_of(q("2")), root_of(q("2")))
    assert isinstance(nothing, Quantity)
    assert worked(divide(q("1"), nothing)) == Kind.DIVISION_BY_ZERO


def test_a_product_that_has_no_unit_may_be_passed_through_but_not_kept() -> None:
    distance = product("82 KIAS", "2 h")
    assert worked(finished(distance)) == Kind.NO_UNIT
    back = divide(distance, q("4 h"))
    assert isinstance(back, Quantity)
    assert worked(finished(back)) == "41 KIAS"
    per_knot = divide(q("1"), q("50 kt"))
    assert isinstance(per_knot, Quantity)
    assert finished(per_knot) == Trouble(Kind.NO_UNIT, "h/NM")


def test_a_result_that_does_not_come_out_even_is_rounded_before_it_is_a_value() -> None:
    endurance = divide(q("38 US gal"), q("9 US gal/h"))
    assert isinstance(endurance, Quantity)
    assert finished(endurance) == Trouble(Kind.UNEVEN, "about 4.222 h")
    assert down(endurance, "0.1 h") == "4.2 h"
    even = divide(q("38 US gal"), q("8 US gal/h"))
    assert isinstance(even, Quantity)
    assert worked(finished(even)) == "4.75 h"


# 14 CFR 23.335(c), before amendment 64: VA is VS1 times the root of the load factor, 3.8 in the normal
# category and 4.4 in the utility category. Published: 70 gives 136.46, 50 gives 97.47, to the nearest.
@pytest.mark.parametrize(
    ("stall", "load_factor", "expected"),
    [("70 KIAS", "3.8", "136.45 KIAS"), ("50 KIAS", "3.8", "97.46 KIAS"), ("51 KIAS", "4.4", "106.97 KIAS")],
)
def test_a_product_with_a_root_is_rounded_as_a_whole(stall: str, load_factor: str, expected: str) -> None:
    speed = multiply(q(stall), root_of(q(load_factor)))
    assert down(speed, "0.01 KIAS") == expected
    assert down(multiply(q(stall), root_of(q(f"{load_factor} G"))), "0.01 KIAS") == expected
    assert worked(rounded(root_of(product(stall, stall, load_factor)), q("0.01"), Side.DOWN)) == expected


def test_maneuvering_speed_at_less_weight() -> None:
    """VA2 = VA1 * root of (W2 / W1). Published: 181 kt at 5.7 t is 154 kt at 4.1 t, more exactly 153.51."""
    ratio = divide(q("4100 kg"), q("5700 kg"))
    assert isinstance(ratio, Quantity)
    speed = multiply(q("181 KIAS"), root_of(ratio))
    assert nearest(speed, "0.01 KIAS") == "153.51 KIAS"
    assert down(speed, "1 KIAS") == "153 KIAS"


def test_roots_that_come_out_even_are_rational() -> None:
    assert root(q("12.25")) == q("3.5")
    assert worked(root(product("51 KIAS", "51 KIAS"))) == "51 KIAS"
    eight = multiply(root_of(q("2")), root_of(q("32")))
    assert worked(eight) == "8"
    assert up(eight, "1") == "8"


def test_sums_of_roots_are_exact() -> None:
    """root of 8 is twice root of 2; a rounding that is not exact would give 1 here, up."""
    twice = add(root_of(q("2")), root_of(q("2")))
    assert not isinstance(twice, Trouble)
    assert worked(subtract(twice, root_of(q("8")))) == "0"
    third = add(root_of(q("2")), root_of(q("3")))
    assert not isinstance(third, Trouble)
    assert nearest(third, "0.00001") == "3.14626"
    assert up(negate(third), "0.1") == "-3.1"
    assert down(negate(third), "0.1") == "-3.2"
    assert worked(divide(q("1"), third)) == Kind.NESTED_ROOT
    assert nearest(divide(q("3"), root_of(q("3"))), "0.001") == "1.732"


def test_what_a_root_cannot_do() -> None:
    assert root(q("-4")) == Trouble(Kind.NEGATIVE_ROOT, "-4")
    assert worked(root(root_of(q("2")))) == Kind.NESTED_ROOT
    assert worked(root(q("82 KIAS"))) == Kind.NO_UNIT
    assert worked(finished(root_of(q("3.8")))) == Kind.NOT_ROUNDED
    assert worked(root_rounded(q("3.8"), q("0.001"), Side.NEAREST)) == "1.949"
    assert worked(root_rounded(q("-1"), q("1"), Side.UP)) == Kind.NEGATIVE_ROOT


@pytest.mark.parametrize(
    ("text", "step", "expected_up", "expected_down", "expected_nearest"),
    [
        ("59.8", "1", "60", "59", "60"),
        ("-59.8", "1", "-59", "-60", "-60"),
        ("2.5", "1", "3", "2", "3"),
        ("-2.5", "1", "-2", "-3", "-3"),
        ("3.5", "1", "4", "3", "4"),
        ("60", "1", "60", "60", "60"),
        ("62", "5", "65", "60", "60"),
        ("1.26", "0.25", "1.50", "1.25", "1.25"),
        ("59.8 KIAS", "1 KIAS", "60 KIAS", "59 KIAS", "60 KIAS"),
        ("59.8 KIAS", "1", "60 KIAS", "59 KIAS", "60 KIAS"),
        ("100 KIAS", "1 mph IAS", "116 mph IAS", "115 mph IAS", "115 mph IAS"),
    ],
)
def test_rounding(text: str, step: str, expected_up: str, expected_down: str, expected_nearest: str) -> None:
    """A half goes away from zero, one of the two rules that ISO 80000-1:2009 annex B allows (from memory)."""
    assert (up(q(text), step), down(q(text), step), nearest(q(text), step)) == (
        expected_up,
        expected_down,
        expected_nearest,
    )


def test_steps_that_cannot_be() -> None:
    assert up(q("5"), "0") == up(q("5"), "-1") == Kind.STEP
    assert up(q("5 KIAS"), "1 lb") == Kind.UNLIKE
    assert up(q("5"), "1 lb") == Kind.BARE


def test_how_quantities_stand_on_a_face() -> None:
    texts = (
        "82 KIAS",
        "10 deg",
        "-20 degC",
        "75 %",
        "2.10 mm",
        "090 deg",
        "2700 rpm",
        "2,700 rpm",
        "3.8",
        ".5 in",
    )
    assert [shown_quantity(q(text)) for text in texts] == [
        *("82 KIAS", "10°", "−20 °C", "75%", "2.10 mm", "090°", "2700 rpm", "2,700 rpm", "3.8", "0.5 in"),
    ]
    assert shown_quantity(of(12500, "ft")) == "12,500 ft"
    assert shown_quantity(of(1013, "hPa")) == "1013 hPa"
    third = divide(q("100 KIAS"), q("3"))
    assert isinstance(third, Quantity)
    assert shown_quantity(third) == Trouble(Kind.UNEVEN, "about 33.333 KIAS")


def test_a_chain_of_squares_stops_before_it_fills_the_memory() -> None:
    value: Operand | Trouble = q("1.234567")
    for _ in range(40):
        assert not isinstance(value, Trouble)
        value = multiply(value, value)
        if isinstance(value, Trouble):
            break
    assert value == Trouble(Kind.TOO_LARGE)
    value = root_of(q("2"))
    for prime in (3, 5, 7, 11, 13, 17, 19, 23):
        assert not isinstance(value, Trouble)
        value = add(value, root_of(Quantity(Fraction(prime))))
    assert value == Trouble(Kind.TOO_LARGE)


def test_messages_cut_long_numbers_short() -> None:
    assert plain(Quantity(Fraction(10) ** 60)) == "1,000,000,000,000,000,00..."
    assert plain(root_of(q("2"))) == "about 1.414"


@pytest.mark.parametrize("kind", Kind)
def test_every_trouble_can_be_said(kind: Kind) -> None:
    message, advice = said(Trouble(kind, "82 KIAS", "{5 lb}"))
    assert message.endswith(".")
    assert message[0].isupper() or message[0] == "`"
    assert advice.endswith(".")
    assert "{left}" not in message + advice
