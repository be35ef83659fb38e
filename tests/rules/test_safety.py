"""Landing early, warnings before their steps, heights told apart, which of two is shut down; and cards that agree."""

from __future__ import annotations

import pytest

from tests.rules.pipeline import findings_of, said

MINE = {
    "landing-late", "notice-late", "one-drill-any-height", "unidentified-shut-down",
    "amplified-differs", "two-positions", "order-differs",
}  # fmt: skip


def _found(text: str) -> list[tuple[str, str]]:
    return [pair for pair in said(findings_of(text)) if pair[0] in MINE]


def _card(title: str, *lines: str, kind: str = "emergency", when: str = "when told") -> str:
    return f"{kind} {title}\n  {when}\n" + "".join(f"  {line}\n" for line in lines) + "\n"


# ---------------------------------------------------------------- landing

ITEMS = tuple(f"Breaker {number} .... OUT" for number in range(1, 12))


@pytest.mark.parametrize(
    ("before", "after", "found"),
    [(0, 11, False), (2, 9, False), (3, 8, False), (4, 7, True), (11, 0, True), (2, 0, False), (3, 0, True)],
)
def test_how_late_a_landing_may_come(before: int, after: int, found: bool) -> None:
    """TSB A98H0003: on both smoke lists the landing stood last. A third of twelve items are four, and three always."""
    card = _card("Cabin fire", *ITEMS[:before], "Land .... AT ONCE", *ITEMS[:after], "end")
    assert _found(card) == ([("landing-late", "Land .... AT ONCE")] if found else [])


@pytest.mark.parametrize(
    "line",
    ["Heading .... NEAREST AIRFIELD", "Descent .... AT ONCE", "Divert .... NEAREST RUNWAY", "Field .... CHOSEN"],
)
def test_what_leads_to_the_ground(line: str) -> None:
    assert _found(_card("Smoke in the cockpit", line, *ITEMS, "end")) == []


def test_lights_and_wheels_are_no_landing() -> None:
    text = _card("Smoke in the cockpit", "Landing light .... OFF", "Landing gear .... UP", *ITEMS[:3], "end")
    assert _found(text) == [("landing-late", "Smoke in the cockpit")]


def test_memory_items_are_not_counted_and_may_be_the_landing() -> None:
    memory = ("memory", "  Vents .... OPEN", "  Heat .... CLOSED", "  Switches .... OFF")
    assert _found(_card("Cabin fire", *memory, "Land .... AT ONCE", *ITEMS[:5], "end")) == []
    assert _found(_card("Cabin fire", *memory, "  Land .... AT ONCE", *ITEMS, "end")) == []


def test_a_card_for_the_ground_need_not_land() -> None:
    assert _found(_card("Engine fire on the ground", *ITEMS, "end", when="during engine start, taxi")) == []
    assert _found(_card("Brake fire", *ITEMS, "end", when="during after landing")) == []
    assert _found(_card("Fire", *ITEMS, "end")) == [], "where it says neither, it may be for the ground"


def test_where_a_line_could_not_be_read_nothing_is_said() -> None:
    assert _found(_card("Cabin fire", *ITEMS[:5], "and now go down to the ground as fast as it is safe.", "end")) == []


def test_a_card_that_goes_on_to_another_in_time_is_early() -> None:
    other = _card("Electrical failure", "Land .... NEAREST AIRFIELD", "end")
    assert _found(_card("Smoke in the cockpit", *ITEMS[:2], "go to Electrical failure") + other) == []


# ---------------------------------------------------------------- notices

EQUIPMENT = "equipment\n  Starter .... OFF, ENGAGED\n  Fuel pump .... OFF, ON\n  Flaps .... UP, 10 deg, 40 deg\n\n"


