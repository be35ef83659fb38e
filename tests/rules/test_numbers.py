"""Speeds against one another, arcs and ranges of gauges, typed numbers against declared ones."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.rules.pipeline import findings_of, said

NUMBERS = {
    "speeds-out-of-order", "slow-approach", "fast-approach", "maneuvering-speed-high", "arc-elsewhere", "bands-overlap",
    "gap-between-bands", "typed-again", "typed-otherwise", "unverified-in-emergency",
}  # fmt: skip


def _found(text: str) -> list[tuple[str, str]]:
    return [pair for pair in said(findings_of(text)) if pair[0] in NUMBERS]


def _speeds(**speeds: str) -> str:
    return "speeds\n" + "".join(f"  {name} .... {value}  unverified\n" for name, value in speeds.items())


# ---------------------------------------------------------------- order


def test_the_order_of_the_arcs() -> None:
    """14 CFR 23.1545(b) as before amendment 23-64, and FAA-H-8083-25 (PHAK) on the airspeed indicator."""
    right = {
        "VS0": "46 KIAS",
        "VS1": "51 KIAS",
        "VFE": "87 KIAS",
        "VA": "99 KIAS",
        "VNO": "128 KIAS",
        "VNE": "160 KIAS",
    }
    assert _found(_speeds(**right)) == []
    for name, wrong in (("VS0", "64"), ("VFE", "45"), ("VNO", "82"), ("VNE", "116"), ("VFE", "178")):
        assert _found(_speeds(**(right | {name: f"{wrong} KIAS"}))) == [("speeds-out-of-order", name)]


def test_one_slip_is_one_finding_that_names_all_that_it_contradicts() -> None:
    text = _speeds(VS0="46 KIAS", VS1="51 KIAS", VA="99 KIAS", VNO="18 KIAS", VNE="160 KIAS")
    (finding,) = (finding for finding in findings_of(text) if finding.rule in NUMBERS)
    assert finding.message == (
        "`VNO`, 18 KIAS, does not stand above `VS0`, 46 KIAS; nor above `VS1`, 51 KIAS; nor above `VA`, 99 KIAS."
    )
    assert [related.spot.text for related in finding.related] == ["VS0", "VS1", "VA"]


def test_what_is_measured_otherwise_is_not_compared() -> None:
    """An indicated and a calibrated airspeed differ by a correction, not by a factor: 14 CFR 1.1."""
    assert _found(_speeds(VS0="46 KIAS", VS1="40 KCAS", VREF="50 KCAS", VA="190 KTAS")) == []
    assert _found(_speeds(VNO="200 km/h IAS", VNE="100 KIAS")) == [("speeds-out-of-order", "VNE")]


_SPEED = st.integers(min_value=30, max_value=300)


@given(st.lists(_SPEED, min_size=5, max_size=5), _SPEED)
def test_of_speeds_in_order_nothing_is_said_and_of_others_something(chain: list[int], flaps: int) -> None:
    names = ("VS0", "VS1", "VA", "VNO", "VNE")
    text = _speeds(**{name: f"{speed} KIAS" for name, speed in zip(names, chain, strict=True)}, VFE=f"{flaps} KIAS")
    in_order = chain == sorted(chain) and chain[1] < chain[2] and chain[0] < flaps <= chain[3]
    assert (("speeds-out-of-order" in {rule for rule, _ in _found(text)}) is False) == in_order


# ---------------------------------------------------------------- approach and maneuvering


@pytest.mark.parametrize(
    ("vref", "rule"), [("57 KCAS", "slow-approach"), ("58 KCAS", ""), ("66 KCAS", ""), ("67 KCAS", "fast-approach")]
)
def test_vref_of_a_stall_at_44(vref: str, rule: str) -> None:
    """14 CFR 23.73: 1.3 VS0, which is 57.2 KCAS; FAA AC 90-89A page 46: up to 1.5 with much drag, which is 66."""
    assert _found(_speeds(VS0="44 KCAS", VREF=vref)) == ([(rule, "VREF")] if rule else [])


def test_vref_is_not_judged_by_a_stalling_speed_that_is_itself_wrong() -> None:
    assert _found(_speeds(VS0="64 KIAS", VS1="51 KIAS", VREF="60 KIAS")) == [("speeds-out-of-order", "VS0")]


@pytest.mark.parametrize(
    ("vs1", "factor", "highest"),
    [
        (70, "3.8", "136.5"),  # published: 136.5; exactly 136.46
        (50, "3.8", "97.5"),  # published: 97.5; exactly 97.47
        (51, "4.4", "106.9"),
        (51, "6", "124.9"),
    ],
)
def test_va_is_the_stall_times_the_root_of_the_load_factor(vs1: int, factor: str, highest: str) -> None:
    """14 CFR 23.335(c); load factors 3.8, 4.4 and 6.0, of which the published examples have the first."""
    above = Fraction(highest) + Fraction(11, 10)
    declared = f"\nvalues\n  load factor .... {factor}  unverified\n"
    assert _found(_speeds(VS1=f"{vs1} KIAS", VA=f"{highest} KIAS") + declared) == []
    higher = _speeds(VS1=f"{vs1} KIAS", VA=f"{float(above):.1f} KIAS") + declared
    assert _found(higher) == [("maneuvering-speed-high", "VA")]


def test_what_the_wing_bears_where_the_load_factor_is_not_declared() -> None:
    for fact, at_most in (("normal", 100), ("utility", 107), ("aerobatic", 125), ("glider with an engine", 118)):
        head = f"handbook Ostrel\n  categories .... {fact}\n\n"
        assert _found(head + _speeds(VS1="51 KIAS", VA=f"{at_most} KIAS")) == []
        found = [f for f in findings_of(head + _speeds(VS1="51 KIAS", VA=f"{at_most + 3} KIAS")) if f.rule in NUMBERS]
        assert [finding.rule for finding in found] == ["maneuvering-speed-high"]
        assert "because `load factor` is not declared" in found[0].message


def test_a_handbook_sets_these_measures() -> None:
    rules = "rules\n  slow-approach .... 1.2 times\n\n"
    assert _found(rules + _speeds(VS0="50 KIAS", VREF="61 KIAS")) == []
    assert _found(rules + _speeds(VS0="50 KIAS", VREF="59 KIAS")) == [("slow-approach", "VREF")]


# ---------------------------------------------------------------- gauges


@pytest.mark.parametrize(
    ("rows", "expected"),
    [
        (("red below 25", "yellow 25 to 55", "green 55 to 95", "red above 95"), []),
        (("green 55 to 95", "yellow 25 to 55", "red below 25"), []),
        (("green 55 to 95", "yellow 25 to 60"), [("bands-overlap", "yellow")]),
        (("green 55 to 95", "red above 90"), [("bands-overlap", "red")]),
        (("green 55 to 95", "red 95"), []),
        (("green 55 to 95", "red 90"), [("bands-overlap", "red")]),
        (("green 600 to 2700", "red 1900 to 2100"), []),
        (("green 600 to 2700", "green 2000 to 2800"), [("bands-overlap", "green")]),
        (("green 55 to 95", "green 55 to 95"), [("bands-overlap", "green")]),
        (("red 100", "red 100"), [("bands-overlap", "red")]),
        (("green 600 to 2700", "yellow 1900 to 2100", "blue 2300"), []),
        (("white 46 to 87", "green 51 to 128"), []),
        (("yellow 25 to 50", "green 55 to 95"), [("gap-between-bands", "green")]),
        (("red below 20", "yellow 25 to 55"), [("gap-between-bands", "yellow")]),
        (("red below 20", "green 25 to 55", "red above 60"), []),
        (("green 25 to 55", "red 60"), []),
        (("yellow 0 to 10", "green 10 to 20", "yellow 20 to 30", "red above 30"), []),
    ],
)
def test_ranges_of_a_gauge(rows: tuple[str, ...], expected: list[tuple[str, str]]) -> None:
    """14 CFR 25.1549 and 27.1549 (a) to (d): what the colours mean; a barred range is a red arc within the green."""
    lines = "".join("  {} .... {}\n".format(*row.split(" ", 1)) for row in rows)
    assert _found(f"gauge Oil pressure in psi from unverified\n{lines}") == expected


def test_a_border_that_is_missed_by_two_arcs_is_one_finding() -> None:
    """14 CFR 23.1545(b)(3) and (4): the green arc ends at VNO, where the yellow one begins."""
    text = _speeds(VNO="128 KIAS", VNE="160 KIAS") + (
        "\ngauge Airspeed in KIAS from unverified\n  green .... 51 to 120\n  yellow .... 120 to 160\n  red .... 160\n"
    )
    (finding,) = (finding for finding in findings_of(text) if finding.rule in NUMBERS)
    assert finding.message == "The green arc ends at 120 KIAS, and should at `VNO`, 128 KIAS."
    assert [related.spot.text for related in finding.related] == ["yellow", "VNO"]


# ---------------------------------------------------------------- typed numbers

DECLARED = """\
speeds
  VG .... 82 KIAS  unverified
  VY .... 80 KIAS  unverified
  VNO .... 130 KIAS  unverified

