"""Rules about the wording of a line and the form of a card, where their examples leave something open."""

from __future__ import annotations

import pytest

from dotleader.source.finding import Finding
from tests.rules.pipeline import findings_of, said

CARD = "emergency Fire\n  when it burns\n{}  end\n"


def _found(body: str, above: str = "") -> list[tuple[str, str]]:
    return said(findings_of(above + CARD.format("".join(f"  {line}\n" for line in body.splitlines()))))


def _one(text: str) -> Finding:
    (finding,) = findings_of(text)
    return finding


# One name wrong is one finding, whichever of four rules it is.

LABELS = "equipment\n  Fuel pump .... OFF, ON\n    also called .... aux pump\n\n"


@pytest.mark.parametrize(
    ("challenge", "rule"),
    [
        ("Feul pump", "near-name"),
        ("Fuel pumps", "near-name"),
        ("Aux pump", "alias-used"),
        ("Fuel pump switch", "not-the-label"),
        ("Electric fuel pump", "not-the-label"),
        ("Boost pump", "not-the-label"),
    ],
)
def test_a_challenge_that_is_not_the_label_is_found_once(challenge: str, rule: str) -> None:
    """FAA AC 120-71B 5.4: the challenge copies the panel label."""
    assert _found(f"{challenge} .... ON", LABELS) == [(rule, challenge)]


@pytest.mark.parametrize(
    "line", ["Fuel pump breaker .... ON", "Fuel .... ON", "Fuel pump hose .... DRY", "Pump .... ON"]
)
def test_another_thing_is_not_taken_for_a_declared_one(line: str) -> None:
    assert _found(f"{line}\nFuel pump .... OFF", LABELS) == []


def test_where_two_things_can_be_meant_nothing_is_said() -> None:
    tanks = "equipment\n  Fuel selector .... OFF, LEFT\n  Fuel valve .... OFF, LEFT\n\n"
    assert _found("Fuel selector .... OFF\nFuel valve .... OFF\nFuel cock .... LEFT", tanks) == []


# Units: NIST SP 811 (2008) appendix B.8, psi = 6.894 757 kPa, bar = 100 kPa: 4 bar are 58.0 psi.


def test_a_reading_in_another_unit_is_worked_out() -> None:
    gauge = "gauge Oil pressure in psi from unverified\n\n"
    finding = _one(gauge + CARD.format("  Oil pressure .... ABOVE 4 bar\n"))
    assert (finding.rule, finding.spot.text) == ("other-unit", "4 bar")
    assert "`4 bar` is about 58.02 psi" in finding.help
    assert [related.spot.text for related in finding.related] == ["Oil pressure"]


def test_a_reference_in_another_unit_has_a_fix_that_takes_the_unit_out() -> None:
    gauge = "sources\n  kit .... kit manual\n\ngauge Oil pressure in psi from kit\n  green .... 55 to 95\n\n"
    finding = _one(gauge + CARD.format("  Oil pressure .... {Oil pressure green in bar}\n"))
    assert finding.fix is not None
    assert not finding.fix.safe
    assert finding.fix.edits[0].text == "{Oil pressure green}"


@pytest.mark.parametrize(
    "response", ["3 to 5 bar", "AT MOST 5 BAR", "4.5 bar (65 PSI)", "RISING WITHIN 5 s, OTHERWISE OFF", "4 bars"]
)
def test_units_of_a_response(response: str) -> None:
    gauge = "gauge Oil pressure in bar from unverified\n\n"
    assert _found(f"Oil pressure .... {response}", gauge) == []


@pytest.mark.parametrize("typed", ["18 gal", "18 GAL", "18gal", "18 gallons", "9 gph", "100 kmh", "100 KPH"])
def test_a_typed_unit_that_does_not_say_which(typed: str) -> None:
    assert _found(f"Tank .... {typed}") == [("unclear-unit", typed)]


# Conditions, loops and limits: DOE-STD-1029-92.


@pytest.mark.parametrize(
    "below",
    ["if it does not\n  Pump .... OFF", "note Not within 10 s: it will not start.", "go to Other"],
)
def test_what_stands_below_a_limit(below: str) -> None:
    other = "emergency Other\n  when it still burns\n  Lamp .... ON\n  end\n\n"
    rules = [rule for rule, _ in _found(f"Engine .... RUNS WITHIN 10 s\n{below}", other)]
    assert ("limit-without-else" in rules) == (below == "go to Other")


