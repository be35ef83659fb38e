"""One fault is one finding: what only follows from it is left out, and what stands by itself is not."""

from __future__ import annotations

import pytest

from tests.rules.pipeline import findings_of, said

Said = list[tuple[str, str]]

VY = "speeds\n  VY .... 80 KIAS  unverified\n\n"
CLIMB = "normal Climb\n  when level\n  Airspeed .... {VY}\n"
SWITCHES = """\
equipment
  Fuel pump .... OFF, ON
    parked .... OFF
    draws .... 4 A
  Nav lights .... OFF, ON
    parked .... OFF
    draws .... 2 A
  Panel light .... OFF, ON
    means .... DIM: OFF or ON

normal Taxi
  when the engine runs
  Fuel pump .... OFF
  Nav lights .... ON
  Panel light .... DIM
"""
CARD = """\
abnormal Rough engine
  when the engine shakes
  group Fuel
    Fuel selector .... OTHER TANK
    Mixture .... RICH
  if it still shakes
    Power .... REDUCE
    end
  otherwise
    end
"""


def _changed(text: str, line: str, by: str) -> Said:
    assert text.count(line) == 1
    return said(findings_of(text.replace(line, by)))


def test_the_texts_are_right_before_they_are_changed() -> None:
    for text in (SWITCHES, CARD, VY + CLIMB):
        assert findings_of(text) == []


@pytest.mark.parametrize(
    ("line", "by", "expected"),
    [
        ("    Mixture .... RICH", "\tMixture .... RICH", [("tab-indentation", "\t")]),
        ("    Mixture .... RICH", "   Mixture .... RICH", [("uneven-indentation", "Mixture .... RICH")]),
        ("    Mixture .... RICH", "      Mixture .... RICH", [("uneven-indentation", "Mixture .... RICH")]),
        ("    Mixture .... RICH", "Mixture .... RICH", [("stray-line", "Mixture .... RICH")]),
        ("  if it still", "   if it still", [("uneven-indentation", "if it still shakes")]),
        ("  group Fuel", "  Fuel", [("missing-response", "Fuel")]),
        ("  when the engine", "  When the engine", [("unknown-keyword", "When")]),
        ("  when the engine shakes", "  when", [("missing-response", "when")]),
        ("REDUCE\n    end", "REDUCE\n    End", [("unknown-keyword", "End")]),
        ("Power .... REDUCE", "This is no item at all.", [("stray-line", "This is no item at all.")]),
        ("abnormal Rough engine", "Abnormally rough engine", [("unknown-keyword", "Abnormally")]),
    ],
)
def test_a_slip_in_a_card(line: str, by: str, expected: Said) -> None:
    assert _changed(CARD, line, by) == expected


@pytest.mark.parametrize(
    ("line", "by", "expected"),
    [
        ("  Nav lights .... OFF,", "\tNav lights .... OFF,", [("tab-indentation", "\t")]),
        ("  Nav lights .... OFF,", "Nav lights .... OFF,", [("stray-line", "Nav lights .... OFF, ON")]),
        ("  Nav lights .... OFF,", "  Nav lights OFF,", [("stray-line", "Nav lights OFF, ON")]),
        ("  Nav lights .... OFF, ON", "  Nav lights ....", [("missing-response", "Nav lights ....")]),
        ("  Nav lights .... OFF,", "    Nav lights .... OFF,", [("unknown-property", "Nav lights")]),
        ("    draws .... 2 A", "   draws .... 2 A", [("uneven-indentation", "draws .... 2 A")]),
        ("    draws .... 4 A", "draws .... 4 A", [("stray-line", "draws .... 4 A")]),
        ("    means .... DIM", "    means DIM", [("stray-line", "means DIM: OFF or ON")]),
        ("  Nav lights .... ON", "  Nva lights .... ON", [("near-name", "Nva lights")]),
        ("  Nav lights .... ON", "  Nav lights ....", [("missing-response", "Nav lights ....")]),
        ("  Nav lights .... ON", "  Nav lights....5", [("dots-against-digit", "....")]),
    ],
)
def test_a_slip_in_the_equipment(line: str, by: str, expected: Said) -> None:
    assert _changed(SWITCHES, line, by) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        pytest.param(CLIMB.replace("{VY}", "{VY {VX}"), [("open-brace", "{")], id="a brace"),
        pytest.param(
            VY + CLIMB.replace("{VY}", "{VY"),
            [("open-brace", "{")],
            id="the value whose brace is broken is not unused",
        ),
        pytest.param(
            VY + CLIMB.replace("{VY}", "{YV}"),
            [("unknown-value", "{YV}")],
            id="nor the one that was meant",
        ),
        pytest.param(
            VY + "Climbing away\n  Airspeed .... {VY}\n  {X\n",
            [("unknown-keyword", "Climbing")],
            id="nothing is said of a block that is not understood",
        ),
        pytest.param(
            "handbook Ostrel Two\n\ninclude climb.cards\n\n" + VY,
            [("missing-file", "climb.cards")],
            id="what the missing file may use",
        ),
        pytest.param(
            "handbook Ostrel Two\n\ninclude speeds.cards\n\n" + CLIMB,
            [("missing-file", "speeds.cards")],
            id="what the missing file may declare",
        ),
        pytest.param(
            VY.replace(" ....", "") + CLIMB,
            [("stray-line", "VY 80 KIAS  unverified")],
            id="the value whose row has no leader is not unknown",
        ),
        pytest.param(
            VY.replace("80 KIAS", "eighty") + CLIMB,
            [("unreadable-value", "eighty  unverified")],
            id="nor the one that cannot be read",
        ),
        pytest.param(
            "sources\n  kit manual - issue 4\n\n" + VY.replace("unverified", "from kit manual, page 2") + CLIMB,
            [("dash-for-leader", " - ")],
            id="nor the source that is joined by a dash",
        ),
        pytest.param(
            "gauge Oil pressure in psi from unverified\n  green - 55 to 95\n\n"
            "normal Run-up\n  when warm\n  Oil pressure .... {Oil pressure green}\n",
            [("dash-for-leader", " - ")],
            id="nor the range of a gauge with a row that could not be read",
        ),
    ],
)
def test_a_fault_elsewhere(text: str, expected: Said) -> None:
    assert said(findings_of(text)) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        pytest.param(
            "values\n  length .... 4,5 fet  unverified\n\nnormal Taxi\n  when level\n  Gap .... {length}\n",
            [("decimal-comma", "4,5"), ("unknown-unit", "fet")],
            id="in one line",
        ),
        pytest.param(
            "normal Taxi\n  when level\n  Brakes\n  Gap - NONE\n  Speed .... {VY}\n",
            [("missing-response", "Brakes"), ("dash-for-leader", " - "), ("unknown-value", "{VY}")],
            id="in one card",
        ),
        pytest.param(
            SWITCHES.replace("OFF\n    draws .... 4", "UP\n    draws .... 4") + "  Gap ....\n  Speed .... {VX}\n",
            [("unknown-position", "UP"), ("missing-response", "Gap ...."), ("unknown-value", "{VX}")],
            id="in two blocks",
        ),
        pytest.param(
            "normal Taxi\n  Brakes\n\nnormal Climb\n  Airspeed .... FAST\n",
            [("no-trigger", "Taxi"), ("missing-response", "Brakes"), ("no-trigger", "Climb")],
            id="in two cards",
        ),
    ],
)
def test_two_faults_are_two_findings(text: str, expected: Said) -> None:
    assert said(findings_of(text)) == expected