values
  climb rpm .... 2,500 rpm  unverified
  usable fuel .... 38 US gal  unverified
  demonstrated crosswind .... 15 kt  unverified
  starter rest .... 60 s  unverified
  baggage limit .... at most 60 lb  unverified
  nose tyre pressure .... 28 +/- 2 psi  unverified
  takeoff flaps .... 10 deg  unverified
  idle rpm .... 700 to 900 rpm  unverified

gauge Oil pressure in psi from unverified
  yellow .... 25 to 55
  green .... 55 to 95

equipment
  Flaps .... UP, 10 deg

normal Climb
  when clear
  {}
"""


def _line(*lines: str) -> list[tuple[str, str]]:
    return _found(DECLARED.format("\n  ".join(lines)))


@pytest.mark.parametrize(
    ("line", "marked"),
    [
        ("Airspeed .... 82 KIAS", "82 KIAS"),
        ("Airspeed .... 82 kt", "82 kt"),
        ("Nose .... DOWN\n    For 82 KIAS.", "82 KIAS"),
        ("Airspeed .... 80 KIAS", "80 KIAS"),  # on a card whose title is in the meaning of VY
        ("Propeller .... 2,500 rpm", "2,500 rpm"),
        ("Fuel .... 38 US gal", "38 US gal"),
        ("caution No more than 15 kt of crosswind.\n  Doors .... SHUT", "15 kt"),
        ("Baggage .... UP TO 60 lb", "60 lb"),
        ("Oil pressure .... ABOVE 25 psi", "25 psi"),
        ("Idle .... 700 TO 900 RPM", "700 TO 900 RPM"),
        ("if the oil pressure is below 55 psi\n    Power .... LESS", "55 psi"),
    ],
)
def test_a_declared_number_is_typed_again(line: str, marked: str) -> None:
    """Common practice, no source: a number stands in one place."""
    assert _line(line) == [("typed-again", marked)]


@pytest.mark.parametrize(
    "line",
    [
        "Airspeed .... {VG}",
        "Airspeed .... 130 KIAS OR MORE",  # no limit that must not be passed
        "Airspeed .... 130 KIAS",  # a round number, and no word of that limit
        "Cowl .... 38 US gal",
        "Wind .... BELOW 15 kt",
        "Starter .... REST, 60 s",
        "Oil temperature .... 25 degC",
        "Oil pressure .... 60 psi",
        "Flaps .... 10 deg",
        "Turn .... 10 deg, FLAPS AS THEY ARE",
        "Crew .... 2",
        "Idle .... BELOW 900 rpm",
    ],
)
def test_an_equal_number_of_something_else_is_none(line: str) -> None:
    assert _line(line) == []


@pytest.mark.parametrize(
    ("line", "marked"),
    [
        ("Airspeed .... VG 80 KIAS", "80 KIAS"),
        ("Airspeed .... 85 KIAS\n    Best glide.", "85 KIAS"),
        ("Airspeed .... 80 KIAS, BEST GLIDE", "80 KIAS"),
        ("Climb rpm .... 2,400 rpm", "2,400 rpm"),
        ("Baggage limit .... 70 lb", "70 lb"),
        ("Nose tyre pressure .... 34 psi", "34 psi"),
    ],
)
def test_a_number_contradicts_what_its_line_names(line: str, marked: str) -> None:
    """FAA SAFO 17006 (2017): a list is compared line by line with the maker's list and the placards."""
    assert _line(line) == [("typed-otherwise", marked)]


