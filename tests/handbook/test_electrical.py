"""The `electrical` block and the circuits of controls, read."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dotleader.handbook.model import Control, Electrical
from dotleader.handbook.wiring import Draw
from dotleader.handbook.wiring_reading import wire_name, wire_of
from tests.handbook.texts import resolved, said

BOOK = """\
sources
  kit ... manual

gauge Ammeter in A from kit
  green ... 2 to 32

equipment
  Engine ... STOPPED, RUNNING
  Master ... OFF, ON
  Alternator ... OFF, ON
  Lamp ... OFF, ON
    draws ... {draws}

normal Cruise
  Alternator ... ON

abnormal Alternator failure
  when the light is on
  Alternator ... OFF
  end

electrical from kit
  system ... 14 V
  alternator ... 40 A
    needs ... Alternator ON
    needs ... Engine RUNNING
    read on ... Ammeter
    when it fails ... Alternator failure
  battery ... 2 * 8 Ah
    needs ... Master ON
    {row}
  always on ... 800 mA unverified
"""


def block(row: str = "must last ... 1 h") -> Electrical:
    handbook, findings = resolved(BOOK.format(row=row, draws="1 A"))
    assert findings == ()
    assert handbook.electrical is not None
    return handbook.electrical


def lamp(rows: str) -> Control:
    handbook, findings = resolved(f"sources\n  kit ... manual\nequipment\n  Lamp ... OFF, DIM, ON\n    {rows}\n")
    assert findings == ()
    return handbook.controls["lamp"]


def draws(rows: str) -> list[tuple[Fraction, bool, str, bool]]:
    return [(d.amount, d.watts, d.position, d.moving) for d in lamp(rows).wiring.draws]


def test_the_block_says_what_feeds_and_what_it_needs() -> None:
    found = block()
    assert found.volts == 14
    assert found.alternator is not None
    assert found.battery is not None
    assert (found.alternator.amount, found.battery.amount, found.always_on) == (40, 16, Fraction("0.8"))
    assert [need.alternatives for need in found.alternator.needs] == [
        (("alternator", "ON"),),
        (("engine", "RUNNING"),),
    ]
    assert [need.alternatives for need in found.battery.needs] == [(("master", "ON"),)]
    assert found.alternator.spot.text == "40 A"
    assert (found.read_on, found.when_it_fails) == ("ammeter", ("alternator failure",))


def test_times_are_minutes_and_have_the_values_of_the_source_where_they_are_not_said() -> None:
    found = block()
    assert (found.shed_after, found.landing_takes, found.must_last) == (5, 10, 60)
    assert block("shed after ... 90 s").shed_after == Fraction("1.5")


@pytest.mark.parametrize(
    ("row", "finding"),
    [
        ("lasts ... 3 min", ("unknown-property", "lasts")),
        ("must last ... 3 A", ("unreadable-value", "3 A")),
        ("must last ... -3 min", ("unreadable-value", "-3 min")),
        ("must last ... {no such}", ("unknown-value", "{no such}")),
        ("needs ... Mister ON", ("unknown-position", "Mister ON")),
        ("must last ... 3 min\n    must last ... 4 min", ("name-used-twice", "must last")),
    ],
)
def test_what_a_battery_cannot_have(row: str, finding: tuple[str, str]) -> None:
    assert said(BOOK.format(row=row, draws="1 A")) == [finding]


@pytest.mark.parametrize(
    ("block", "findings"),
    [
        ("electrical\n  alternator ... 40 A\n", [("value-without-source", "alternator")]),
        ("electrical from nowhere\n  alternator ... 40 A\n", [("unknown-source", "nowhere")]),
        ("electrical from unverified\n  alternator ... 0 A\n", [("unreadable-value", "0 A")]),
        (
            "electrical from unverified\n  alternator ... 40 A\n  generator ... 20 A\n",
            [("name-used-twice", "generator")],
        ),
        ("electrical from unverified\n  alternater ... 40 A\n", [("unknown-property", "alternater")]),
        (
            "electrical from unverified\n  alternator ... 40 A\n    read on ... Ammeter\n    when it fails ... Dark\n",
            [("unknown-gauge", "Ammeter"), ("unknown-card", "Dark")],
        ),
        (
            "electrical from unverified\n  battery ... 8 Ah\nelectrical\n  system ... 14 V\n",
            [("name-used-twice", "electrical")],
        ),
    ],
)
def test_what_is_said_of_a_block(block: str, findings: list[tuple[str, str]]) -> None:
    assert said(block) == findings


def test_draws_of_every_form() -> None:
    assert draws("draws ... 4.5 A from kit") == [(Fraction("4.5"), False, "", False)]
    assert draws("draws ... 55 W") == [(55, True, "", False)]
    assert draws("draws while moving ... 6 A") == [(6, False, "", True)]
    assert draws("draws in dim ... 500 mA\n    draws in ON ... 1 A") == [
        (Fraction("0.5"), False, "DIM", False),
        (1, False, "ON", False),
    ]


@pytest.mark.parametrize(("written", "amps"), [("2 to 6 A", 6), ("4 +/- 1 A", 5), ("at most 3 A", 3)])
def test_of_several_numbers_the_largest_is_drawn(written: str, amps: int) -> None:
    assert draws(f"draws ... {written}") == [(amps, False, "", False)]


@pytest.mark.parametrize(
    ("rows", "finding"),
    [
        ("draws sideways ... 4 A", ("unknown-property", "draws sideways")),
        ("draws in BRIGHT ... 4 A", ("unknown-position", "BRIGHT")),
        ("draws ... -4 A", ("unreadable-value", "-4 A")),
        ("draws ... 4 A from nowhere", ("unknown-source", "nowhere")),
        ("breaker ... 0 A", ("unreadable-value", "0 A")),
        ("fuse ... 5 W", ("unreadable-value", "5 W")),
        ("wire ... AWG 18, 2 miles", ("unreadable-value", "AWG 18, 2 miles")),
    ],
)
def test_what_a_circuit_cannot_have(rows: str, finding: tuple[str, str]) -> None:
    assert said(f"equipment\n  Lamp ... OFF, DIM, ON\n    {rows}\n") == [finding]


@pytest.mark.parametrize(
    ("text", "gauge", "metres", "rated"),
    [
        ("AWG 18", 18, None, None),
        ("awg 18, 2.4 m", 18, Fraction("2.4"), None),
        ("AWG 18, 10 ft", 18, Fraction("3.048"), None),
        ("AWG 18, 2.4 m, 150 degC", 18, Fraction("2.4"), 150),
        ("AWG 18, 105 °C", 18, None, 105),
        ("AWG 0", 0, None, None),
        ("AWG 1/0", 0, None, None),
        ("AWG 2/0", -1, None, None),
        ("AWG 00", -1, None, None),
        ("AWG 0000", -3, None, None),
    ],
)
def test_wires(text: str, gauge: int, metres: Fraction | None, rated: int | None) -> None:
    spot = lamp("draws ... 1 A").spot
    found = wire_of(text, spot)
    assert found is not None
    assert (found.gauge, found.length, found.rated) == (gauge, metres, rated)


def test_a_size_is_named_as_it_is_written() -> None:
    assert [wire_name(gauge) for gauge in (18, 0, -1, -3)] == ["AWG 18", "AWG 0", "AWG 2/0", "AWG 4/0"]


def test_a_fuse_is_a_protector_of_its_own_kind() -> None:
    wiring = lamp("fuse ... 5 A").wiring
    assert wiring.protector is not None
    assert (wiring.protector.word, wiring.protector.amps) == ("fuse", 5)
    assert isinstance(lamp("draws ... 1 A").wiring.draws[0], Draw)
