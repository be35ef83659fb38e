"""Books by writers with habits of their own, in which nothing is wrong: nothing may be found in them.

They are invented. What each stands for is said at its head; each habit has once been a false alarm, or may become one.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from dotleader.tools.files import Files
from dotleader.tools.pipeline import lint_handbook

GOOD = Path(__file__).parents[1] / "good"
EXAMPLES = Path(__file__).parents[2] / "examples"
BOOKS = (
    "metric-tailwheel/skarn.cards",
    "motor-glider/wimpel.cards",
    "hand-started/brindle.cards",
    "touring-glider/sorrel.cards",
    "retractable/tessel.cards",
    "amphibian/morrel.cards",
    "airline/kestova.cards",
    "microlight/plover.cards",
    "aerobatic/kite.cards",
    "one-page/pennant.cards",
)
LOOSE = "one-page/pennant.cards"
"""A page of cards without declarations."""


@pytest.mark.parametrize("book", BOOKS)
def test_nothing_is_found_in_a_clean_book(book: str) -> None:
    linted = lint_handbook(str(GOOD / book), Files())
    assert len(linted.handbook.cards) > (6 if book == LOOSE else 15)
    assert linted.findings == []


@pytest.mark.parametrize("book", BOOKS)
def test_nothing_is_found_in_it_when_it_is_formatted(book: str, tmp_path: Path) -> None:
    folder = (GOOD / book).parent
    for source in folder.rglob("*.cards"):
        copy = tmp_path / source.relative_to(folder)
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_text(format_text(SourceText(source.name, source.read_text(encoding="utf-8"))), encoding="utf-8")
    assert lint_handbook(str(tmp_path / Path(book).name), Files()).findings == []


def test_nothing_is_found_in_the_example_in_large_type() -> None:
    assert lint_handbook(str(EXAMPLES / "large-type.cards"), Files()).findings == []