@pytest.mark.parametrize(
    "line",
    [
        "Airspeed .... VG PLUS 10 KIAS",
        "Airspeed .... VG + 10 KIAS",
        "Airspeed .... BEST GLIDE, 94 mph IAS",
        "Baggage limit .... 50 lb",
        "Nose tyre pressure .... 29 psi",
        "Airspeed .... {VG}, VG IN THE BOOK OF 1990 WAS 85 KIAS",
        "Airspeed .... 75 KIAS",
    ],
)
def test_what_agrees_or_adds_to_it_is_none(line: str) -> None:
    assert _line(line) == []


@pytest.mark.parametrize(
    ("speed", "card"),
    [
        ("VG", "emergency Engine failure in flight"),
        ("VG", "emergency Forced landing"),
        ("VREF", "normal Before landing"),
        ("VY", "normal After takeoff"),
        ("VX", "normal Short-field takeoff"),
        ("VR", "normal Normal takeoff"),
        ("circuit speed", "normal Circuit"),
        ("VY", ""),
        ("VFE", ""),
    ],
)
def test_a_round_speed_is_known_by_the_card_that_it_is_flown_on(speed: str, card: str) -> None:
    head = f"speeds\n  {speed} .... 70 KIAS  unverified\n\n{card or 'abnormal Door open'}\n"
    text = f"{head}  when told\n  Airspeed .... 70 KIAS\n"
    assert _found(text) == ([("typed-again", "70 KIAS")] if card else [])


