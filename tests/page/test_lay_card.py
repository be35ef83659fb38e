"""Where items stand on a laid-out card: columns, leaders, sizes, numbers, white."""

from __future__ import annotations

from itertools import pairwise

import pytest

from dotleader.handbook.cards import Kind, Unread
from dotleader.page.drawn import Font, Ink, Line, mm, pt
from dotleader.page.laid import LaidCard
from dotleader.page.lay.lay_card import lay_card
from dotleader.page.type.metrics import smallest_legible, width
from dotleader.source.record import replace

from .building import (
    FIRE,
    FRAME,
    NO_SYMBOLS,
    SPOT,
    card,
    group,
    item,
    items,
    laid,
    lines,
    memory,
    phrase,
    text,
    texts,
)


def leaders(one: LaidCard) -> list[Line]:
    """Dots, and the solid lines of critical items: level lines that are not rules."""
    return [line for line in lines(one) if line.dots or line.width == pt(1.6)]


def test_responses_stand_in_one_column_on_a_grid_of_4_mm() -> None:
    one = laid(item("Trim", "SET"), item("Fuel selector", "OTHER TANK"), item("Fuel pump", "ON"))
    columns = {
        found.x for found in texts(one) if found.font is Font.BOLD and found.string in ("SET", "ON", "OTHER TANK")
    }
    assert columns == {mm(50)}  # 38 and three steps: as far left as `Fuel selector` allows


def test_a_leader_is_between_four_dots_and_40_mm_long() -> None:
    """A wide gap between challenge and response causes slips to the next line (NASA CR-177605, 3.7)."""
    one = laid(
        *(item(name, "ON") for name in ("Oil", "Trim", "Mixture", "Fuel selector", "Alternator circuit breaker"))
    )
    for line in leaders(one):
        (first, y), (last, level) = line.points
        assert y == level
        assert mm(6) <= last - first <= mm(40) - mm(0.6)


def test_all_dots_stand_on_one_grid_of_2_mm() -> None:
    for line in leaders(lay_card(FIRE, FRAME, NO_SYMBOLS)):
        if line.dots:
            assert line.dots == mm(2)
            assert line.width == mm(0.6)
            assert all(x % mm(2) == 0 for x, _ in line.points)


def test_a_leader_begins_at_least_2_2_mm_after_its_challenge_and_ends_before_the_column() -> None:
    one = laid(item("Fuel selector", "OTHER TANK"))
    challenge, response = text(one, "Fuel selector"), text(one, "OTHER TANK")
    ((first, _), (last, _)) = leaders(one)[0].points
    assert first - mm(0.3) - (challenge.x + width("Fuel selector", Font.REGULAR, challenge.size)) >= mm(2.2)
    assert last == response.x - mm(2)


def test_the_leader_of_a_critical_item_is_a_solid_line() -> None:
    (solid,) = leaders(laid(item("Canopy", "LATCHED", critical=True)))
    assert (solid.dots, solid.width, solid.ink) == (0, pt(1.6), Ink.BLACK)


def test_near_columns_join_and_far_ones_do_not() -> None:
    one = laid(item("Trim", "ZERO"), group("Two", item("Fuel selector", "TWO")), title="Near")
    assert text(one, "ZERO").x == text(one, "TWO").x
    far = laid(item("Trim", "ZERO"), group("Two", item("Alternator field breaker", "TWO")), title="Far")
    assert text(far, "TWO").x - text(far, "ZERO").x > mm(16)


def test_a_column_does_not_join_where_a_response_would_break() -> None:
    one = laid(item("Radio call", "MAYDAY AND POSITION"), group("Two", item("Transponder code", "7700")))
    assert text(one, "MAYDAY AND POSITION").x < text(one, "7700").x


def test_a_long_challenge_breaks_between_its_controls_and_the_leader_follows_its_last_line() -> None:
    one = laid(
        item("Navigation lights + Anticollision lights", "ON", "Detail."), item("Pitot heat", "OFF then ON again")
    )
    upper, lower, response = text(one, "Navigation lights +"), text(one, "Anticollision lights"), text(one, "ON")
    assert upper.y < lower.y == response.y
    assert leaders(one)[0].points[0][1] + mm(0.3) == lower.y


def test_a_response_breaks_in_its_column() -> None:
    one = laid(item("Throttle", "LOWEST FOR LEVEL FLIGHT, THEN AS THE GLIDE PATH ASKS"))
    (upper, *others) = [found for found in texts(one) if found.font is Font.BOLD and found.y > mm(28)]
    assert others
    assert {found.x for found in others} == {upper.x}


