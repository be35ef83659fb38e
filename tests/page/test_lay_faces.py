"""A card over its faces: groups, completion, where a page is turned, and what a face says."""

from __future__ import annotations

from itertools import pairwise

import pytest

from dotleader.handbook.cards import Kind
from dotleader.page.drawn import Text, pt
from dotleader.page.lay.lay_card import lay_card
from dotleader.source.record import replace

from .building import (
    END,
    FIRE,
    FRAME,
    NO_SYMBOLS,
    branch,
    card,
    group,
    item,
    items,
    laid,
    lines,
    memory,
    notice,
    text,
    texts,
)


def test_a_group_heading_is_nearer_to_what_it_heads_than_to_what_stands_above() -> None:
    one = laid(group("First", item("One")), group("Second", item("Two")), END)
    above, heading, below = text(one, "One"), text(one, "Second"), text(one, "Two")
    assert below.y - heading.y < heading.y - above.y
    assert any(line.width == pt(0.6) and above.y < line.points[0][1] < heading.y for line in lines(one))


@pytest.mark.parametrize(
    ("title", "last"),
    [
        ("Before takeoff", "Before takeoff checklist complete"),
        ("Taxi checklist", "Taxi checklist complete"),
        ("", "Checklist complete"),
    ],
)
def test_a_normal_card_ends_with_its_own_completion(title: str, last: str) -> None:
    """NASA CR-177549, A(6)."""
    assert texts(laid(item("Trim"), kind=Kind.NORMAL, title=title))[-1].string == last


@pytest.mark.parametrize("kind", [Kind.EMERGENCY, Kind.ABNORMAL])
def test_other_cards_have_no_completion(kind: Kind) -> None:
    assert not [found for found in texts(laid(item("Trim"), END, kind=kind)) if "complete" in found.string]


def test_a_card_that_is_too_long_goes_on_at_a_group_and_both_faces_say_so() -> None:
    one = laid(*(group(f"Group {at}", *items(6)) for at in range(6)), title="Long", kind=Kind.NORMAL)
    first, second = one.faces
    assert one.over > 0
    assert [found.string for found in texts(first)][-1] == "continued"
    assert [found.string for found in texts(second)][:2] == ["Long", "continued"]
    assert texts(second)[2].string.startswith("Group ")


def test_how_many_lines_a_card_is_too_long_by() -> None:
    over = [laid(*items(count), title="Long").over for count in range(20, 45)]
    assert over == sorted(over)
    assert {0, 1} <= set(over)
    steps = [below - above for above, below in pairwise(over) if above]
    assert set(steps) <= {1, 2}  # an item is a line; what opens a run is less than one
    assert steps.count(1) > steps.count(2)


def test_memory_items_are_never_parted_and_nothing_is_cut_from_what_it_belongs_to() -> None:
    for count in range(4, 30):
        one = laid(
            *items(count, name="Before"),
            memory(*items(4, name="Memory")),
            branch(("it burns", (notice("warning", "Hot."), *items(6, name="Inside")))),
            group("Last", *items(8)),
            END,
        )
        for face in one.faces:
            strings = [found.string for found in texts(face)]
            assert sum(string.startswith("Memory ") for string in strings) in (0, 4)
            assert strings[-1] != "Last"
            assert strings[-2:] != ["Last", "continued"]
            assert ("If it burns" in strings) == ("WARNING" in strings) == ("Inside A" in strings)


def test_a_face_that_goes_on_inside_a_branch_says_its_condition_again() -> None:
    one = laid(item("First"), branch(("the engine burns", tuple(items(40)))), END)
    assert len(one.faces) == 2
    assert "If the engine burns, continued" in [found.string for found in texts(one.faces[1])]
    assert "If the engine burns, continued" in one.faces[1].says


def test_a_card_depends_on_itself_alone() -> None:
    other = card(*items(3), title="Another")
    before = lay_card(FIRE, FRAME, NO_SYMBOLS), lay_card(other, FRAME, NO_SYMBOLS)
    longer = replace(other, steps=(*other.steps, *items(40)))
    assert len(lay_card(longer, FRAME, NO_SYMBOLS).faces) == 2
    assert (lay_card(FIRE, FRAME, NO_SYMBOLS), lay_card(other, FRAME, NO_SYMBOLS)) == before


def test_a_face_says_its_text_in_order_with_the_titles_of_targets_and_no_labels() -> None:
    assert lay_card(FIRE, FRAME, NO_SYMBOLS).faces[0].says == (
        "Fire in flight",
        "When you see flames",
        "MEMORY ITEMS",
        "  1 Cabin heat .... OFF",
        "  2 Descent .... START",
        "3 Land .... AT ONCE",
        "If the engine burns",
        "  4 Fuel selector ____ OFF",
        "  If flames remain",
        "    5 Airspeed .... 120 KIAS",
        "  warning: Do not restart the engine.",
        "  go to Forced landing",
        "Otherwise (NOT if the engine burns)",
        "  6 Master .... OFF",
        "  END",
    )


def test_options_are_said_above_their_item() -> None:
    one = laid(item("Nav lights", only="with night lights"), item("Heater", only="without autopilot"), END)
    assert text(one, "If fitted: night lights").y < text(one, "Nav lights").y
    assert text(one, "Without autopilot").y < text(one, "Heater").y


def test_a_hyphen_before_a_number_is_printed_as_a_minus() -> None:
    assert isinstance(text(laid(item("Ammeter", "-2 A")), "−2 A"), Text)
