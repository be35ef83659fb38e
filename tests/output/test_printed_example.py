"""The example handbook as it is printed, read back by pypdf, pdfplumber and pypdfium2."""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path

import pytest

from dotleader.handbook.cards import Arm, Branch, Card, Group, Item, Memory, OneOf, Repeat, Step
from dotleader.handbook.stocks.measures import hole_strip
from dotleader.page.face.placement import Side
from dotleader.page.sheet.holes import hole_centres
from dotleader.page.sheet.sheets import sheets
from dotleader.tools.files import Files
from dotleader.tools.pipeline import Linted, lint_handbook
from dotleader.tools.printing.manner import Manner, Printed
from dotleader.tools.printing.printed_book import planned, print_planned
from dotleader.tools.printing.printed_names import READING, SHEETS
from tests.output.reading import by_pdfium, by_plumber, by_pypdf

EXAMPLE = Path(__file__).parents[2] / "examples" / "ostrel-two" / "handbook.cards"
PIXELS = 6  # to the millimetre


@cache
def linted() -> Linted:
    return lint_handbook(os.path.relpath(EXAMPLE), Files())


@cache
def printed() -> Printed:
    laid, book = linted().laid, linted().books[0]
    assert laid is not None
    plan = planned(linted().handbook, laid.cards(book), Manner(), book)
    return print_planned(plan, "N0STL", Manner())


def items_of(steps: Sequence[Step | Arm]) -> Iterator[Item]:
    for step in steps:
        match step:
            case Item():
                yield step
            case Branch(arms):
                yield from items_of(arms)
            case Arm() | Group() | Memory() | OneOf() | Repeat():
                yield from items_of(step.steps)
            case _:
                pass


def test_the_example_lints_without_a_finding() -> None:
    assert linted().findings == []
    assert len(linted().handbook.cards) >= 40


def test_every_item_stands_once_on_the_face_of_its_card() -> None:
    """Words of the face as pdfplumber reads them, against the words of the card's items; the numbers count them."""
    faces = {face.key: number for number, face in enumerate(printed().book.faces)}
    with by_plumber(printed().files[READING]) as document:
        for card in linted().handbook.cards:
            page = document.pages[faces[card.key]]
            words = Counter(word["text"] for word in page.extract_words())
            items = list(items_of(card.steps))
            wanted = Counter(word for item in items for word in _words(item))
            assert not wanted - words, card.title
            text = " ".join(page.extract_text().split())
            for item in _on_one_line(card, items):
                assert text.count(item) == _on_one_line(card, items).count(item), (card.title, item)


def _words(item: Item) -> list[str]:
    texts = [item.challenge, item.response.text if item.response else "", *(detail.text for detail in item.detail)]
    return " ".join(texts).split()


def _on_one_line(card: Card, items: list[Item]) -> list[str]:
    """Number, challenge and response of the items that are short enough to stand on one line."""
    return [
        f"{number} {item.challenge} {item.response.text}"
        for number, item in enumerate(items, 1)
        if item.response and len(item.challenge) < 16 and len(item.response.text) < 12 and not _shares_numbers(card)
    ]


def _shares_numbers(card: Card) -> bool:
    """Whether the card has alternatives, which share a number."""
    return any(isinstance(step, OneOf) for step in _all(card.steps))


def _all(steps: Sequence[Step | Arm]) -> Iterator[Step | Arm]:
    for step in steps:
        yield step
        match step:
            case Branch(arms):
                yield from _all(arms)
            case Arm() | Group() | Memory() | OneOf() | Repeat():
                yield from _all(step.steps)
            case _:
                pass


@pytest.mark.parametrize("name", [READING, SHEETS])
def test_all_fonts_are_embedded_subsets(name: str) -> None:
    found = {}
    for page in by_pypdf(printed().files[name]).pages:
        for reference in page["/Resources"]["/Font"].values():
            font = reference.get_object()
            found[font["/BaseFont"]] = font["/FontDescriptor"].get_object()
    assert len(found) >= 2
    for base, descriptor in found.items():
        assert base[7:8] == "+", base
        assert "/FontFile2" in descriptor


def test_the_reading_copy_has_a_leaf_sized_page_for_every_face_and_odd_pages_are_fronts() -> None:
    document = by_pdfium(printed().files[READING])
    book = printed().book
    assert len(document) == len(book.faces)
    for number, face in enumerate(book.faces):
        assert document.get_page_label(number) == str(face.label)
        assert (face.side is Side.FRONT) == (number % 2 == 0)
        # 1 in = 25.4 mm = 72 pt
        assert document[number].get_size() == pytest.approx([side * 72 / 25_400 for side in book.stock.leaf], abs=0.01)


def test_nothing_is_printed_in_the_hole_strip_but_the_marks_of_the_holes() -> None:
    """As pdfium renders it: on every side of every sheet the strip is white but for the circles of the holes."""
    book = printed().book
    document = by_pdfium(printed().files[SHEETS])
    sides = [side for sheet in sheets(book.faces, book.stock) for side in sheet.sides]
    assert len(document) == len(sides)
    radius = book.stock.hole_diameter / 2000 + 0.35  # half a stroke, and two pixels of the rendering
    for number, side in enumerate(sides[:24]):
        picture = document[number].render(scale=PIXELS * 25.4 / 72).to_pil().convert("L")
        (leaf,) = side.leaves
        left, top, wide = leaf.x / 1000, leaf.y / 1000, hole_strip(book.stock) / 1000
        if side.side is Side.BACK:
            left += leaf.w / 1000 - wide
        holes = [(leaf.x / 1000 + x / 1000, leaf.y / 1000 + y / 1000) for x, y in hole_centres(book.stock, side.side)]
        box = [round(at * PIXELS) for at in (left, top, left + wide, top + leaf.h / 1000)]
        strip = picture.crop((box[0], box[1], box[2], box[3]))
        dark = [place for place, grey in enumerate(strip.tobytes()) if grey < 200]
        assert dark  # the marks of the holes themselves
        for place in dark:
            y, x = divmod(place, strip.width)
            at = ((box[0] + x + 0.5) / PIXELS, (box[1] + y + 0.5) / PIXELS)
            assert any((at[0] - a) ** 2 + (at[1] - b) ** 2 <= radius**2 for a, b in holes), (number, at)
