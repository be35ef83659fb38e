"""Punches: what is read, what stands in where nothing is written, and what cannot be.

Outside checks, each named beside its test: ISO 838 (two holes) and 1 in = 25.4 mm exactly (NIST SP 811).
"""

from __future__ import annotations

import pytest

from dotleader.handbook.punch import Punch
from dotleader.handbook.punches import SAMPLES
from dotleader.source.finding import Finding
from tests.handbook.texts import resolved, said

SAMPLE = """\
punch Desk punch
  holes ................. 2, 80 mm apart, 6 mm wide, 12 mm from edge
  stop .................. scale
"""


def block(*rows: str) -> str:
    return "\n".join(["punch Desk punch", *(f"  {row}" for row in rows)]) + "\n"


def only(*rows: str) -> Punch:
    handbook, findings = resolved(block(*rows))
    assert findings == ()
    (punch,) = handbook.punches
    return punch


def finding(*rows: str) -> Finding:
    handbook, findings = resolved(block(*rows))
    assert handbook.punches == ()
    (found,) = findings
    return found


def test_the_sample_is_read() -> None:
    handbook, findings = resolved(SAMPLE)
    assert findings == ()
    (punch,) = handbook.punches
    assert (punch.name, punch.holes, punch.diameter, punch.depth) == (
        "Desk punch",
        (0, 80_000),
        6_000,
        (12_000, 12_000),
    )
    assert (punch.stop, punch.stop_on_right, punch.from_middle, punch.reach) == ("scale", True, True, None)
    assert punch.spot.text == "Desk punch"


def test_without_width_and_edge_they_are_those_of_iso_838() -> None:
    # ISO 838: holes 6 mm wide, their centres 12 mm from the edge
    punch = only("holes .... 2, 80 mm apart")
    assert (punch.diameter, punch.depth) == (6_000, (12_000, 12_000))


def test_without_a_stop_row_there_is_none() -> None:
    assert only("holes .... 1").stop == "none"
    assert resolved("normal Taxi\n  Brakes .... HELD\n")[0].punches == ()


@pytest.mark.parametrize(
    ("row", "holes"),
    [
        ("3, 4.25 in apart", (0, 107_950, 215_900)),  # 1 in = 25.4 mm exactly (NIST SP 811)
        ("1, 7 mm wide", (0,)),
        ("4, 21 + 70 + 21 mm apart, 6 mm wide, 12 mm from edge", (0, 21_000, 91_000, 112_000)),
        ("at 8, 29, 99, 120 mm, 6 mm wide", (0, 21_000, 91_000, 112_000)),
        ("at 1 1/2, 4 1/4, 7 in", (0, 69_850, 139_700)),
        ("at 34 mm", (0,)),
    ],
)
def test_holes_stand_in_a_row_or_at_their_places(row: str, holes: tuple[int, ...]) -> None:
    assert only(f"holes .... {row}").holes == holes


def test_a_depth_can_be_set() -> None:
    assert only("holes .... 2, 80 mm apart", "depth .... 8 to 14 mm").depth == (8_000, 14_000)
    assert only("holes .... 2, 80 mm apart", "depth .... 10 mm").depth == (10_000, 10_000)


def test_a_stop_says_where_it_is_and_how_far_it_goes() -> None:
    punch = only("holes .... 2, 80 mm apart", "stop .... scale, on the left, from the nearest hole, 5 to 120 mm")
    assert (punch.stop_on_right, punch.from_middle, punch.reach) == (False, False, (5_000, 120_000))
    assert only("holes .... 1", "stop .... plain, on the right").stop == "plain"


