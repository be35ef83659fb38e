"""Labels, sections, sides: where a face stands.

Outside checks: the order of sections is that of GAMA Specification 1; labels sort as revised manuals sort added
pages, each part counted (from memory in aviation use).
"""

from __future__ import annotations

import re
from itertools import groupby

import pytest
from hypothesis import given

from dotleader.page.drawn import Font
from dotleader.page.face.placement import CHECKLISTS, Placement, Side, place
from dotleader.page.labels import SECTIONS, WIDEST, Label
from dotleader.page.laid import LaidCard
from dotleader.page.type.metrics import width
from tests.page.leaves import EVERY_KIND, cards, laid


def shown(placement: Placement) -> list[str]:
    return [f"{stand.label} {stand.card.title if stand.card else '-'}" for stand in placement.stands]


def test_sections_stand_in_the_order_of_gama_specification_1() -> None:
    # General, Limitations, Emergency, Abnormal (3A, where used), Normal, Performance, Weight and balance, Systems,
    # Handling, Supplements; 0 is ours.
    assert list(SECTIONS) == ["0", "1", "2", "3", "3A", "4", "5", "6", "7", "8", "9"]
    found = [section for section, _ in groupby(stand.label.section for stand in place(EVERY_KIND).stands)]
    assert found == ["0", "1", "2", "3", "3A", "4"]


def test_a_section_without_cards_has_no_faces() -> None:
    assert {stand.label.section for stand in place([laid("Cruise")]).stands} == {"4"}


def test_a_card_of_two_faces_stands_on_a_back_and_the_front_that_faces_it() -> None:
    assert shown(place([laid("A"), laid("B", 2), laid("C", 2), laid("D")])) == [
        "4-1 A",
        "4-2 B",
        "4-3 B",
        "4-4 C",
        "4-5 C",
        "4-6 D",
    ]


def test_a_blank_is_put_before_a_spread_that_would_begin_on_a_front() -> None:
    assert shown(place([laid("B", 2), laid("C"), laid("D", 2)])) == [
        "4-1 -",
        "4-2 B",
        "4-3 B",
        "4-4 C",
        "4-5 -",
        "4-6 D",
        "4-7 D",
        "4-8 -",
    ]


def test_text_and_tables_run_on() -> None:
    assert shown(place([laid("A", 3, "text", "1"), laid("B", 2, "text", "1")])) == [
        "1-1 A",
        "1-2 A",
        "1-3 A",
        "1-4 B",
        "1-5 B",
        "1-6 -",
    ]


def test_amplified_text_follows_the_checklists_of_its_section() -> None:
    some = [
        laid("A", 1, "emergency", "3"),
        laid("A explained", 2, "amplified", "3"),
        laid("B", 1, "emergency", "3"),
    ]
    assert shown(place(some)) == ["3-1 A", "3-2 B", "3-3 A explained", "3-4 A explained"]


def test_both_faces_of_a_spread_say_open_flat_and_no_other_does() -> None:
    flat = {str(stand.label) for stand in place(EVERY_KIND).stands if stand.open_flat}
    titles = {"Fire in flight", "Alternator failure", "Before takeoff"}
    assert flat == {str(s.label) for s in place(EVERY_KIND).stands if s.card and s.card.title in titles}
    assert len(flat) == 6


def test_a_card_is_found_by_its_first_face_and_of_two_with_one_key_by_the_first() -> None:
    labels = place([laid("A", 2), laid("B"), laid("B", 1)]).labels()
    assert {key: str(label) for key, label in labels.items()} == {"a": "4-2", "b": "4-4"}


def test_labels_are_section_and_serial_and_sort_by_count() -> None:
    labels = [Label("3", 12), Label("3", 12, 1), Label("3", 12, 9), Label("3", 12, 10), Label("3", 13), Label("3A", 1)]
    assert sorted(labels, key=lambda label: label.order) == labels
    assert [str(label) for label in labels] == ["3-12", "3-12.1", "3-12.9", "3-12.10", "3-13", "3A-1"]
    assert all(re.fullmatch(r"\d+A?-\d+(\.\d+)?", str(label)) for label in labels)


@pytest.mark.parametrize("label", [Label("3A", 99), Label("4", 199), Label("3", 99, 9), Label("9", 10, 10)])
def test_room_is_kept_for_the_widest_label(label: Label) -> None:
    assert width(str(label), Font.BOLD, 14_000) <= width(str(WIDEST), Font.BOLD, 14_000)


@given(cards())
def test_any_cards_are_placed_whole_and_in_order(some: tuple[LaidCard, ...]) -> None:
    placement = place(some)
    for leaf in placement.leaves:
        assert (leaf.front.side, leaf.back.side) == (Side.FRONT, Side.BACK)
        assert leaf.front.label.serial % 2 == 1
        assert leaf.back.label == Label(leaf.front.label.section, leaf.front.label.serial + 1)
    for _, stands in groupby(placement.stands, key=lambda stand: stand.label.section):
        serials = [stand.label.serial for stand in stands]
        assert serials == list(range(1, len(serials) + 1))
    placed = [(stand.card.key, stand.part) for stand in placement.stands if stand.card]
    assert sorted(placed) == sorted((card.key, part) for card in some for part in range(len(card.faces)))
    assert len(set(placed)) == len(placed)
    for section in SECTIONS:
        for last in (False, True):
            keys = [c.key for c in some if c.section == section and (c.kind == "amplified") is last]
            order = [
                s.card.key
                for s in placement.stands
                if s.card and s.part == 0 and s.label.section == section and (s.card.kind == "amplified") is last
            ]
            assert order == keys


@given(cards())
def test_a_blank_stands_only_before_a_spread_or_at_the_end_of_a_section(some: tuple[LaidCard, ...]) -> None:
    stands = place(some).stands
    for at, stand in enumerate(stands):
        if stand.card is None:
            follows = stands[at + 1] if at + 1 < len(stands) else None
            ends = follows is None or follows.label.section != stand.label.section
            spread = follows is not None and follows.card is not None and len(follows.card.faces) > 1
            assert ends or spread
        elif stand.card.kind in CHECKLISTS and len(stand.card.faces) == 2:
            assert stand.side is (Side.BACK if stand.part == 0 else Side.FRONT)