def test_an_error_comes_back_when_what_it_was_left_out_for_is_allowed() -> None:
    text = SWITCHES.replace("Nav lights .... ON", "Nav lights .... SET")
    assert said(findings_of(text)) == [("vague-response", "SET")]
    allowed = text.replace("SET", "SET  # allow vague-response: our word for it")
    assert said(findings_of(allowed)) == [("unknown-position", "SET")]


def test_a_card_without_a_title_is_not_empty_too() -> None:
    assert said(findings_of("normal\n\n" + CARD)) == [("unnamed-block", "normal")]


FACTS = """\
sources
  kit .... kit manual

speeds
  VLO (wheels moving) .... 80 KIAS  from kit

gauge Oil pressure in bar from kit
  red .... below 2
  green .... 3 to 5.5

equipment
  Radio .... OFF, ON
    parked .... OFF
  Lights .... OFF, ON

emergency Rattle
  when the cowling rattles
  Radio + Lights .... OFF
  Airspeed .... BELOW {VLO}
  Oil pressure .... {Oil pressure green}
  go to Fire

emergency Fire
  when it burns
  Field .... NEAREST
  end
"""


@pytest.mark.parametrize(
    ("line", "by", "expected"),
    [
        ("  go to Fire", "  go to", [("missing-response", "go to")]),
        ("  Lights .... OFF, ON", "   Lights .... OFF, ON", [("uneven-indentation", "Lights .... OFF, ON")]),
        ("3 to 5.5", "3 to 55,0", [("decimal-comma", "55,0")]),
        ("3 to 5.5", "3,5 to 2", [("decimal-comma", "3,5")]),
        ("BELOW {VLO}", "BELOW {VLO mph}", [("unknown-value", "{VLO mph}")]),
        ("BELOW {VLO}", "BELOW {VLO (wheels moving)}", []),
        ("BELOW {VLO}", "BELOW {VLO (wheels up)}", [("unknown-value", "{VLO (wheels up)}")]),
    ],
)
def test_slips_in_facts(line: str, by: str, expected: Said) -> None:
    assert _changed(FACTS, line, by) == expected


def test_a_line_without_its_challenge_may_be_about_a_control_that_has_such_a_position() -> None:
    """It says nothing of `Panel light`, which has no such position, and nothing of one that is on a card."""
    text = SWITCHES.replace("Panel light .... OFF, ON", "Panel light .... DARK, BRIGHT")
    text = text.replace("OFF or ON", "DARK or BRIGHT")
    unasked = text.replace("  Fuel pump .... OFF\n", "  .... OFF\n")
    assert said(findings_of(unasked)) == [("missing-challenge", ".... OFF")]
    fewer = unasked.replace("  Panel light .... DIM\n", "")
    assert said(findings_of(fewer)) == [("control-on-no-card", "Panel light"), ("missing-challenge", ".... OFF")]
