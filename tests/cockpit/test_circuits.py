"""Load, breaker or fuse, and wire of one control.

Outside checks: FAA AC 43.13-1B par. 11-47 and 11-48, tables 11-3 and 11-9.
"""

from __future__ import annotations

import pytest

from dotleader.cockpit.circuits import LostOnTheWay, OpensAtLoad, WireTooThin, WireUnprotected, misfits
from tests.handbook.texts import resolved


def kinds(rows: str, positions: str = "OFF, ON", electrical: str = "system ... 14 V") -> list[str]:
    lines = "".join(f"    {row.strip()}\n" for row in rows.split(";"))
    handbook, findings = resolved(f"electrical\n  {electrical}\nequipment\n  Lamp ... {positions}\n{lines}")
    assert not findings
    return [type(found).__name__ for found in misfits(handbook)]


FITS: list[str] = []
OPENS, UNPROTECTED, THIN, LOST = ([kind.__name__] for kind in (OpensAtLoad, WireUnprotected, WireTooThin, LostOnTheWay))


@pytest.mark.parametrize(
    ("rows", "found"),
    [
        ("draws ... 5 A; breaker ... 5 A", FITS),
        ("draws ... 5.1 A; breaker ... 5 A", OPENS),
        ("draws ... 70 W; breaker ... 5 A", FITS),
        ("draws ... 71 W; breaker ... 5 A", OPENS),
        # AWG 20 on 10 A and on 7.5 A, by table 11-3; a fuse only to 5 A
        ("breaker ... 10 A; wire ... AWG 20", UNPROTECTED),
        ("breaker ... 7.5 A; wire ... AWG 20", FITS),
        ("fuse ... 7.5 A; wire ... AWG 20", UNPROTECTED),
        ("fuse ... 5 A; wire ... AWG 20", FITS),
        # between two sizes the thinner one
        ("breaker ... 10 A; wire ... AWG 19", UNPROTECTED),
        # by table 11-9 AWG 16 carries 7, 11 and 14 A
        ("draws ... 7.1 A; wire ... AWG 16", THIN),
        ("draws ... 7 A; wire ... AWG 16", FITS),
        ("draws ... 11 A; wire ... AWG 16, 150 degC", FITS),
        ("draws ... 11.1 A; wire ... AWG 16, 150 degC", THIN),
        ("draws ... 11.1 A; wire ... AWG 16, 199 degC", THIN),
        ("draws ... 14 A; wire ... AWG 16, 200 degC", FITS),
        # AWG 20, 9.88 ohms in 1,000 ft: 0.494 V and 0.504 V in 10 ft
        ("draws ... 5 A; wire ... AWG 20, 10 ft, 150 degC", FITS),
        ("draws ... 5.1 A; wire ... AWG 20, 10 ft, 150 degC", LOST),
        ("draws ... 5.1 A; wire ... AWG 20, 150 degC", FITS),
        # one fault is told once, though more would not fit
        ("draws ... 45 A; breaker ... 7.5 A; wire ... AWG 20, 10 ft", OPENS),
        ("draws ... 7 A; breaker ... 10 A; wire ... AWG 22, 10 ft", UNPROTECTED),
        ("draws ... 7 A; wire ... AWG 22, 10 ft", THIN),
    ],
)  # fmt: skip
def test_what_fits(rows: str, found: list[str]) -> None:
    assert kinds(rows) == found


def test_what_draws_only_while_it_moves_may_warm_its_wire_and_lose_twice_as_much() -> None:
    moving = "draws while moving ... 10 A; wire ... AWG 20, {}"
    assert kinds(moving.format("10 ft"), "UP, DOWN") == FITS  # 0.988 V
    assert kinds(moving.format("10.2 ft"), "UP, DOWN") == LOST
    assert kinds("draws while moving ... 10 A; breaker ... 7.5 A", "UP, DOWN") == OPENS


def test_the_current_of_a_starter_goes_through_no_breaker() -> None:
    rows = "springs ... START to BOTH; draws in START ... 200 A; draws in BOTH ... 2 A; breaker ... 5 A"
    assert kinds(rows, "OFF, BOTH, START") == FITS


def test_the_block_may_say_what_all_wires_stand() -> None:
    assert kinds("draws ... 11 A; wire ... AWG 16", electrical="wires rated ... 150 degC") == FITS
    assert kinds("draws ... 11 A; wire ... AWG 16, 105 degC", electrical="wires rated ... 150 degC") == THIN


def test_volts_lost_are_not_asked_about_where_the_system_is_not_known() -> None:
    assert kinds("draws ... 5.1 A; wire ... AWG 20, 10 ft, 150 degC", electrical="wires rated ... 150 degC") == FITS
    assert kinds("draws ... 5.1 A; wire ... AWG 20, 10 ft, 150 degC", electrical="system ... 28 V") == FITS