@pytest.mark.parametrize(
    ("lines", "found"),
    [
        (("caution It overheats.", "Starter .... ENGAGED"), False),
        (("Starter .... ENGAGED", "caution The starter overheats.", "Lamp .... OUT"), True),
        (("Starter .... ENGAGED", "note The starter overheats.", "Lamp .... OUT"), False),
        (("Starter .... ENGAGED", "caution The starter overheats.", "Starter .... OFF"), False),
        (("Starter .... ENGAGED", "caution With the starter engaged the lamp is lit.", "Lamp .... LIT"), False),
        (("Lamp .... OUT", "warning Stay clear."), True),
        (("Lamp .... OUT", "warning Stay clear.", "note It is hot."), True),
        (("Lamp .... OUT", "warning Stay clear.", "group Next", "  Starter .... OFF"), False),
        (("if it burns", "  Lamp .... OUT", "  warning Stay clear.", "Starter .... OFF"), False),
        (("if it burns", "  warning Stay clear.", "  if it still burns", "    Starter .... OFF"), False),
        (("if it burns", "  Lamp .... OUT", "  warning Stay clear."), True),
    ],
)
def test_a_warning_and_its_step(lines: tuple[str, ...], found: bool) -> None:
    """Loose-leaf manual guidance: warnings and cautions come before what they bear on, notes may come after."""
    rules = [rule for rule, _ in _found(EQUIPMENT + _card("Engine start", *lines, kind="normal"))]
    assert rules == (["notice-late"] if found else [])


def test_before_a_go_to_a_warning_is_in_time_and_before_an_end_it_is_not() -> None:
    landing = _card("Forced landing", "Belts .... TIGHT", "end")
    gone = _card("Rough engine", "Lamp .... OUT", "warning It may stop.", "go to Forced landing", kind="abnormal")
    assert _found(gone + landing) == []
    ended = _card("Rough engine", "Lamp .... OUT", "warning It may stop.", "end", kind="abnormal")
    assert _found(ended + landing) == [("notice-late", "It may stop.")]


# ---------------------------------------------------------------- engine failures


def test_one_card_for_all_heights() -> None:
    """NTSB A-10-66: a list for low height; A-10-68: gates."""
    body = ("Airspeed .... BEST GLIDE", "Field .... CHOSEN", "end")
    everywhere = "when it stops\n  during takeoff, climb, cruise"
    assert _found(_card("Engine failure", *body, when=everywhere)) == [("one-drill-any-height", "Engine failure")]
    gate = ("if below 700 ft", "  Nose .... DOWN", *body)
    assert _found(_card("Engine failure", *gate, when=everywhere)) == []
    low = _card("Engine failure after takeoff", *body)
    assert _found(_card("Engine failure", *body, when=everywhere) + low) == []
    assert _found(low) == [], "what is missing is said by `missing-emergency`"


# ---------------------------------------------------------------- two alike


@pytest.mark.parametrize(
    ("names", "line", "found"),
    [
        (("Left fuel pump", "Right fuel pump"), "Left fuel pump .... OFF", True),
        (("Fuel pump 1", "Fuel pump 2"), "Fuel pump 2 .... OFF", True),
        (("Bus A", "Bus B"), "Bus A .... OFF", True),
        (("Main bus", "Avionics bus"), "Avionics bus .... OFF", False),
        (("Left fuel pump", "Left brake"), "Left fuel pump .... OFF", False),
        (("Left fuel pump", "Right fuel pump"), "Left fuel pump .... ON", False),
        (("Left fuel pump", "Right fuel pump"), "Left fuel pump + Right fuel pump .... OFF", False),
    ],
)
def test_which_of_two_is_shut_down(names: tuple[str, str], line: str, found: bool) -> None:
    """Kegworth 1989, as told in a study of memory items: a drill known by heart, done to the wrong engine."""
    equipment = "equipment\n" + "".join(f"  {name} .... OFF, ON\n" for name in names) + "\n"
    card = _card("Rough engine", "memory", f"  {line}", "Land .... NEAREST AIRFIELD", "end")
    assert _found(equipment + card) == ([("unidentified-shut-down", line)] if found else [])
    known = card.replace("  memory\n", "  memory\n    Failed side .... CONFIRMED\n")
    assert _found(equipment + known) == []
    below = card.replace("  memory\n", "").replace(f"    {line}", f"  {line}")
    assert _found(equipment + below) == [], "only what is done from memory"


