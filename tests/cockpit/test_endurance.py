"""How long the battery lasts.

Outside check: the emergency-power example of an avionics installation manual (190-02246-10 rev. 11, page 3-38): 35 Ah,
75 per cent of it; 5 minutes of 43.5 A, a landing of 10 minutes with 48.1 A, 34.0 A between: 40.8 minutes.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from dotleader.cockpit.endurance import Endurance, Lasting, endurances, lasting
from dotleader.cockpit.running import run
from dotleader.rules.thresholds import BY_NAME
from tests.handbook.texts import resolved

SHARE = Fraction(BY_NAME["battery-too-small"].default, 100)


def test_the_example_of_the_installation_manual() -> None:
    capacity = 35 * 60 * SHARE
    assert capacity == 1575
    found = lasting(capacity, (Fraction(5), Fraction("43.5")), Fraction("34.0"), (Fraction(10), Fraction("48.1")))
    assert found.minutes == 5 + Fraction("876.5") / 34 + 10
    assert f"{float(found.minutes):.1f}" == "40.8"
    assert found.reaches(Fraction(30))
    assert not found.reaches(Fraction(41))


def test_a_battery_that_is_flat_before_the_landing_is_over_has_no_minutes() -> None:
    found = lasting(Fraction(600), (Fraction(5), Fraction(60)), Fraction(10), (Fraction(10), Fraction(31)))
    assert found == Lasting(None)
    assert not found.reaches(Fraction(0))


def test_a_battery_on_which_nothing_is_left_lasts() -> None:
    assert lasting(Fraction(600), (Fraction(5), Fraction(10)), Fraction(0), (Fraction(10), Fraction(0))).reaches(
        Fraction(1000)
    )


BOOK = """\
electrical from unverified
  alternator ... 60 A
    needs ... Alternator ON
    when it fails ... Alternator failure
  battery ... 35 Ah
    needs ... Master ON

equipment
  Master ... OFF, ON
    parked ... OFF
  Alternator ... OFF, ON
    parked ... OFF
    needs ... Master ON
  Bus ... OFF, ON
    parked ... OFF
    needs ... Master ON
  Cruise loads ... OFF, ON
    parked ... OFF
    needs ... Bus ON
    draws ... 34 A
  Extra loads ... OFF, ON
    parked ... OFF
    draws ... 9.5 A
  Landing loads ... OFF, ON
    parked ... OFF
    draws ... 14.1 A

normal Engine start
  Master ... ON
  Alternator + Bus ... ON
  Cruise loads + Extra loads ... ON

normal Cruise
  Throttle ... BACK

normal Before landing
  Landing loads ... ON

normal Shutdown
  Landing loads + Extra loads + Cruise loads ... OFF
  Alternator + Bus ... OFF
  Master ... OFF

abnormal Alternator failure
  when the light is on
  {failure}
"""

SHED = "Alternator ... OFF\n  Extra loads ... OFF\n  end"


def worst(failure: str = SHED, **changes: str) -> Endurance:
    text = BOOK.format(failure=failure)
    for old, new in changes.items():
        text = text.replace(old.replace("_", " "), new)
    handbook, findings = resolved(text)
    assert not findings, findings
    (found,) = endurances(handbook, run(handbook), SHARE)
    return found


def minutes(found: Endurance) -> float | None:
    return None if found.lasting.minutes is None else round(float(found.lasting.minutes), 1)


def test_the_same_example_from_the_cards() -> None:
    found = worst()
    assert (found.before.amps, found.shed.amps, found.landing.amps) == (Fraction("43.5"), 34, Fraction("48.1"))
    assert minutes(found) == 40.8


def test_what_to_turn_off_next_and_what_it_buys() -> None:
    found = worst("Alternator ... OFF\n  end")
    assert found.shed.amps == Fraction("43.5")
    offers = {offer.control: offer.minutes for offer in found.offers}
    # The bus takes with it what needs it. The master switch, by which the battery feeds, is not offered.
    assert list(offers) == ["bus", "cruise loads", "extra loads"]
    assert offers["bus"] == offers["cruise loads"]
    left = Fraction(1575) - 5 * Fraction("43.5") - 10 * Fraction("57.6")
    assert offers["extra loads"] == left / 34 - left / Fraction("43.5")


def test_the_worst_way_through_a_card_counts() -> None:
    always = worst("Alternator ... OFF\n  Extra loads ... OFF\n  end")
    maybe = worst("Alternator ... OFF\n  if it is dark\n    Extra loads ... OFF\n  end")
    assert maybe.shed.amps == Fraction("43.5")
    assert maybe.lasting.rank < always.lasting.rank


def test_an_end_at_which_the_alternator_works_again_does_not_count() -> None:
    found = worst(
        "Alternator ... OFF then ON\n  if the light is out\n    end\n  otherwise\n    Alternator ... OFF\n"
        "    Extra loads ... OFF\n    end"
    )
    assert minutes(found) == 40.8


def test_a_card_that_leaves_the_alternator_on_counts_by_the_end_with_the_least_load() -> None:
    found = worst("if the light is out\n    end\n  otherwise\n    Extra loads ... OFF\n    end")
    assert minutes(found) == 40.8


def test_cards_that_it_leads_to_are_done_as_well() -> None:
    found = worst("Alternator ... OFF\n  go to Shed\n\nabnormal Shed\n  when told to\n  Extra loads ... OFF\n  end")
    assert minutes(found) == 40.8


def test_a_circle_of_cards_comes_to_an_end() -> None:
    found = worst(
        "Alternator ... OFF\n  go to Shed\n\nabnormal Shed\n  when told to\n  Extra loads ... OFF\n"
        "  go to Alternator failure"
    )
    assert minutes(found) == 40.8


def test_too_small_a_battery_has_no_minutes() -> None:
    assert minutes(worst(**{"35 Ah": "10 Ah"})) is None


@pytest.mark.parametrize(
    "gone", ["  battery ... 35 Ah\n    needs ... Master ON\n", "    when it fails ... Alternator failure\n"]
)
def test_nothing_is_asked_where_not_everything_is_declared(gone: str) -> None:
    handbook, _ = resolved(BOOK.format(failure=SHED).replace(gone, ""))
    assert endurances(handbook, run(handbook), SHARE) == ()


def test_what_the_normal_cards_turn_on_again_for_the_landing_and_what_it_costs() -> None:
    found = worst()
    assert [offer.control for offer in found.for_landing] == ["landing loads"]
    assert found.for_landing[0].minutes == 10 * Fraction("14.1") / 34


def test_of_many_ways_to_fly_the_heaviest_counts() -> None:
    """Ten loads that are each on or off: a thousand states, of which all but one have less on than another."""
    lamps = [f"Lamp {number}" for number in range(10)]
    equipment = "".join(f"  {lamp} ... OFF, ON\n    parked ... OFF\n    draws ... 1 A\n" for lamp in lamps)
    items = "".join(f"  {lamp} ... ON if dark, otherwise OFF\n" for lamp in lamps)
    text = BOOK.format(failure=SHED).replace("normal Cruise\n", f"normal Cruise\n{items}")
    handbook, _ = resolved(text.replace("equipment\n", f"equipment\n{equipment}"))
    (found,) = endurances(handbook, run(handbook), SHARE)
    assert (found.before.amps, found.shed.amps) == (Fraction("53.5"), 44)
