"""Tables 11-3 and 11-9 of FAA AC 43.13-1B and what is worked out of them.

Outside checks: rows of tables 11-7 and 11-8 (pages 11-22 and 11-23), pages 11-15 and 11-26. Of two rows of these tables
the printed result is a misprint, and the worked one counts.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from dotleader.cockpit.wires import (
    CARRIED,
    FOOT,
    OHMS,
    PROTECTORS,
    allowed_drop,
    carried,
    drop,
    largest_protector,
    thick_enough,
)


@pytest.mark.parametrize(
    ("gauge", "feet", "amps", "volts"),
    [
        # AC 43.13-1B table 11-7, at 20 A
        (6, 107, "20", "0.942"),
        (4, 90, "20", "0.504"),
        (14, 100, "20", "6.12"),
        # table 11-8, AWG 10
        (10, 39, "20", "0.983"),
        (10, 156, "20", "3.93"),
        (10, 273, "20", "6.88"),
        # printed 0.366 V and 3.60 V: misprints
        (10, "19.5", "20", "0.491"),
        (12, 88, "20", "3.56"),
    ],
)
def test_voltage_drop_is_that_of_the_circular(gauge: int, feet: float, amps: str, volts: str) -> None:
    lost = drop(gauge, Fraction(feet) * FOOT, Fraction(amps))
    assert lost is not None
    assert f"{float(lost):.3g}" == f"{float(volts):.3g}"


def test_the_misprinted_rows_of_the_circular_are_not_reproduced() -> None:
    assert drop(10, Fraction("19.5") * FOOT, Fraction(20)) == Fraction("0.4914")
    assert drop(12, 88 * FOOT, Fraction(20)) == Fraction("3.5552")


@pytest.mark.parametrize(
    ("word", "gauge", "amps"),
    [
        ("breaker", 22, "5"), ("breaker", 20, "7.5"), ("breaker", 18, "10"), ("breaker", 10, "40"),
        ("breaker", 2, "125"), ("fuse", 20, "5"), ("fuse", 18, "10"), ("fuse", 16, "10"), ("fuse", 4, "70"),
        ("fuse", 0, "150"),
    ],
)  # fmt: skip
def test_protectors_are_those_of_table_11_3(word: str, gauge: int, amps: str) -> None:
    assert largest_protector(word, gauge) == Fraction(amps)


def test_table_11_3_has_thirteen_sizes_with_fuses_and_eleven_with_breakers() -> None:
    assert (len(PROTECTORS["fuse"]), len(PROTECTORS["breaker"])) == (13, 11)


@pytest.mark.parametrize(
    ("gauge", "rated", "amps"),
    [(24, 105, "2.5"), (20, 105, "4"), (16, 150, "11"), (14, 200, "18"), (8, 105, "38"), (0, 200, "243")],
)
def test_currents_are_those_of_table_11_9(gauge: int, rated: int, amps: str) -> None:
    assert carried(gauge, Fraction(rated)) == (Fraction(amps), rated)


def test_a_thicker_wire_carries_more_and_loses_less() -> None:
    for table in CARRIED.values():
        assert all(table[thin] < table[thick] for thin, thick in pairwise(table))
    assert all(OHMS[thin] > OHMS[thick] for thin, thick in pairwise(OHMS))
    for low, high in pairwise(CARRIED.values()):
        assert all(low[size] < high[size] for size in low)


def test_between_two_numbers_of_a_table_the_safe_one_is_taken() -> None:
    assert carried(19, Fraction(150)) == carried(20, Fraction(150))
    assert largest_protector("breaker", 17) == 10
    assert drop(19, FOOT, Fraction(1)) == drop(20, FOOT, Fraction(1))
    assert carried(18, Fraction(149)) == (6, 105)
    assert carried(18, Fraction(260)) == (12, 200)
    assert carried(18, None) == (6, 105)


def test_beyond_the_ends_of_a_table_only_what_is_certain_is_said() -> None:
    assert largest_protector("breaker", 26) == 5  # less than the thinnest in it
    assert carried(26, None) == (Fraction("2.5"), 105)
    assert largest_protector("breaker", 1) is None  # the table has no breaker for it
    assert carried(-1, Fraction(150))[0] is None


@pytest.mark.parametrize(
    ("volts", "allowed"), [("12", "0.5"), ("13.8", "0.5"), ("14", "0.5"), ("24", "1"), ("28", "1"), ("115", "4")]
)
def test_what_may_be_lost(volts: str, allowed: str) -> None:
    assert allowed_drop(Fraction(volts)) == Fraction(allowed)


def test_nothing_is_known_of_systems_below_those_of_the_circular() -> None:
    assert allowed_drop(Fraction(5)) is None


def test_the_thinnest_wire_that_is_thick_enough() -> None:
    assert thick_enough(Fraction("9.5"), Fraction("1.8"), Fraction("0.5")) == 18
    assert thick_enough(Fraction(10_000), Fraction(100), Fraction("0.5")) is None
