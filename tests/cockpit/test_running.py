"""The cards worked through: what the words of the language do to the controls."""

from __future__ import annotations

import pytest

from dotleader.cockpit.running import run
from dotleader.cockpit.timeline import Run
from tests.cockpit.runs import card, ran, stands, told
from tests.handbook.texts import resolved

PANEL = """\
equipment
  Master ....... OFF, ON
    parked ..... OFF
  Pump ......... OFF, ON
    parked ..... OFF
    needs ...... Master ON
  Heat ......... OFF, ON
    parked ..... OFF
  Cock ......... OFF, LEFT, RIGHT
    parked ..... OFF
    means ...... EITHER TANK: LEFT or RIGHT
    means ...... OTHER TANK: the other of LEFT or RIGHT
  Key .......... OFF, BOTH, START
    parked ..... OFF
    springs .... START to BOTH
    turned START .... Engine RUNNING
    turned OFF ...... Engine STOPPED
  Engine ....... STOPPED, RUNNING
    parked ..... STOPPED
  Throttle ..... CLOSED to FULL
    parked ..... CLOSED
  Altimeter .... any hPa
  Lamp ......... OFF, ON
    parked ..... ON
  Starter ...... OFF, ON
    parked ..... OFF
    springs .... ON to OFF
    turned ON .. Key START
    turned OFF .. Lamp OFF

"""


def on_a_card(lines: str) -> list[str]:
    """What the items of a single card meet, from the parked aircraft."""
    body = "".join(f"  {line}\n" for line in lines.splitlines())
    done = ran(f"{PANEL}normal Before start\n  when seated\n{body}")
    return told(card(done, "Before start"))


