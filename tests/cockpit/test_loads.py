"""What is on in a state, and when the most is on.

Outside check: the rule of thumb of FAA AC 43.13-1B par. 11-35a, page 11-12: 80 per cent, so 48 A of 60 A.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from dotleader.cockpit.electric_words import load, minutes, rating, share
from dotleader.cockpit.loads import Loads
from dotleader.cockpit.peaks import most, peaks
from dotleader.cockpit.running import run
from tests.handbook.texts import resolved
from tests.rules.pipeline import findings_of

PANEL = """\
electrical from unverified
  system ... 14 V
  alternator ... 60 A
    needs ... Alternator ON
    needs ... Engine RUNNING
  battery ... 16 Ah
    needs ... Master ON
  always on ... 1 A

equipment
  Engine ... STOPPED, RUNNING
    parked ... STOPPED
  Master ... OFF, ON
    parked ... OFF
  Alternator ... OFF, ON
    parked ... OFF
    needs for ON ... Master ON
    needs for ON ... Engine RUNNING
    draws ... 2 A
  Bus ... OFF, ON
    parked ... OFF
    needs for ON ... Master ON
    needs for ON ... Engine RUNNING
  Radio ... OFF, ON
    parked ... OFF
    needs for ON ... Bus ON
    draws ... 4 A
  Transponder ... OFF, STANDBY, ALT
    parked ... OFF
    draws ... 3 A
    draws in ALT ... 5 A
  Lamp ... OFF, ON
    parked ... OFF
    draws ... 56 W
  Dimmer ... OFF to BRIGHT
    parked ... OFF
    draws ... 0.5 A
  Flaps ... UP, HALF, FULL
    parked ... UP
    draws while moving ... 10 A
  Key ... OFF, BOTH, START
    parked ... OFF
    springs ... START to BOTH
    draws in START ... 200 A
    turned START ... Engine RUNNING
    turned OFF ... Engine STOPPED

normal Before start
"""


def on_after(lines: str) -> dict[str, Fraction]:
    """What is on when a single card has been done from the parked aircraft."""
    body = "".join(f"  {line}\n" for line in lines.splitlines())
    handbook, findings = resolved(PANEL + body)
    assert not findings
    assert handbook.electrical is not None
    done = run(handbook)
    (state,) = done.main[0].after
    return {one.control: one.amps for one in Loads(handbook.electrical, done.cockpit).on(state)}


@pytest.mark.parametrize(
    ("lines", "on"),
    [
        ("Flight controls ... FREE", {}),  # the master switch is off
        ("Lamp ... ON", {}),
        ("Master ... ON", {"": 1}),
        ("Master + Lamp ... ON", {"": 1, "lamp": 4}),
        ("Master + Lamp ... ON\nMaster ... OFF", {}),
        ("Master ... ON\nTransponder ... STANDBY", {"": 1, "transponder": 3}),
        ("Master ... ON\nTransponder ... ALT", {"": 1, "transponder": 5}),
        ("Master ... ON\nDimmer ... HALF", {"": 1, "dimmer": Fraction("0.5")}),
        ("Master ... ON\nFlaps ... FULL", {"": 1}),  # they draw only while they move
        ("Master ... ON\nKey ... START", {"": 1}),  # so does the starter
        ("Master ... ON\nRadio ... ON", {"": 1}),  # its bus is off
        ("Master ... ON\nKey ... START\nBus + Radio ... ON", {"": 1, "radio": 4}),
    ],
)
def test_what_is_on(lines: str, on: dict[str, Fraction]) -> None:
    assert on_after(lines) == on


def test_a_load_goes_on_when_the_engine_stops_though_it_is_needed_to_switch_it_on() -> None:
    assert on_after("Master ... ON\nKey ... START\nAlternator + Bus + Radio ... ON\nKey ... OFF") == {
        "": 1,
        "alternator": 2,
        "radio": 4,
    }


def test_needs_in_a_circle_come_to_an_end() -> None:
    handbook, _ = resolved(
        "electrical from unverified\n  battery ... 9 Ah\n"
        "equipment\n  A ... OFF, ON\n    needs ... B ON\n    draws ... 1 A\n  B ... OFF, ON\n    needs ... A ON\n"
        "normal Before start\n  A + B ... ON\n"
    )
    assert handbook.electrical is not None
    done = run(handbook)
    (state,) = done.main[0].after
    assert Loads(handbook.electrical, done.cockpit).total(state) == 1


FLIGHT = """\
electrical from unverified
  alternator ... 60 A
    needs ... Alternator ON

equipment
  Alternator ... OFF, ON
    parked ... OFF
  Heat ... OFF, ON
    parked ... OFF
    draws ... {heat}
  Light ... OFF, ON
    parked ... OFF
    draws ... 20 A

normal Engine start
  when seated
  Light ... ON
  Alternator ... ON
normal Before takeoff
  when holding short
  Heat ... ON if damp, otherwise OFF
  Light ... OFF
normal Shutdown
  when parked
  Heat ... OFF
  Alternator ... OFF
"""


def test_the_most_that_is_on_is_found_between_the_items_and_on_every_branch() -> None:
    handbook, _ = resolved(FLIGHT.format(heat="28 A"))
    assert handbook.electrical is not None
    done = run(handbook)
    found = peaks(Loads(handbook.electrical, done.cockpit), done)
    told = [(peak.card.title, peak.amps, peak.fed, peak.item.challenge if peak.item else "") for peak in found]
    assert told == [
        ("Engine start", 20, True, "Alternator"),
        ("Before takeoff", 48, True, "Heat"),
        ("Shutdown", 28, True, ""),
    ]
    assert most(found) is found[1]


def rules(text: str) -> list[str]:
    return [finding.rule for finding in findings_of(text) if finding.rule == "alternator-overloaded"]


def test_of_60_amperes_48_are_for_long() -> None:
    assert rules(FLIGHT.format(heat="28.0 A")) == []
    assert rules(FLIGHT.format(heat="28.1 A")) == ["alternator-overloaded"]


def test_with_a_gauge_for_it_all_that_the_alternator_gives_may_be_drawn() -> None:
    watched = FLIGHT.replace("60 A\n", "60 A\n    read on ... Ammeter\n") + "gauge Ammeter in A from unverified\n"
    assert rules(watched.format(heat="40 A")) == []
    assert rules(watched.format(heat="40.1 A")) == ["alternator-overloaded"]


def test_rounding_never_makes_more_of_it() -> None:
    assert load(Fraction("4.21")) == "4.3 A"
    assert share(Fraction("48.1"), Fraction(60)) == "81 %"
    assert rating(Fraction(100, 3)) == "33.33 A"
    assert minutes(Fraction("40.99")) == "40 min"
    assert minutes(Fraction("7.59")) == "7.5 min"


def test_a_handbook_may_set_the_share() -> None:
    assert rules(FLIGHT.format(heat="28.1 A") + "rules\n  alternator-overloaded ... 90 %\n") == []


def test_what_follows_from_a_doubtful_number_is_not_said_again() -> None:
    """A slip of the pen, 45 A for 4.5 A behind a breaker of 5 A, is one finding."""
    slip = FLIGHT.format(heat="45 A\n    breaker ... 5 A")
    assert [finding.rule for finding in findings_of(slip)] == ["breaker-below-load"]
    assert rules(slip.replace("60 A", "20 A")) == ["alternator-overloaded"]  # so it would be without it
