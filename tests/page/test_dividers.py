"""Divider leaves: before each section, with what is in it and where that stands."""

from __future__ import annotations

from itertools import groupby

import pytest
from hypothesis import given

from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.page.drawn import Box, Link, Text, mm
from dotleader.page.extents import extents
from dotleader.page.face.book import Book, make_book
from dotleader.page.face.placement import CHECKLISTS, Side, place
from dotleader.page.face.selection import Wanted, selected
from dotleader.page.face.thumb_index import section_slot, section_word, slot_span
from dotleader.page.frames import frame_of
from dotleader.page.labels import SECTIONS
from dotleader.page.laid import LaidCard
from dotleader.page.lay.checklists import Checklists
from dotleader.page.lay.lay_dividers import DIVIDER, EXPLAINED, divider_key, lay_dividers
from dotleader.page.lay.lay_index import CONTENTS_KEY, INDEX_KEY
from dotleader.page.lay.lay_prose import lay_amplified
from dotleader.source.text import SourceText
from tests.page.leaves import cards, laid, role, said

STOCKS = ("A5", "A6", "half letter", "6 x 9 in pouch", "A5, bound at top", "kneeboard, quarter letter")


def handbook(urgent: int, normal: int, *rows: str, stock: str = "A5") -> Handbook:
    made = [
        f"{('emergency', 'abnormal')[n % 2]} Trouble {n}\n  when {'it sounds odd ' * (n % 3 + 1)}\n  A .... B\n  end"
        for n in range(urgent)
    ]
    made += [f"normal Routine {n}\n  when all is well\n  A .... B\n  amplified\n    Why." for n in range(normal)]
    head = "\n".join([f"stock {stock}", "  dividers .... yes", *(f"  {row}" for row in rows)])
    text = "\n\n".join(["handbook Test", head, *made]) + "\n"
    return resolve(SourceText("test.cards", text), "test.cards", lambda path: "no").value[0]


def laid_out(book: Handbook) -> list[LaidCard]:
    found = []
    for card, one in zip(book.cards, Checklists(book).all(), strict=True):
        amplified = lay_amplified(card, frame_of(book.stock), frozenset())
        found += [one, *((amplified,) if amplified else ())]
    return found


def book_of(made: Handbook) -> Book:
    return make_book(made, laid_out(made))


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("many", [1, 9, 60])
def test_each_section_opens_with_its_divider_on_a_leaf_of_its_own(stock: str, many: int) -> None:
    book = book_of(handbook(many, many, stock=stock))
    for section, group in groupby(book.faces, key=lambda face: face.label.section):
        some = list(group)
        dividers = [face for face in some if face.kind == DIVIDER]
        if section == "0":
            assert dividers == []
            continue
        assert some[: len(dividers)] == dividers
        assert dividers[0].side is Side.FRONT
        assert dividers[0].title == SECTIONS[section]
        follows = some[len(dividers) + len(dividers) % 2]
        assert follows.side is Side.FRONT
        assert len(dividers) % 2 == 0 or some[len(dividers)].blank


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("tabs", ["printed", "cut, 6 mm deep"])
def test_a_divider_names_every_card_of_its_section_with_the_label_where_it_stands(stock: str, tabs: str) -> None:
    book = book_of(handbook(20, 16, f"tabs .... {tabs}", stock=stock))
    labels = {face.key: str(face.label) for face in reversed(book.faces) if face.key}
    for section in {face.label.section for face in book.faces} - {"0"}:
        own = [face for face in book.faces if face.key == divider_key(section)]
        shown = [item.string for face in own for item, _ in extents(role(face, "tabs")) if isinstance(item, Text)]
        wanted = dict.fromkeys(
            face.key
            for face in book.faces
            if face.label.section == section and not face.blank and face.kind not in (DIVIDER, "amplified")
        )
        explained = [face for face in book.faces if face.label.section == section and face.kind == "amplified"][:1]
        assert shown == [labels[key] for key in wanted] + [str(face.label) for face in explained]
        links = [
            item for face in own for group in role(face, "links") for item in group.items if isinstance(item, Link)
        ]
        assert [link.label for link in links] == shown
        says = [text for face in own for text in face.says]
        titles = {face.title for face in book.faces if face.key in wanted}
        assert titles <= set(says)
        assert (EXPLAINED in says) is bool(explained)


def test_conditions_stand_on_dividers_of_emergencies_and_not_of_normal_cards() -> None:
    book = book_of(handbook(8, 8))
    for face in book.faces:
        if face.kind == DIVIDER:
            conditions = [text for text in face.says if text.startswith("When")]
            assert bool(conditions) is (face.label.section in ("3", "3A"))


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("rows", [(), ("read at .... 900 mm",)])
def test_a_divider_stays_within_its_frame(stock: str, rows: tuple[str, ...]) -> None:
    made = handbook(20, 16, *rows, stock=stock)
    frame = frame_of(made.stock)
    for card in lay_dividers(made, laid_out(made), frame):
        for face in card.faces:
            for item, ink in extents(face.items):
                assert ink.left >= -mm(0.1)
                assert ink.right <= frame.width + mm(0.1)
                assert ink.bottom <= frame.bottom
                assert not isinstance(item, Text) or ink.top >= frame.top - mm(4)  # accents over capitals
            for slot in face.slots:
                assert 0 <= slot.x <= frame.width - frame.label_width
                assert slot.y + slot.height <= frame.bottom
                texts = [ink for item, ink in extents(face.items) if isinstance(item, Text)]
                assert not any(
                    ink.right > slot.x and ink.top + mm(1.5) < slot.y + slot.height and slot.y < ink.bottom - mm(1.5)
                    for ink in texts
                )