@pytest.mark.parametrize(
    ("lines", "met"),
    [
        ("Heat ... ON", ["Heat: heat OFF > ON"]),
        ("Heat ... OFF", ["Heat: heat is OFF"]),
        ("Heat ... OFF then ON", ["Heat: heat is OFF first, heat OFF > ON"]),
        ("Heat ... ON if damp, otherwise OFF", ["Heat: heat OFF > ON?, heat is OFF?"]),
        ("Heat ... ON if damp\nHeat ... OFF", ["Heat: heat OFF > ON?", "Heat: heat ON > OFF?, heat is OFF?"]),
        ("Heat ... STAYS OFF", ["Heat"]),
        ("Heat ... STAYS ON", ["Heat: heat is not ON but OFF"]),
        ("Pump ... ON", ["Pump: pump cannot be ON, pump OFF > ON"]),
        ("Pump ... OFF", ["Pump: pump is OFF"]),
        ("Master + Pump ... ON", ["Master + Pump: master OFF > ON, pump OFF > ON"]),
        ("Pump + Master ... ON", ["Pump + Master: pump cannot be ON, pump OFF > ON, master OFF > ON"]),
        ("Cock ... EITHER TANK", ["Cock: cock OFF > LEFT?, cock OFF > RIGHT?"]),
        ("Cock ... LEFT\nCock ... OTHER TANK", ["Cock: cock OFF > LEFT", "Cock: cock LEFT > RIGHT"]),
        ("Cock ... OTHER TANK", ["Cock: cock OFF > LEFT?, cock OFF > RIGHT?"]),
        (
            "Key ... START",
            ["Key: key OFF > START, engine STOPPED > RUNNING by key, key START > BOTH by key"],
        ),
        (
            "Key ... START\nKey ... OFF",
            [
                "Key: key OFF > START, engine STOPPED > RUNNING by key, key START > BOTH by key",
                "Key: key BOTH > OFF, engine RUNNING > STOPPED by key",
            ],
        ),
        (
            "Throttle ... ONE QUARTER\nThrottle ... FULL, slowly",
            ["Throttle: throttle CLOSED > ONE QUARTER", "Throttle: throttle ONE QUARTER > FULL"],
        ),
        ("Altimeter ... FIELD ELEVATION", ["Altimeter: altimeter - > FIELD ELEVATION"]),
        (
            "Altimeter ... QNH\nAltimeter ... STAYS AT QNH\nAltimeter ... QNH",
            ["Altimeter: altimeter - > QNH", "Altimeter", "Altimeter: altimeter is QNH"],
        ),
        (
            "Throttle ... ONE QUARTER then CLOSED",
            ["Throttle: throttle CLOSED > ONE QUARTER, throttle ONE QUARTER > CLOSED"],
        ),
        (
            "Altimeter ... QNH\nAltimeter ... QNH, READ ALOUD\nAltimeter ... 1,013 hPa, SET",
            ["Altimeter: altimeter - > QNH", "Altimeter: altimeter is QNH", "Altimeter: altimeter QNH > 1,013 hPa"],
        ),
        (
            "Altimeter ... QNH if known, otherwise FIELD ELEVATION\nAltimeter ... STANDARD, if above 5,000 ft",
            [
                "Altimeter: altimeter - > QNH?, altimeter - > FIELD ELEVATION?",
                "Altimeter: altimeter QNH > STANDARD?, altimeter FIELD ELEVATION > STANDARD?",
            ],
        ),
        (
            "Throttle ... HALF, STEP BY STEP\nThrottle ... HALF, 25 TURNS",
            ["Throttle: throttle CLOSED > HALF", "Throttle: throttle HALF > HALF, 25 TURNS"],
        ),
        ("Master ... ON, when awake", ["Master: master OFF > ON"]),
        ("Master ... ON, if awake", ["Master: master OFF > ON?"]),
        (
            "Master + Pump ... ON if dark, otherwise OFF\nPump ... STAYS OFF",
            [
                "Master + Pump: master OFF > ON?, pump OFF > ON?, master is OFF?, pump is OFF?",
                "Pump: pump is not OFF but ON?",
            ],
        ),
        ("Cock ... LEFT then OTHER TANK", ["Cock: cock OFF > LEFT, cock LEFT > RIGHT"]),
        (
            "Starter ... ON",
            [
                "Starter: starter OFF > ON, key OFF > START by starter, engine STOPPED > RUNNING by key, "
                "starter ON > OFF by starter, lamp ON > OFF by starter, key START > BOTH by key",
            ],
        ),
        (
            "if Cock LEFT\n  Heat ... ON\nor if the cock is OFF\n  Master ... ON\notherwise\n  Pump ... ON",
            [
                "Master: master OFF > ON",
            ],
        ),
        (
            "Cock ... EITHER TANK\nif Cock LEFT\n  Heat ... ON\notherwise\n  Master ... ON\nCock ... LEFT",
            [
                "Cock: cock OFF > LEFT?, cock OFF > RIGHT?",
                "Heat: heat OFF > ON",
                "Master: master OFF > ON",
                "Cock: cock is LEFT?, cock RIGHT > LEFT?",
            ],
        ),
        ("if damp\n  Heat ... ON\n  end\nHeat ... STAYS OFF", ["Heat: heat OFF > ON", "Heat"]),
        (
            "repeat until warm\n  Cock ... OTHER TANK",
            [
                "Cock: cock OFF > LEFT?, cock OFF > RIGHT?, cock LEFT > RIGHT?, cock RIGHT > LEFT?",
            ],
        ),
        (
            "one of\n  Cock ... LEFT\n  if damp\n    Heat ... ON\nCock ... LEFT",
            [
                "Cock: cock OFF > LEFT",
                "Heat: heat OFF > ON",
                "Cock: cock is LEFT?, cock OFF > LEFT?",
            ],
        ),
        ("if Heat ON\n  Master ... ON\nMaster ... OFF", ["Master: master is OFF"]),
        ("if the heat is not ON\n  Master ... ON\notherwise\n  Cock ... LEFT", ["Master: master OFF > ON"]),
        ("if damp\n  Heat ... ON\nif Heat ON\n  Master ... ON", ["Heat: heat OFF > ON", "Master: master OFF > ON"]),
        (
            "one of\n  Heat ... ON\n  Master ... ON\nHeat ... OFF",
            ["Heat: heat OFF > ON", "Master: master OFF > ON", "Heat: heat ON > OFF?, heat is OFF?"],
        ),
        (
            "repeat until it runs\n  Heat ... OFF then ON",
            ["Heat: heat is OFF first?, heat OFF > ON, heat ON > OFF?"],
        ),
        (
            "Heat ... ON [with de-icing]\nHeat ... OFF [without de-icing]\nMaster ... ON [with de-icing]",
            ["Heat: heat OFF > ON?", "Heat: heat is OFF?", "Master: master OFF > ON?"],
        ),
    ],
)
def test_what_an_item_does(lines: str, met: list[str]) -> None:
    assert on_a_card(lines) == met