@pytest.mark.parametrize(
    ("row", "rule", "marked"),
    [
        ("holes .... two, 80 mm apart", "unreadable-value", "two, 80 mm apart"),
        ("holes .... 2", "unreadable-value", "2"),
        ("holes .... 0, 80 mm apart", "unreadable-value", "0, 80 mm apart"),
        ("holes .... none", "unreadable-value", "none"),
        ("holes .... at 8, 29 mm, 80 mm apart", "unreadable-value", "at 8, 29 mm, 80 mm apart"),
        ("holes .... at 21, 21 mm", "unreadable-value", "at 21, 21 mm"),
        ("holes .... 2, 80 mm apart, 6 mm deep", "unreadable-value", "2, 80 mm apart, 6 mm deep"),
        ("holes .... 2, {VG} apart", "unreadable-value", "2, {VG} apart"),
        ("holes .... 2, 8 mm apart, 8 mm wide", "impossible-punch", "2, 8 mm apart, 8 mm wide"),
        (
            "holes .... 2, 80 mm apart, 6 mm wide, 2 mm from edge",
            "impossible-punch",
            "2, 80 mm apart, 6 mm wide, 2 mm from edge",
        ),
        ("holes .... 2, 80 mm apart, 6 cm wide", "impossible-punch", "2, 80 mm apart, 6 cm wide"),
        ("stop .... scale", "impossible-punch", "Desk punch"),
    ],
)
def test_what_is_wrong_with_a_row_is_said_at_it(row: str, rule: str, marked: str) -> None:
    found = finding(row)
    assert (found.rule, found.spot.text) == (rule, marked)
    assert found.message.endswith(".")
    assert found.help.endswith(".")


@pytest.mark.parametrize(
    ("row", "rule", "marked"),
    [
        ("stop .... ruler", "unreadable-value", "ruler"),
        ("stop .... none, on the right", "unreadable-value", "none, on the right"),
        ("stop .... scale, 120 to 5 mm", "unreadable-value", "scale, 120 to 5 mm"),
        ("stop .... scale, above", "unreadable-value", "scale, above"),
        ("stop .... scale, 5 to 20 mm", "impossible-punch", "scale, 5 to 20 mm"),
        ("depth .... 2 to 14 mm", "impossible-punch", "2 to 14 mm"),
        ("depth .... 12 to 14", "unreadable-value", "12 to 14"),
    ],
)
def test_what_is_wrong_with_stop_and_depth_is_said_there(row: str, rule: str, marked: str) -> None:
    found = finding("holes .... 2, 80 mm apart", row)
    assert (found.rule, found.spot.text) == (rule, marked)


def test_a_depth_that_is_said_of_the_holes_is_sent_to_its_own_row() -> None:
    found = finding("holes .... 2, 80 mm apart, 6 mm wide, 8 to 14 mm from edge")
    assert found.message == "`8 to 14 mm from edge` is not one distance."
    assert "`depth`" in found.help


def test_an_unknown_row_is_said_and_the_rest_is_read() -> None:
    handbook, findings = resolved(block("hole .... 2", SAMPLES["holes"], "stop .... scale", "stop .... none"))
    assert [(one.rule, one.spot.text) for one in findings] == [
        ("unknown-property", "hole"),
        ("name-used-twice", "stop"),
    ]
    assert "`holes`" in findings[0].help
    assert handbook.punches[0].stop == "scale"


def test_punches_have_names_of_their_own() -> None:
    assert said(SAMPLE + SAMPLE.replace("Desk", "desk")) == [("name-used-twice", "desk punch")]
    assert said("punch\n  holes .... 1\n") == [("unnamed-block", "punch")]
    other = SAMPLE.replace("Desk", "Heavy")
    assert [punch.name for punch in resolved(SAMPLE + other)[0].punches] == ["Desk punch", "Heavy punch"]


def test_a_row_that_may_have_meant_the_holes_is_one_finding() -> None:
    assert finding("hole .... 2, 80 mm apart").rule == "unknown-property"


@pytest.mark.parametrize("row", SAMPLES.values(), ids=SAMPLES)
def test_the_rows_that_findings_offer_are_right(row: str) -> None:
    rows = (row,) if row.startswith("holes") else (SAMPLES["holes"], row)
    assert resolved(block(*rows))[1] == ()
