"""Responses to controls: what names a position, and what is offered where nothing does."""

from __future__ import annotations

import pytest

from dotleader.handbook.cards import Item
from tests.handbook.texts import resolved

BOOK = """\
equipment
  Flaps ..... UP, 15 deg, LANDING
  Radio ..... off, on
  Pump ...... OFF, LOW, HIGH
  Cock ...... LEFT, RIGHT
  Mixture ... CUT OFF to RICH, LEANED

normal Cruise
  when level
  {line}
"""


def moved(line: str) -> tuple[tuple[str, ...], bool]:
    """The positions of the one move of a line that has nothing wrong with it, and whether it has a choice."""
    handbook, findings = resolved(BOOK.replace("{line}", line))
    assert not findings
    (item,) = (step for step in handbook.cards[0].steps if isinstance(step, Item))
    (move,) = item.moves
    return move.positions, move.conditional


@pytest.mark.parametrize(
    ("line", "positions", "conditional"),
    [
        ("Flaps ... LANDING, when the field is made", ("LANDING",), False),
        ("Flaps ... UP, on water or snow", ("UP",), False),
        ("Flaps ... UP, then 15 deg, then LANDING, when slow", ("UP", "15 deg", "LANDING"), False),
        ("Flaps ... LANDING, if the field is made, otherwise UP", ("LANDING", "UP"), True),
        ("Radio ... on, once", ("on",), False),
        ("Radio ... stays on", (), False),
        ("Radio ... STAYS ON", (), False),
        ("Radio ... STAY ON", (), False),
        ("Pump ... HIGH, for 4 s, then OFF", ("HIGH", "OFF"), False),
        ("Cock ... LEFT or RIGHT, whichever is fuller", ("LEFT", "RIGHT"), True),
        ("Mixture ... RICH, slowly", ("RICH",), False),
    ],
)
def test_a_position_and_a_remark(line: str, positions: tuple[str, ...], conditional: bool) -> None:
    assert moved(line) == (positions, conditional)


@pytest.mark.parametrize(
    ("line", "marked", "offered"),
    [
        ("Flaps ... LANDING when slow", "LANDING when slow", "`LANDING if slow`"),
        ("Flaps ... LANDING (below 90)", "LANDING (below 90)", "`LANDING, below 90`"),
        ("Flaps ... UP THEN LANDING", "UP THEN LANDING", "`UP then LANDING`"),
        ("Flaps ... UP / LANDING", "UP / LANDING", "`UP then LANDING`, `UP or LANDING`"),
        ("Flaps ... UP, LANDNG", "UP, LANDNG", "Did you mean `LANDING`?"),
        ("Flaps ... UP, OFF", "UP, OFF", "Its positions are"),
        ("Flaps ... UP then LANDNG", "LANDNG", "Did you mean `LANDING`?"),
        ("Flaps ... 15", "15", "Did you mean `15 deg`?"),
        ("Radio ... on, off on the ground", "on, off on the ground", "Its positions are"),
        ("Pump ... HIGH for 4 s then OFF", "HIGH for 4 s", "`HIGH, for 4 s`"),
        ("Cock ... LEFT, RIGHT", "LEFT, RIGHT", "`LEFT then RIGHT`, `LEFT or RIGHT`"),
    ],
)
def test_what_is_offered_for_a_response_that_names_no_position(line: str, marked: str, offered: str) -> None:
    _, (finding,) = resolved(BOOK.replace("{line}", line))
    assert (finding.rule, finding.spot.text) == ("unknown-position", marked)
    assert offered in finding.help


def test_another_number_is_never_offered() -> None:
    _, (finding,) = resolved(BOOK.replace("{line}", "Flaps ... 25 deg"))
    assert "Did you mean" not in finding.help


GAUGES = """\
sources
  test ... flight test

speeds
  VY ... 80 KIAS from test

values from test
  idle ...... 700 rpm
  warm ...... 50 degC
  reserve ... 45 min
  time ...... 30 s

gauge Oil pressure in bar from test
  green ... 3 to 5
gauge Oil temperature in degC from test
  green ... 40 to 90
gauge Engine speed in rpm from test
  green ... 600 to 2700
gauge Manifold pressure in inHg from test
gauge Fuel quantity in l from test
gauge Airspeed in km/h from test

equipment
  Throttle .... CLOSED to FULL
    read on ... Engine speed, Manifold pressure
  Propeller ... COARSE to FINE
    read on ... Engine speed

normal Cruise
  when level
  {line}
"""


@pytest.mark.parametrize(
    "line",
    [
        "Oil pressure ... {Oil pressure green in psi}",
        "Oil pressure ... AT LEAST {Oil pressure green low} WITHIN {time}",
        "Oil pressure ... 3 bar above {Oil temperature green low}",
        "Oil pressure ... RISING WITHIN {time}",
        "Oil temperature ... 120 degF",
        "Throttle ... {idle}",
        "Throttle ... 23 inHg, 2,400 rpm",
        "Throttle ... 5 mm",
        "Throttle ... REDUCED UNTIL {Oil temperature green}",
        "Fuel quantity ... AT LEAST {reserve}",
        "Airspeed ... {VY}",
    ],
)
def test_a_response_that_may_be_read_on_its_instrument(line: str) -> None:
    assert resolved(GAUGES.replace("{line}", line))[1] == ()


@pytest.mark.parametrize(
    "line",
    [
        "Oil pressure ... {Oil temperature green}",
        "Oil pressure ... AT LEAST {Oil temperature green low}",
        "Oil pressure ... {VY}",
        "Oil temperature ... 2 to 3 bar",
        "Propeller ... 23 inHg",
        "Throttle ... {warm}",
    ],
)
def test_a_response_that_is_read_on_another_instrument(line: str) -> None:
    _, (finding,) = resolved(GAUGES.replace("{line}", line))
    assert (finding.rule, finding.spot.text) == ("unlike-units", line.partition(" ... ")[2])
