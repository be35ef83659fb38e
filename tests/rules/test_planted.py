"""Faults planted one at a time in books in which nothing is wrong: each is found on its line, and nothing else is."""

from __future__ import annotations

from collections import Counter

import pytest

from tests.rules.planted import Plant, is_found, planted, plants, where

PLANTS = list(plants())


def _id(plant: Plant) -> str:
    return f"{plant.book.partition('/')[0]}-{plant.number}-{plant.rule}"


@pytest.mark.parametrize("plant", PLANTS, ids=_id)
def test_a_planted_fault_is_found_and_nothing_else_is(plant: Plant) -> None:
    found = planted(plant)
    assert is_found(plant, found), [(*where(finding), finding.message) for finding in found]


def test_every_book_has_its_share() -> None:
    counts = Counter(plant.book for plant in PLANTS)
    assert len(counts) >= 6
    assert all(count >= 6 for count in counts.values())