def test_a_limit_above_a_line_that_could_not_be_read_is_not_found() -> None:
    assert [rule for rule, _ in _found("Engine .... RUNS WITHIN 10 s\nif\n  Pump .... OFF")] == ["missing-response"]


@pytest.mark.parametrize(
    ("line", "found"),
    [
        ("Master .... OFF\n  Repeat.", True),
        ("Master .... OFF\n  Repeat as necessary.", True),
        ("Master .... OFF\n  Repeat twice.", False),
        ("Oil .... READ EVERY 5 min", True),
        ("Oil .... READ EVERY 5 min UNTIL LANDING", False),
        ("Every switch .... OFF", False),
    ],
)
def test_what_is_done_again(line: str, found: bool) -> None:
    assert ("endless-loop" in [rule for rule, _ in _found(line)]) is found


# Long lists: NTSB A-10-68. Twelve items and a third of them are our own measure.


def _items(first: int, last: int, indent: str = "") -> str:
    return "".join(f"{indent}Lamp {number} .... OUT\n" for number in range(first, last + 1))


GATE = "if it still burns\n  end\n"


@pytest.mark.parametrize(("before", "found"), [(0, False), (4, False), (5, False), (6, True), (13, True)])
def test_the_gate_stands_in_the_first_third(before: int, found: bool) -> None:
    body = f"group One\n{_items(1, before, '  ')}" if before else ""
    body += f"{GATE}{_items(before + 1, 8)}group Two\n{_items(max(before, 8) + 1, 13, '  ')}"
    assert ("long-list" in [rule for rule, _ in _found(body)]) is found


def test_of_two_branches_the_longer_one_counts() -> None:
    body = f"if one\n{_items(1, 6, '  ')}otherwise\n{_items(7, 12, '  ')}group Then\n{_items(13, 18, '  ')}"
    assert _found(body) == []


def test_a_handbook_sets_its_own_measure() -> None:
    body = f"group One\n{_items(1, 7, '  ')}group Two\n{_items(8, 14, '  ')}"
    assert [rule for rule, _ in _found(body)] == ["long-list"]
    assert _found(body, "rules\n  long-list .... 14 items\n\n") == []
    block = _items(1, 11)
    assert _found(block) == [("long-block", "Lamp 11 .... OUT")]
    assert _found(block, "rules\n  long-block .... 11 items\n\n") == []
    capitals = "Lamp .... ON\nnote NEVER OPEN THE CANOPY"
    assert _found(capitals) == []
    assert [rule for rule, _ in _found(capitals, "rules\n  long-capitals .... 3 words\n\n")] == ["long-capitals"]


def test_a_long_block_is_found_once_and_nothing_is_to_be_left_out() -> None:
    """NASA CR-177549 appendix A(15): shortening never drops a critical item."""
    groups = f"group One\n{_items(1, 16, '  ')}"
    finding = _one("normal Taxi\n  when it rolls\n" + "".join(f"  {line}\n" for line in groups.splitlines()))
    assert finding.rule == "very-long-block"
    assert "Leave nothing out" in finding.help


# Notices: what is an instruction, and what information.


@pytest.mark.parametrize(
    "text",
    [
        "Close the vents.",
        "It gets hot. Then close the vents.",
        "When it smells, open both vents.",
        "Below 4 bar: stop the engine.",
        "Make sure that the pump is off.",
        "Squawk 7700.",
        "Reduce power first.",
    ],
)
def test_an_action_in_a_notice(text: str) -> None:
    for word in ("note", "caution", "warning"):
        assert [rule for rule, _ in _found(f"{word} {text}\nLamp .... ON")] == ["action-in-notice"]


@pytest.mark.parametrize(
    "text",
    [
        "Do not close the vents.",
        "Never pull the handle in flight.",
        "Closes the vents.",
        "Closing the vents keeps the smoke in.",
        "Open vents feed the fire.",
        "The starter overheats: 10 s of turning, then 60 s of rest.",
        "At night, use the lamp.",
        "Oil pressure outside the green is a reason to taxi back.",
        "Set screws, pull rods and turn signals are not checked.",
        "Check lists are in the door.",
        "Start and stop times go into the log.",
        "Switch covers are red. Press fits do not move. Cut edges are sharp.",
        "Expect a sharp nose-down. Keep the stick back.",
    ],
)
def test_information_in_a_notice(text: str) -> None:
    for word in ("note", "caution", "warning"):
        assert _found(f"{word} {text}\nLamp .... ON") == []