def test_an_option_is_fitted_for_the_whole_flight_or_not_at_all() -> None:
    done = ran(
        PANEL
        + "normal Engine start\n  when level\n  Heat ... ON [with de-icing]\n  Master ... ON [without de-icing]\n"
        + "normal Descent\n  when down\n  Cock ... LEFT [with de-icing]\n"
    )
    after = card(done, "Descent").after
    assert stands(done, after, "heat", "master", "cock") == {("ON", "OFF", "LEFT"), ("OFF", "ON", "OFF")}


def test_effects_in_a_circle_come_to_an_end() -> None:
    done = ran(
        "equipment\n  A ... 1, 2\n    parked ... 1\n    turned 2 ... B 2\n  B ... 1, 2\n    parked ... 1\n"
        "    turned 2 ... A 1\nnormal Preflight\n  when cold\n  A ... 2\n"
    )
    assert told(card(done, "Preflight")) == ["A: a 1 > 2, b 1 > 2 by a"]


def test_cards_go_in_the_order_of_the_phases_and_each_begins_where_the_one_before_ends() -> None:
    done = ran(
        PANEL
        + "normal Shutdown\n  when parked\n  Pump ... OFF\n  Master ... OFF\n"
        + "normal Engine start\n  when clear\n  Master ... ON\n  Pump ... ON\n"
    )
    assert [one.card.title for one in done.main] == ["Engine start", "Shutdown"]
    assert told(done.main[1]) == ["Pump: pump ON > OFF", "Master: master ON > OFF"]
    assert done.main[1].after == (done.cockpit.parked,)


COLD = "normal Preflight\n  when cold\n  Seats ... CLEAN\n"
CALLED = (
    PANEL
    + COLD
    + """\
normal Climb
  when airborne
  Master ... ON
  Heat ..... ON
normal Cruise
  when level
  Heat ..... OFF
  Pump ..... ON
"""
)


def test_a_card_off_the_line_begins_after_each_item_of_the_phases_in_which_it_can_come() -> None:
    done = ran(CALLED + "abnormal Pump trouble\n  when it is quiet\n  during cruise\n  Pump ... OFF\n  end\n")
    one = card(done, "Pump trouble")
    # the pump, the master switch that it needs, and nothing else: on and off, with the master switch on
    assert set(one.before) == {("ON", "OFF"), ("ON", "ON")}
    assert told(one) == ["Pump: pump is OFF?, pump ON > OFF?"]


def test_a_card_off_the_line_is_met_at_the_beginning_of_a_phase_only_where_it_says_so() -> None:
    done = ran(CALLED + "abnormal Pump trouble\n  when quiet\n  during climb\n  Pump ... ON\n  end\n")
    ((line,),) = [one.lines for one in done.called]
    (unmet,) = (met for met in line.met if type(met.what).__name__ == "Unmet")
    assert unmet.origin.only_begun


def test_a_go_to_carries_the_state_into_the_next_card() -> None:
    done = ran(
        CALLED
        + "emergency First\n  when it burns\n  during cruise\n  Master ... OFF\n  go to Second\n"
        + "emergency Second\n  when told\n  during cruise\n  Pump ... OFF\n  end\n"
    )
    unmet = [met for line in card(done, "Second").lines for met in line.met if type(met.what).__name__ == "Unmet"]
    assert [met.origin.came_by is not None and met.origin.came_by[1] for met in unmet] == ["first"]


def test_cards_that_go_to_each_other_come_to_an_end() -> None:
    done = ran(
        CALLED
        + "emergency First\n  when it burns\n  Heat ... ON\n  go to Second\n"
        + "emergency Second\n  when told\n  Heat ... OFF\n  go to First\n"
    )
    assert told(card(done, "Second")) == ["Heat: heat is OFF?, heat ON > OFF?"]
    assert not card(done, "Second").after


def test_a_go_to_ahead_on_the_main_line_is_the_main_line() -> None:
    done = ran(
        PANEL
        + COLD
        + "normal Climb\n  when up\n  if all is well\n    go to Descent\n  Heat ... ON\n"
        + "normal Cruise\n  when level\n  Master ... ON\n"
        + "normal Descent\n  when down\n  Cock ... LEFT\n"
    )
    before = card(done, "Descent").before
    assert stands(done, before, "heat", "master") == {("ON", "ON"), ("OFF", "OFF")}


