"""Which leaf stands where: the cut pile of sheets is played through, place by place."""

from __future__ import annotations

from itertools import chain

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.page.face.placement import Side
from dotleader.page.imposition import imposition
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.leaf_order import ORDERS, Order, leaf_order
from dotleader.page.sheet.sheets import Sheet, sheet_count, sheets
from tests.page.leaves import STOCKS, faces, laid

LEAVES, PLACES = st.integers(0, 300), st.integers(1, 16)
COUNTED = {leaves: tuple(laid(f"Card {number}", 2) for number in range(leaves)) for leaves in range(1, 12)}


def stacks(sheets_of_leaves: tuple[range, ...], places: int) -> list[list[int]]:
    """The cut pile: for each place what lies there, from the first sheet to the last."""
    return [[some[place] for some in sheets_of_leaves if place < len(some)] for place in range(places)]


@given(LEAVES, PLACES)
def test_stacks_put_on_each_other_are_the_book(leaves: int, places: int) -> None:
    cut = stacks(leaf_order(leaves, places, "stack"), places)
    assert [leaf for stack in cut for leaf in stack] == list(range(leaves))


@given(LEAVES, PLACES)
def test_sheets_one_after_the_other_are_the_book_in_sequence(leaves: int, places: int) -> None:
    assert [leaf for some in leaf_order(leaves, places, "sequence") for leaf in some] == list(range(leaves))


@given(LEAVES, PLACES, st.sampled_from(ORDERS))
def test_every_leaf_is_on_one_sheet_and_no_order_takes_more_sheets(leaves: int, places: int, order: Order) -> None:
    found = leaf_order(leaves, places, order)
    assert sorted(leaf for some in found for leaf in some) == list(range(leaves))
    assert len(found) == -(-leaves // places)
    assert all(1 <= len(some) <= places for some in found)
    counts = [len(some) for some in found]
    assert counts == sorted(counts, reverse=True)
    assert len(set(counts)) <= 2


@given(LEAVES)
def test_with_one_leaf_to_a_sheet_both_orders_are_the_same(leaves: int) -> None:
    assert leaf_order(leaves, 1, "stack") == leaf_order(leaves, 1, "sequence")


def labels(some: list[Sheet], side: Side) -> list[list[str]]:
    """For each place of the sheets, the labels from the first sheet to the last."""
    shown = [sheet.front if side is Side.FRONT else sheet.back for sheet in some]
    places = max(len(each.leaves) for each in shown)
    return [[each.leaves[at].label for each in shown if at < len(each.leaves)] for at in range(places)]


@pytest.mark.parametrize("name", ["A5", "A6", "four to a sheet", "two across", "sample"])
@pytest.mark.parametrize("leaves", [1, 2, 5, 7, 11])
def test_a_book_printed_in_stacks_is_in_order_when_it_has_been_cut(name: str, leaves: int) -> None:
    stock = STOCKS[name]
    made = faces(*COUNTED[leaves], stock=stock)
    printed = list(sheets(made, stock, order="stack"))
    some = [sheet for sheet in printed if sheet.number]
    assert list(chain.from_iterable(labels(some, Side.FRONT))) == [str(face.label) for face in made[::2]]
    assert list(chain.from_iterable(labels(some, Side.BACK))) == [str(face.label) for face in made[1::2]]
    assert len(printed) == sheet_count(len(made), stock)


@pytest.mark.parametrize("leaves", [1, 2, 5, 7, 11])
def test_each_sheet_of_stacks_is_cut_by_a_file_for_its_own_places(leaves: int) -> None:
    stock = STOCKS["four to a sheet"]
    slots = imposition(stock).slots
    assert len(slots) == 4
    printed = sheets(faces(*COUNTED[leaves], stock=stock), stock, order="stack")
    some = [sheet for sheet in printed if sheet.number]
    cut = {number: cutting for cutting in cuttings(some, stock) for number in cutting.sheets}
    assert sorted(cut) == [sheet.number for sheet in some]
    places: dict[int, set[tuple[tuple[int, int], ...]]] = {}
    for sheet in some:
        used = tuple((place.x, place.y) for place in sheet.front.leaves)
        assert used == tuple((slot.x, slot.y) for slot in slots[: len(used)])
        places.setdefault(cut[sheet.number].number, set()).add(used)
    assert all(len(used) == 1 for used in places.values())
