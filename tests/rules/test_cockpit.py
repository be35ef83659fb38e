"""What the cards worked through find, and where they are silent."""

from __future__ import annotations

import pytest

from tests.rules.pipeline import findings_of, said

PANEL = """\
equipment
  Master ....... OFF, ON
    parked ..... OFF
  Pump ......... OFF, ON
    parked ..... OFF
    needs ...... Master ON
  Heat ......... OFF, ON
    parked ..... OFF
    needs for ON .... Master ON
  Cock ......... SHUT, OPEN
    parked ..... SHUT

normal Before start
  when seated
  Master ....... ON
  Pump ......... ON
  Cock ......... OPEN

"""
LAST = "normal Shutdown\n  when parked\n  Heat ... OFF\n  Pump ... OFF\n  Master ... OFF\n  Cock ... SHUT\n"


def _found(cards: str, last: str = LAST) -> list[tuple[str, str]]:
    return said(findings_of(PANEL + cards + last))


def test_a_clean_flight_has_nothing_to_say() -> None:
    assert _found("normal Cruise\n  when level\n  Heat ... ON if damp, otherwise OFF\n") == []


def test_a_switch_that_nobody_puts_on_is_one_fault_on_a_side_line_too() -> None:
    off = PANEL.replace("  Master ....... ON\n  Pump ......... ON\n", "  Master ....... ON then OFF\n")
    flight = "normal Cruise\n  when level\n  Pump ... ON\n\n"
    side = "normal Slow flight\n  phase cruise\n  after Cruise\n  when high\n  Pump ... OFF then ON\n\n"
    last = "normal Shutdown\n  when parked\n  Pump ... STAYS ON\n  Cock ... SHUT\n"
    found = [each for each in said(findings_of(off + flight + side + last)) if each[0] == "need-not-met"]
    assert found == [("need-not-met", "Pump ... ON")]


def test_what_feeds_a_control_goes_off_before_it() -> None:
    last = LAST.replace("  Pump ... OFF\n  Master ... OFF\n", "  Master ... OFF\n  Pump ... OFF\n")
    assert _found("", last) == [("need-not-met", "Pump ... OFF")]
    (finding,) = findings_of(PANEL + last)
    assert finding.message == "`Pump` does not go to `OFF` here: it needs `Master ON`, and `Master` is OFF."
    assert [related.spot.text for related in finding.related] == ["Master ON", "Master ... OFF"]


def test_in_one_branch_is_enough_on_the_way_through_the_normal_cards() -> None:
    cruise = (
        "normal Cruise\n  method read and do\n  when level\n  if damp\n    Master ... OFF\n"
        "  Heat ... ON\n  Master ... ON\n"
    )
    assert _found(cruise) == [("need-not-met", "Heat ... ON")]


def test_one_condition_is_one_condition() -> None:
    cruise = (
        "normal Cruise\n  method read and do\n  when level\n  Master ... OFF\n  if damp\n    Master ... ON\n"
        "  Heat ... ON if damp\n  Master ... ON\n"
    )
    assert _found(cruise) == []


EVACUATION = """\
emergency Evacuation
  when on the ground and burning
  during landing, after landing
  Master ... OFF
  Pump ..... OFF
  end

"""


def test_an_evacuation_card_shuts_off_what_is_fed_before_what_feeds_it() -> None:
    """As after the accident of 2008 named on the rule's page."""
    assert _found(EVACUATION) == [("need-not-met", "Pump ..... OFF")]
    (finding,) = findings_of(PANEL + EVACUATION + LAST)
    assert "at whichever moment of landing it is called for" in finding.message


def test_a_card_that_some_moments_cannot_call_for_is_not_found() -> None:
    cards = (
        "normal Cruise\n  when level\n  Heat ... ON\n  Master ... OFF\n  Master ... ON\n"
        "abnormal Ice\n  when there is ice\n  during cruise\n  Heat ... OFF\n  Heat ... ON\n  end\n"
    )
    assert _found(cards) == []


def test_before_the_first_item_of_a_phase_nothing_of_it_is_done() -> None:
    cold = "emergency Fire on the ground\n  when it burns\n  during before start\n  Pump ... OFF\n  end\n"
    assert _found(cold) == []


def test_a_card_leaves_what_the_next_one_needs() -> None:
    cards = (
        "emergency Vibration\n  when the panel shakes\n  Master ... OFF\n  go to Ice\n"
        "abnormal Ice\n  when there is ice\n  Heat ... ON\n  end\n"
    )
    assert _found(cards) == [("go-to-blocked", "Heat ... ON")]
    (finding,) = findings_of(PANEL + cards + LAST)
    assert "coming from `Vibration`" in finding.message
    assert finding.related[-1].spot.text == "Ice"


@pytest.mark.parametrize("left", ["", "  Pump ... OFF if quiet\n"])
def test_not_as_parked(left: str) -> None:
    last = LAST.replace("  Pump ... OFF\n", left)
    (rule, _) = _found("", last)[0]
    assert rule == "not-as-parked"


def test_cards_that_end_before_shutdown_leave_nothing_unparked() -> None:
    assert _found("normal Cruise\n  when level\n  Heat ... ON\n", "") == []


def test_called_on_again_in_a_later_phase() -> None:
    again = "normal Before landing\n  when joining\n  Pump ... ON{mark}\n"
    assert _found(again.replace("{mark}", "")) == [("on-already", "Pump ... ON")]
    assert _found(again.replace("{mark}", " if quiet")) == []
    assert "on-already" not in [rule for rule, _ in _found(again.replace("{mark}", " [critical]"))]
    same = "normal Engine start\n  phase before start\n  when clear\n  Pump ... ON\n"
    assert _found(same) == []


def test_one_fault_of_the_text_gives_no_finding_of_the_run() -> None:
    last = LAST.replace("Master ... OFF", "Master ... OF")
    assert [rule for rule, _ in _found("", last)] == ["unknown-position"]