def test_a_state_that_a_go_to_brings_to_a_card_is_one_in_which_its_phase_begins() -> None:
    done = ran(
        PANEL
        + COLD
        + "normal Taxi\n  when clear\n  Heat ... ON\n  go to Cruise\n"
        + "normal Cruise\n  when level\n  Seats ... UPRIGHT\n"
        + "emergency Fire\n  when it burns\n  during cruise\n  Heat ... OFF\n  end\n"
    )
    assert told(card(done, "Fire")) == ["Heat: heat ON > OFF"]
    led = ran(
        PANEL
        + COLD
        + "normal Taxi\n  when clear\n  go to Cruise\n"
        + "normal Cruise\n  when level\n  go to Fire\n"
        + "emergency Smoke\n  when it smokes\n  during cruise\n  Heat ... ON\n  end\n"
        + "emergency Fire\n  when it burns\n  during taxi\n  Heat ... ON\n  end\n"
    )
    assert told(card(led, "Smoke")) == ["Heat: heat OFF > ON"]


def test_a_side_line_begins_where_the_card_before_it_ends() -> None:
    done = ran(
        CALLED
        + "normal On the water\n  after Cruise\n  when afloat\n  Pump ... OFF\n"
        + "normal At the pier\n  after On the water\n  when tied up\n  Master ... OFF\n"
    )
    assert [told(one) for one in done.side] == [["Pump: pump ON > OFF"], ["Master: master ON > OFF"]]


def test_too_many_states_are_said() -> None:
    many = "".join(f"  C{at} ... A, B\n    parked ... A\n" for at in range(14))
    items = "".join(f"  C{at} ... B if damp\n" for at in range(14))
    done = ran(f"equipment\n{many}normal Preflight\n  when cold\n{items}")
    assert [spot.text.split()[0] for spot in done.full] == ["C13"]
    assert len(card(done, "Preflight").after) == 10_000


def many_ways(lines: str) -> Run:
    """A run of one card over fifteen controls that each go one of two ways."""
    controls = "".join(f"  C{at} ... A, B, C\n    parked ... A\n    means ... EITHER: B or C\n" for at in range(15))
    return ran(f"equipment\n{controls}normal Preflight\n  when cold\n{lines}")


def test_one_item_with_more_ways_than_are_followed_is_said() -> None:
    done = many_ways(f"  {' + '.join(f'C{at}' for at in range(15))} ... EITHER\n")
    assert [spot.text.split()[0] for spot in done.full][:1] == ["C0"]


def test_a_loop_with_more_states_than_are_followed_comes_to_an_end_and_is_said() -> None:
    items = "".join(f"      C{at} ... {to}\n" for at in range(15) for to in "BC")
    done = many_ways(f"  repeat until done\n    one of\n{items}")
    assert "repeat until done" in {spot.text.splitlines()[0] for spot in done.full}


def test_a_card_called_for_in_more_states_than_are_followed_is_said() -> None:
    items = "".join(f"  C{at} ... EITHER\n" for at in range(15))
    back = "".join(f"  C{at} ... A\n" for at in range(15))
    done = many_ways(f"{items}emergency Fire\n  when it burns\n  during preflight\n{back}  end\n")
    assert card(done, "Fire").card.spot in done.full


def test_branches_share_what_follows_them() -> None:
    body = "".join(f"  if it is {at}\n    Heat ... ON\n  otherwise\n    Heat ... OFF\n" for at in range(30))
    done = ran(f"{PANEL}normal Preflight\n  when cold\n{body}  Heat ... OFF\n")
    assert max(line.states for line in card(done, "Preflight").lines) == 2


def test_nobody_knows_how_the_cockpit_stands_where_the_cards_begin_in_flight() -> None:
    done = ran(PANEL + "normal Cruise\n  when level\n  Pump ... ON\n")
    assert told(card(done, "Cruise")) == ["Pump: pump - > ON"]


def test_a_response_that_was_not_understood_puts_a_control_nobody_knows_where() -> None:
    text = f"{PANEL}{COLD}normal Taxi\n  when clear\n  Heat ... ONN\n  Heat ... ON\n"
    handbook, findings = resolved(text)
    assert [finding.rule for finding in findings] == ["unknown-position"]
    assert told(card(run(handbook), "Taxi")) == ["Heat: heat OFF >", "Heat: heat - > ON"]


def test_a_card_may_begin_after_one_that_is_off_the_main_line() -> None:
    done = ran(
        CALLED
        + "abnormal Pump trouble\n  when quiet\n  during cruise\n  Pump ... OFF\n  end\n"
        + "normal On the ground\n  after Pump trouble\n  when landed\n  Pump ... ON\n"
    )
    assert told(card(done, "On the ground")) == ["Pump: pump OFF > ON"]
