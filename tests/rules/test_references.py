"""What counts as used and what as near, beyond the examples of the rules."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.rules.references.near_name import SHORTEST
from tests.rules.pipeline import findings_of, said

CARD = "normal Cruise\n  when level\n  Mixture .... LEANED\n"


def _of(rule: str, text: str) -> list[str]:
    return [marked for name, marked in said(findings_of(text)) if name == rule]


def _unused(values: str, use: str = "") -> list[str]:
    return _of("value-never-used", f"values\n{values}\n{CARD}{use}")


# ---------------------------------------------------------------- values


@pytest.mark.parametrize(
    "use",
    [
        "  Gap .... {gap}\n",
        "  Gap .... AT LEAST {gap in cm}\n",
        "  {gap} feeler .... FITS\n",
        "  note The gap is {gap}.\n",
        "  if the gap is below {gap}\n    Mixture .... RICH\n",
        "  Mixture lever .... IN\n    At {gap} from the stop.\n",
        "  amplified\n    The gap is {gap}.\n",
        "\ntext Gaps\n  All are {gap}.\n",
        "\nequipment\n  Mixture .... OUT to IN\n    does .... Moves by {gap}.\n",
        "\ngauge Gap in mm from unverified\n  green .... 0 to {gap}\n",
    ],
)
def test_a_value_is_used_wherever_it_is_referred_to(use: str) -> None:
    assert _unused("  gap .... 5 mm  unverified\n", use) == []


def test_a_value_is_used_by_a_value_that_is_used() -> None:
    rows = "  gap .... 5 mm  unverified\n  gaps .... 2 * {gap}\n  all gaps .... {gaps} + {gap}\n"
    assert _unused(rows, "  Gap .... {all gaps}\n") == []
    assert _unused(rows) == ["all gaps"]


def test_of_values_in_a_circle_the_circle_is_said() -> None:
    text = f"values\n  gap .... {{gaps}} / 2\n  gaps .... 2 * {{gap}}\n{CARD}"
    assert [finding.rule for finding in findings_of(text)] == ["circular-value"]


def test_limits_and_the_load_factor_count_as_used() -> None:
    speeds = "speeds\n  VNE .... 160 KIAS  unverified\n  VFE at 10 deg .... 100 KIAS  unverified\n"
    text = f"{speeds}  VS1 .... 51 KIAS  unverified\n  VX .... 66 KIAS  unverified\n\n{CARD}"
    assert _of("value-never-used", text) == ["VX"]
    assert _unused("  load factor .... 3.8  unverified\n") == []


@pytest.mark.parametrize("rule", ["value-never-used", "control-on-no-card", "gauge-on-no-card"])
def test_a_loose_file_without_cards_is_to_be_included_somewhere(rule: str) -> None:
    text = "values\n  gap .... 5 mm  unverified\n\nequipment\n  Pump .... OFF, ON\n\ngauge Oil in psi from unverified\n"
    assert _of(rule, text) == []
    assert len(_of(rule, f"{text}\n{CARD}")) == 1
    assert len(_of(rule, f"handbook Ostrel Two\n\n{text}")) == 1


# ---------------------------------------------------------------- controls and gauges


@pytest.mark.parametrize(
    "use",
    [
        "  Fuel pump .... ON\n",
        "  fuel  PUMP .... ON\n",
        "  boost pump .... ON\n",
        "  Nav lights + Fuel pump .... ON\n",
        "  if Fuel pump ON\n    Mixture .... RICH\n",
        "  repeat until Fuel pump OFF\n    Mixture .... RICH\n",
        "  group Pumps\n    Fuel pump .... ON\n",
        "\nequipment\n  Heater .... OFF, ON\n    needs .... Fuel pump ON\n",
        "\nequipment\n  Master .... OFF, ON\n    turned OFF .... Fuel pump OFF\n",
    ],
)
def test_a_control_is_on_a_card(use: str) -> None:
    text = f"equipment\n  Fuel pump .... OFF, ON\n    also called .... boost pump\n\n{CARD}{use}"
    assert "Fuel pump" not in _of("control-on-no-card", text)


@pytest.mark.parametrize(
    "use",
    [
        "  Fuel flow .... {Fuel flow green}\n",
        "  Flow .... ABOVE {Fuel flow green low}\n",
        "  note Lean to {Fuel flow green high}.\n",
        "\nequipment\n  Throttle .... IDLE to FULL\n    read on .... Fuel flow\n",
    ],
)
def test_a_gauge_is_on_a_card(use: str) -> None:
    text = f"gauge Fuel flow in l/h from unverified\n  green .... 10 to 30\n\n{CARD}{use}"
    assert _of("gauge-on-no-card", text) == []


# ---------------------------------------------------------------- near names


def _near(declared: str, challenge: str) -> bool:
    text = f"equipment\n  {declared} .... OFF, ON\n\n{CARD}  {declared} .... ON\n  {challenge} .... ON\n"
    return _of("near-name", text) == [challenge]


@pytest.mark.parametrize(
    ("declared", "challenge"),
    [
        ("Fuel pump", "Fuel pmup"),
        ("Fuel pump", "Fuel pumps"),
        ("Fuel pump", "Fuelpump"),
        ("Fuel pump", "Fuel-pump"),
        ("Fuel pump", "Fule pupm"),
        ("Landing lights", "Landing light"),
        ("Transponder", "Transpoder"),
        ("Transponder", "Transpondre"),
        ("Brake", "Brakes"),
    ],
)
def test_one_or_two_letters_are_near(declared: str, challenge: str) -> None:
    assert _near(declared, challenge)


@pytest.mark.parametrize(
    ("declared", "challenge"),
    [
        ("Fuel pump", "Fuel pump"),
        ("Fuel pump", "FUEL PUMP"),
        ("Fuel pump", "Fuel sump"),
        ("Fuel pump", "Fuel sumps"),
        ("Nav lights", "Map lights"),
        ("Battery 1", "Battery 2"),
        ("Magneto L", "Magneto R"),
        ("Left fuel", "Right fuel"),
        ("Trim", "Trin"),
        ("Flap", "Flag"),
        ("Transponder", "Transpo"),
        ("Canopy", "Cabin heat"),
    ],
)
def test_what_is_another_thing_is_not_near(declared: str, challenge: str) -> None:
    assert not _near(declared, challenge)


def test_the_names_of_gauges_and_other_names_count() -> None:
    text = (
        "gauge Oil pressure in psi from unverified\n  green .... 55 to 95\n\n"
        "equipment\n  Fuel pump .... OFF, ON\n    also called .... booster\n\n"
        "normal Run-up\n  when warm\n  Oil presure .... {Oil pressure green}\n  Boster .... ON\n  Fuel pump .... ON\n"
    )
    found = {finding.spot.text: finding for finding in findings_of(text) if finding.rule == "near-name"}
    assert set(found) == {"Oil presure", "Boster"}
    assert "`booster`" in found["Boster"].message
    assert found["Boster"].related[0].spot.text == "Fuel pump"


@given(st.text(st.sampled_from("abcdefghij "), min_size=SHORTEST, max_size=12), st.data())
def test_one_or_two_letters_more_are_near_wherever_they_stand(name: str, data: st.DataObject) -> None:
    name = "x" + "".join(name.split())
    if len(name) < SHORTEST:
        name += "x" * SHORTEST
    at = data.draw(st.integers(1, len(name)))
    slip = data.draw(st.sampled_from(["z", "zz"]))
    assert _near(name.capitalize(), name[:at].capitalize() + slip + name[at:])


# ---------------------------------------------------------------- names that look alike, and bare ones


@pytest.mark.parametrize(
    ("declared", "written", "offered"),
    [
        ("VS0", "VSO", "{VS0}"),
        ("VSO", "VS0", "{VSO}"),
        ("VS0", "vso in mph", "{VS0 in mph}"),
        ("VS0 (flaps down)", "VSO", "{VS0}"),
        ("V0", "VO", "{V0}"),
    ],
)
def test_a_letter_for_a_zero_is_offered_the_other_and_nothing_else_is_said(
    declared: str, written: str, offered: str
) -> None:
    text = f"speeds\n  {declared} .... 46 KIAS  unverified\n\n{CARD}  Airspeed .... {{{written}}}\n"
    (found,) = findings_of(text)
    assert (found.rule, found.spot.text) == ("unknown-value", f"{{{written}}}")
    assert found.help.startswith(f"Did you mean `{offered}`?")


def test_two_values_that_look_alike_are_one_finding_whichever_is_used() -> None:
    speeds = "speeds\n  VS0 .... 46 KIAS  unverified\n  VSO .... 48 KIAS  unverified\n\n"
    for use in ("{VS0}", "{VSO}"):
        assert said(findings_of(f"{speeds}{CARD}  Airspeed .... {use}\n")) == [("near-name", "VSO")]
    assert _of("near-name", speeds.replace("VSO", "VS1") + CARD) == []


SPEEDS = "speeds\n  VG .... 82 KIAS  unverified\n\n"


@pytest.mark.parametrize("response", ["VG", "vg", "VG [critical]"])
def test_a_bare_name_is_one_finding_that_offers_the_braces(response: str) -> None:
    card = CARD.replace("  Mixture", f"  Airspeed .... {response}\n  Mixture")
    (found,) = findings_of(SPEEDS + card)
    assert (found.rule, found.spot.text) == ("bare-name", response.partition(" ")[0])
    assert "`{VG}`, which prints as `82 KIAS`" in found.help


@pytest.mark.parametrize("response", ["{VG}", "AT VG", "VX", "VG OR MORE"])
def test_what_is_more_than_the_name_or_none_is_no_bare_name(response: str) -> None:
    assert _of("bare-name", f"{SPEEDS}{CARD}  Airspeed .... {response}\n") == []


@pytest.mark.parametrize(
    ("control", "expected"),
    [
        ("Bug .... OFF, VG", []),
        ("Lever .... OFF to VG", []),
        ("Bug .... any KIAS", [("bare-name", "VG")]),
        ("Bug .... LOW to HIGH", [("bare-name", "VG")]),
        ("Bug .... OFF, ON", [("unknown-position", "VG")]),
    ],
)
def test_a_bare_name_beside_positions(control: str, expected: list[tuple[str, str]]) -> None:
    name = control.partition(" ")[0]
    text = f"{SPEEDS}equipment\n  {control}\n\n{CARD}  {name} .... VG\n  Airspeed .... AT {{VG}}\n"
    assert said(findings_of(text)) == expected