def test_the_largest_type_is_taken_and_the_widest_pitch() -> None:
    one = laid(*items(4))
    assert one.size == 15_000
    baselines = [found.y for found in texts(one) if found.string.startswith("Item")]
    assert {below - above for above, below in pairwise(baselines)} == {pt(15 * 1.6)}


def test_twenty_two_items_in_five_groups_come_on_one_face_at_12_and_none_is_smaller() -> None:
    """Body type of about 12 pt (CAP 676, ch. 7); capitals of 16 minutes of arc at 600 mm (NUREG-0700, 1.3.1-4)."""
    groups = [group(f"Group {at}", *items(count)) for at, count in enumerate((7, 4, 4, 4, 3))]
    one = laid(*groups, kind=Kind.NORMAL, title="Preflight inspection", when="walking round before each flight")
    assert (one.size, len(one.faces), one.over) == (12_000, 1, 0)
    assert min(found.size for found in texts(one)) == 12_000 == smallest_legible(600)


@pytest.mark.parametrize("smallest", [12_000, 17_000])
def test_nothing_but_subscripts_is_smaller_than_the_smallest_legible_size(smallest: int) -> None:
    one = lay_card(FIRE, replace(FRAME, smallest=smallest), NO_SYMBOLS)
    assert min(found.size for found in texts(one)) == smallest


def test_numbers_run_through_the_card_in_the_gutter_with_their_right_edges_in_line() -> None:
    one = laid(memory(*items(3)), *items(3), group("Last", *items(5)))
    numbers = [found for found in texts(one) if found.string.isdigit()]
    assert [found.string for found in numbers] == [str(at) for at in range(1, 12)]
    assert {found.x + width(found.string, Font.REGULAR, found.size) for found in numbers} == {mm(6.2)}
    assert width("11", Font.REGULAR, 12_000) == width("80", Font.REGULAR, 12_000)  # cells of one width


def test_a_run_over_five_is_opened_evenly() -> None:
    one = laid(*items(7))
    baselines = [found.y for found in texts(one) if found.string.startswith("Item")]
    steps = [below - above for above, below in pairwise(baselines)]
    assert [step > min(steps) for step in steps] == [False, False, False, True, False, False]
    assert max(steps) - min(steps) == pytest.approx(0.4 * pt(15 * 1.6), abs=2)


def test_a_detail_stands_nearer_to_its_item_than_the_next_item_does() -> None:
    one = laid(item("Canopy", "LATCHED", "Both hooks seen."), item("Trim", "SET"))
    above, detail, below = text(one, "Canopy"), text(one, "Both hooks seen."), text(one, "Trim")
    assert detail.x == above.x + mm(4)
    assert detail.y - above.y < below.y - detail.y


def test_a_speed_symbol_has_its_subscript() -> None:
    one = lay_card(card(item("Airspeed", "BELOW VNE.")), FRAME, frozenset({"VNE"}))
    stem, sign = text(one, "BELOW V"), text(one, "NE")
    assert sign.size == stem.size * 8 // 10
    assert sign.y > stem.y
    assert sign.x == pytest.approx(stem.x + width("BELOW V", Font.BOLD, stem.size), abs=1)
    assert "VNEX" in text(lay_card(card(item("VNEX", "ON")), FRAME, frozenset({"VNE"})), "VNEX").string


def test_what_could_not_be_read_stands_in_a_note_as_typed() -> None:
    one = laid(item("Trim", "SET"), Unread(phrase("Pump off {now} .. or so"), SPOT), item("Fuel pump", "ON"))
    strings = [found.string for found in texts(one)]
    typed = next(at for at, string in enumerate(strings) if "Pump off {now}" in string)
    label, trim, pump = (strings.index(string) for string in ("Note", "Trim", "Fuel pump"))
    assert trim < typed < pump
    assert "Not understood:" in strings[typed - 1]
    assert trim < label < pump


def test_on_a6_the_leader_of_a_critical_item_is_no_hyphen() -> None:
    narrow = replace(FRAME, width=mm(73), top=mm(13), bottom=mm(125))
    rows = (item("Fuel selector", "OTHER TANK", critical=True), item("Airspeed", "82 KIAS"), item("Fuel pump", "ON"))
    one = lay_card(card(*rows, kind=Kind.EMERGENCY, title="A card", when=""), narrow, NO_SYMBOLS)
    for line in leaders(one):
        (first, _), (last, _) = line.points
        assert last - first >= (mm(2) if line.dots else mm(4) - pt(1.6))
    assert len(leaders(one)) == 3