# ---------------------------------------------------------------- cards that agree


@pytest.mark.parametrize(
    ("explained", "found"),
    [
        (("Vents .... OPEN", "Heat .... CLOSED"), []),
        (("Vents .... open", "Lamp .... OUT"), []),
        (("Lamp .... OUT, SEEN", "Belts .... TIGHT"), []),
        (("Heat .... CLOSED", "Vents .... OPEN"), ["Vents .... OPEN"]),
        (("Belts .... TIGHT", "Vents .... OPEN", "Heat .... CLOSED", "Lamp .... OUT"), ["Belts .... TIGHT"]),
        (("Vents .... CLOSED",), ["Vents .... CLOSED"]),
        (("Belts .... TIGHT", "Vents .... SHUT"), ["Vents .... SHUT"]),
    ],
)
def test_amplified_text_says_what_the_card_says(explained: tuple[str, ...], found: list[str]) -> None:
    """Transport Canada single-crew SOP template 1.9: one item on the card is one item in the book, in one order."""
    lines = [line for item in explained for line in (f"  {item}", "    So it is.")]
    items = ("Vents .... OPEN", "Heat .... CLOSED", "Lamp .... OUT", "Belts .... TIGHT", "end")
    card = _card("Odd smell", *items, "amplified", *lines, kind="abnormal")
    assert _found(card) == [("amplified-differs", line) for line in found]


FLAPS = EQUIPMENT + _card("Before takeoff", "Flaps .... 10 deg", kind="normal")


@pytest.mark.parametrize(
    ("title", "lines", "found"),
    [
        ("Line-up", ("Flaps .... 40 deg",), True),
        ("Line-up", ("Flaps .... 10 deg",), False),
        ("Line-up", ("Flaps .... 40 deg if the runway is short, otherwise 10 deg",), False),
        ("Line-up", ("if the runway is short", "  Flaps .... 40 deg"), False),
        ("Line-up", ("method read and do", "Flaps .... 40 deg"), False),
        ("Climb", ("Flaps .... UP",), False),
        ("Lineup, short runway", ("Flaps .... 40 deg",), False),
    ],
)
def test_two_cards_of_one_phase(title: str, lines: tuple[str, ...], found: bool) -> None:
    """Common practice, no source."""
    text = FLAPS + _card(title, *lines, kind="normal")
    assert _found(text) == ([("two-positions", "Flaps .... 40 deg")] if found else [])


def test_flaps_come_down_step_by_step_and_are_not_taken_back() -> None:
    down = [
        _card(title, f"Flaps .... {flaps}", kind="normal")
        for title, flaps in (("Downwind", "10 deg"), ("Final", "40 deg"))
    ]
    assert _found(EQUIPMENT + "".join(down)) == []
    back = [
        _card(title, f"Flaps .... {flaps}", kind="normal")
        for title, flaps in (("Downwind", "40 deg"), ("Final", "10 deg"))
    ]
    assert _found(EQUIPMENT + "".join(back)) == [("two-positions", "Flaps .... 10 deg")]


def test_the_order_of_two_fires() -> None:
    """NASA CR-177549 appendix A(8), that a list is a flow; that five shared items make one flow is our own measure."""
    items = [f"{name} .... OFF" for name in ("Mixture", "Selector", "Pump", "Magnetos", "Master")]
    ground = _card("Engine fire on the ground", *items, "end")
    turned = [*items[:3], items[4], items[3]]
    found = _found(ground + _card("Engine fire in flight", "Land .... AT ONCE", *turned, "end"))
    assert found == [("order-differs", "Master .... OFF")]
    assert _found(ground + _card("Engine fire in flight", "Land .... AT ONCE", *turned[1:], "end")) == [], "four"
    apart = ["group First", f"  {items[4]}", "group Then", *(f"  {item}" for item in items[:4])]
    assert _found(ground + _card("Engine fire in flight", "Land .... AT ONCE", *apart, "end")) == [], "in groups"