def test_a_value_that_is_typed_instead_is_not_said_to_be_unused_too() -> None:
    text = "speeds\n  VG .... 82 KIAS  unverified\n\nnormal Descent\n  when down\n  Airspeed .... 82 KIAS\n"
    assert said(findings_of(text)) == [("typed-again", "82 KIAS")]


def test_a_typed_value_has_the_reference_as_its_fix() -> None:
    (finding,) = (f for f in findings_of(DECLARED.format("Airspeed .... 82 KIAS")) if f.rule == "typed-again")
    assert finding.fix is not None
    assert not finding.fix.safe
    assert [edit.text for edit in finding.fix.edits] == ["{VG}"]


def test_what_rests_on_an_unverified_value_is_unverified() -> None:
    text = (
        "speeds\n  VS0 .... 46 KIAS  unverified\n  VREF .... 1.3 * {VS0} rounded up to 1 KIAS\n\n"
        "emergency Forced landing\n  when down\n  Airspeed .... {VREF}\n    Never below {VREF}.\n  end\n"
    )
    (finding,) = (finding for finding in findings_of(text) if finding.rule in NUMBERS)
    assert finding.message == "What `VREF` rests on is unverified, and stands on the emergency card `Forced landing`."
    assert finding.related[0].spot.text == "VS0"
