"""The emergency index and the contents: every card is there with room for its label, and the book leads to it."""

from __future__ import annotations

import pytest

from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.page.drawn import Box, Group, Link, Text
from dotleader.page.extents import extents
from dotleader.page.face.book import make_book
from dotleader.page.face.margins import margins
from dotleader.page.face.placement import Side
from dotleader.page.frames import frame_of
from dotleader.page.lay.checklists import Checklists
from dotleader.page.lay.lay_index import (
    CONTENTS_KEY,
    FEWEST_CARDS,
    FEWEST_URGENT,
    INDEX_KEY,
    lay_index,
)
from dotleader.source.text import SourceText
from tests.page.leaves import role


def handbook(urgent: int, normal: int, stock: str = "A5") -> Handbook:
    kinds = ["emergency", "abnormal"]
    cards = [
        f"{kinds[n % 2]} Trouble {n}\n  when {'something sounds odd ' * (n + 1)}\n  A .... B\n  end"
        for n in range(urgent)
    ]
    cards += [f"normal Routine {n}\n  when all is well\n  A .... B" for n in range(normal)]
    text = "\n\n".join(["handbook Test", f"stock {stock}", *cards]) + "\n"
    return resolve(SourceText("test.cards", text), "test.cards", lambda path: "no").value[0]


@pytest.mark.parametrize("stock", ["A5", "A6", "half letter"])
def test_every_card_has_a_row_and_a_slot_within_the_frame(stock: str) -> None:
    book = handbook(9, 14, stock)
    frame = frame_of(book.stock)
    index, contents = lay_index(book, frame)
    assert [index.key, contents.key] == [INDEX_KEY, CONTENTS_KEY]
    urgent = [card.key for card in book.cards if card.kind.value != "normal"]
    assert sorted(slot.target for face in index.faces for slot in face.slots) == sorted(urgent)
    assert sorted(slot.target for face in contents.faces for slot in face.slots) == sorted(c.key for c in book.cards)
    for face in (*index.faces, *contents.faces):
        for slot in face.slots:
            assert 0 <= slot.x <= frame.width - frame.label_width
            assert frame.top <= slot.y <= frame.bottom - slot.height
        for _, rect in extents(face.items):
            assert rect.left >= -1
            assert rect.right <= frame.width + 1
            assert rect.bottom <= frame.bottom


def test_what_calls_for_a_card_stands_in_the_index_and_not_in_the_contents() -> None:
    book = handbook(3, 3)
    index, contents = lay_index(book, frame_of(book.stock))
    says = [said for face in index.faces for said in face.says]
    assert "When something sounds odd" in says
    assert not [said for face in contents.faces for said in face.says if said.startswith("When")]


def test_a_few_cards_need_neither() -> None:
    assert lay_index(handbook(FEWEST_URGENT - 1, 1), frame_of(handbook(1, 1).stock)) == ()
    few = handbook(FEWEST_URGENT, FEWEST_CARDS - FEWEST_URGENT - 1)
    assert [card.key for card in lay_index(few, frame_of(few.stock))] == [INDEX_KEY]


def test_the_index_is_the_first_leaf_after_the_control_leaf_and_names_the_faces_where_cards_stand() -> None:
    book = handbook(9, 14)
    made = make_book(book, Checklists(book).all())
    faces = list(made.faces)
    first = next(face for face in faces if face.key == INDEX_KEY)
    assert first.side is Side.FRONT
    before = [face for face in faces if face.label.section == "0" and face.label.serial < first.label.serial]
    assert {face.key for face in before} <= {"*title", "*effective faces", ""}
    labels = {face.key: str(face.label) for face in faces if face.part == 0}
    tabs = [text.string for face in faces if face.key == INDEX_KEY for text in _tabs(face.groups)]
    assert tabs == [
        labels[card.key] for kind in ("emergency", "abnormal") for card in book.cards if card.kind.value == kind
    ]


def _tabs(groups: tuple[Group, ...]) -> list[Text]:
    return [item for group in groups if group.role == "tabs" for item in group.items if isinstance(item, Text)]


def test_the_tabs_of_a_list_end_where_its_rules_do() -> None:
    made = handbook(9, 14)
    frame = frame_of(made.stock)
    book = make_book(made, Checklists(made).all())
    listed = [face for face in book.faces if face.key in (INDEX_KEY, CONTENTS_KEY)]
    tabs = [(face, ink) for face in listed for item, ink in extents(role(face, "tabs")) if isinstance(item, Box)]
    assert len({ink.right - ink.left for _, ink in tabs}) > 1  # 3-1 and 3-10
    for face, ink in tabs:
        assert ink.right == margins(made.stock, face.side).left + frame.width
    links = [link for face in listed for group in role(face, "links") for link in group.items]
    assert all(isinstance(link, Link) and link.x + link.w == frame.width for link in links)
