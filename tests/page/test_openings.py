"""Where long runs are opened."""

from __future__ import annotations

import pytest

from dotleader.handbook.cards import Item
from dotleader.page.lay.openings import openings
from dotleader.source.record import replace
from dotleader.source.text import SourceText, Spot

from .building import item


def run(text: str) -> list[Item]:
    """An item for each line of a source that has any text."""
    source, items, at = SourceText("test.cards", text), [], 0
    for line in text.splitlines(keepends=True):
        if line.strip():
            items.append(replace(item(line.strip()), spot=Spot(source, at, at + len(line.rstrip()))))
        at += len(line)
    return items


@pytest.mark.parametrize(
    ("text", "opened"),
    [
        ("a\nb\nc\nd\ne\n", set()),
        ("a\n\nb\nc\nd\ne\n", set()),  # five need none
        ("a\nb\nc\nd\ne\nf\n", {3}),
        ("a\nb\nc\nd\ne\nf\ng\n", {4}),
        ("a\nb\n\nc\nd\ne\nf\n", {2}),  # where the author left a blank line
        ("a\nb\n \t\nc\nd\ne\nf\ng\nh\n", {2, 5}),
        ("a\n\nb\n\nc\n\nd\n\ne\n\nf\n", {3}),  # a blank line after every item says nothing
        ("".join(f"{at}\n" for at in range(11)), {4, 8}),
    ],
)
def test_runs_over_five_are_opened(text: str, opened: set[int]) -> None:
    assert openings(run(text)) == opened