def test_the_number_is_the_largest_thing_on_it_and_stands_once() -> None:
    made = handbook(3, 3)
    for card in lay_dividers(made, laid_out(made), frame_of(made.stock)):
        texts = [item for item, _ in extents(card.faces[0].items) if isinstance(item, Text)]
        largest = max(texts, key=lambda text: text.size)
        assert largest.string == card.section
        assert [text.size for text in texts].count(largest.size) == 1
        assert largest.size >= 2 * sorted({text.size for text in texts})[-2]


def test_without_dividers_there_are_none_and_cards_begin_each_section() -> None:
    made = handbook(4, 4)
    text = made.files[0].text.replace("  dividers .... yes\n", "")
    plain = resolve(SourceText("test.cards", text), "test.cards", lambda path: "no").value[0]
    assert not [face for face in book_of(plain).faces if face.kind == DIVIDER]


def test_the_list_of_faces_names_dividers_and_a_part_of_the_book_keeps_its_labels() -> None:
    book = book_of(handbook(8, 8))
    listed = [text for face in book.faces if face.key == "*effective faces" for text in face.says]
    assert any(text.startswith("3-1") and SECTIONS["3"] in text for text in listed)
    part = selected(book, Wanted(kinds=frozenset({"normal"})))
    whole = {face.key: face.label for face in book.faces if face.part == 0}
    assert part.faces
    assert all(face.label == whole[face.key] for face in part.faces if face.key and face.part == 0)


@given(cards())
def test_with_dividers_cards_keep_their_order_and_spreads_their_sides(some: tuple[LaidCard, ...]) -> None:
    sections = {card.section for card in some}
    dividers = [laid(f"Divider {section}", 1 + len(section), DIVIDER, section) for section in sections]
    stands = place((*some, *dividers)).stands
    for _, group in groupby(stands, key=lambda stand: stand.label.section):
        here = list(group)
        assert here[0].card is not None
        assert here[0].card.kind == DIVIDER
        keys = [stand.card.key for stand in here if stand.card is not None and stand.part == 0][1:]
        plain = [
            s.card.key
            for s in place(some).stands
            if s.card is not None and s.part == 0 and s.label.section == here[0].label.section
        ]
        assert keys == plain
    for stand in stands:
        if stand.card is not None and stand.card.kind in CHECKLISTS and len(stand.card.faces) == 2:
            assert stand.side is (Side.BACK if stand.part == 0 else Side.FRONT)


def test_the_band_of_a_divider_is_that_of_the_cards_behind_it() -> None:
    book = book_of(handbook(2, 2))
    dividers = {face.label.section: face for face in book.faces if face.key.startswith("*divider")}
    assert set(dividers) == {"3", "3A", "4"}
    marks = 2  # of its section: the mark and its words
    assert [len(list(extents(role(dividers[section], "edge")))) - marks for section in ("3", "4")] == [1, 0]
    assert len(list(extents(role(dividers["3A"], "edge")))) > 10
    assert said(dividers["3"], "head")[0] == "EMERGENCY"


@pytest.mark.parametrize("stock", STOCKS)
def test_index_and_contents_lead_to_cards_behind_their_dividers(stock: str) -> None:
    made = handbook(9, 9, stock=stock)
    book = book_of(made)
    labels = {face.key: str(face.label) for face in reversed(book.faces) if face.key}
    for key, listed in ((INDEX_KEY, 9), (CONTENTS_KEY, 18)):
        own = [face for face in book.faces if face.key == key]
        shown = [item.string for face in own for item, _ in extents(role(face, "tabs")) if isinstance(item, Text)]
        assert len(shown) == listed
        assert set(shown) <= {labels[card.key] for card in made.cards}
        assert not set(shown) & {"3-1", "3A-1", "4-1"}  # where the dividers stand


@pytest.mark.parametrize("stock", STOCKS)
def test_a_kind_brings_the_dividers_of_its_sections_along_and_no_others(stock: str) -> None:
    book = book_of(handbook(9, 9, stock=stock))
    part = selected(book, Wanted(kinds=frozenset({"emergency"})))
    assert {face.label.section for face in part.faces if face.kind == DIVIDER} == {"3"}
    assert part.faces[0].kind == DIVIDER
    card = next(face for face in book.faces if face.kind == "emergency")
    one = selected(book, Wanted(keys=frozenset({card.key})))
    assert not any(face.kind == DIVIDER for face in one.faces)


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("tabs", ["printed", "none"])
def test_a_divider_has_a_mark_at_the_place_of_its_section_where_tabs_are_printed(stock: str, tabs: str) -> None:
    made = handbook(9, 9, f"tabs .... {tabs}", stock=stock)
    for face in book_of(made).faces:
        if face.kind != DIVIDER:
            continue
        section = face.label.section
        words = [word for word in said(face, "edge") if word.startswith(section)]
        assert bool(words) is (tabs == "printed")
        if not words:
            continue
        assert words[0] in (section, f"{section} {section_word(section)}")
        mark = [ink for item, ink in extents(role(face, "edge")) if isinstance(item, Box)][-1]  # over the band
        top, low = slot_span(made.stock, section_slot(section))
        if face.side is Side.BACK and made.stock.bound_at == "top":
            top, low = made.stock.leaf[1] - low, made.stock.leaf[1] - top
        assert (mark.top, mark.bottom) == (top, low)
        word = next(ink for item, ink in extents(role(face, "edge")) if isinstance(item, Text))
        assert word.inside(mark)
