"""A part of a book keeps the whole book's labels, and nothing of a leaf is left out."""

from __future__ import annotations

import pytest

from dotleader.page.drawn import Link
from dotleader.page.face.book import Book, make_book
from dotleader.page.face.selection import Wanted, read_label, read_span, selected
from dotleader.page.labels import Label
from dotleader.page.lay.checklists import Checklists
from tests.page.test_lay_index import handbook


def whole() -> Book:
    found = handbook(9, 14)
    return make_book(found, Checklists(found).all())


def test_a_kind_brings_its_leaves_whole_and_in_order() -> None:
    book = whole()
    part = selected(book, Wanted(kinds=frozenset({"emergency"})))
    leaves = list(zip(part.faces[::2], part.faces[1::2], strict=True))
    assert leaves
    assert all("emergency" in (front.kind, back.kind) for front, back in leaves)
    wanted = [face.label for face in book.faces if face.kind == "emergency"]
    assert [face.label for face in part.faces if face.kind == "emergency"] == wanted
    assert part.placement == book.placement


def test_every_kept_face_is_drawn_as_in_the_whole_book_but_for_its_links() -> None:
    book = whole()
    part = selected(book, Wanted(keys=frozenset({"trouble 0"})))
    before = {face.label: face for face in book.faces}
    assert 0 < len(part.faces) < len(book.faces)
    for face in part.faces:
        drawn = [group for group in before[face.label].groups if group.role != "links"]
        assert [group for group in face.groups if group.role != "links"] == drawn


def test_no_link_leads_out_of_the_part() -> None:
    book = whole()
    part = selected(book, Wanted(spans=((Label("0", 1), Label("0", 99)),)))
    labels = {str(face.label) for face in part.faces}
    links = [item for face in part.faces for group in face.groups for item in group.items if isinstance(item, Link)]
    assert {link.label for link in links} <= labels
    assert [item for face in book.faces for group in face.groups for item in group.items if isinstance(item, Link)]


def test_spans_take_blanks_too() -> None:
    book = whole()
    blank = next(face for face in book.faces if face.blank)
    part = selected(book, Wanted(spans=((blank.label, blank.label),)))
    assert blank.label in {face.label for face in part.faces}
    assert len(part.faces) == 2


@pytest.mark.parametrize(
    ("text", "label"),
    [("3-12", Label("3", 12)), (" 3A-5.1 ", Label("3A", 5, 1)), ("3-", None), ("77-1", None), ("x", None), ("", None)],
)
def test_labels_are_read(text: str, label: Label | None) -> None:
    assert read_label(text) == label


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("3-5..3-9", (Label("3", 5), Label("3", 9))),
        ("4-2", (Label("4", 2), Label("4", 2))),
        ("3-9..3-5", None),
        ("3-5..", None),
        ("..3-5", None),
    ],
)
def test_spans_are_read(text: str, span: tuple[Label, Label] | None) -> None:
    assert read_span(text) == span
