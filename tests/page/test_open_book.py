"""A book in the hand: pages turn the right way for the binding, and a face that is folded over has all of its drill.

Outside checks: a page that is turned about its left edge keeps its head up, one that is turned about its upper edge
has its head where the foot of its front is; where a back lands behind its front, from geometry (`test_sheets`).
"""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings

from dotleader.handbook.resolve import resolve
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Group, Text
from dotleader.page.extents import extents
from dotleader.page.face.book import make_book
from dotleader.page.face.furniture import OPEN_FLAT
from dotleader.page.face.placement import CHECKLISTS, Side
from dotleader.page.imposition import Slot, on_sheet
from dotleader.page.laid import LaidCard
from dotleader.page.lay.checklists import Checklists
from dotleader.page.sheet.duplex import TURNINGS, Turning
from dotleader.page.sheet.sheets import LeafPlace, sheets
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText
from tests.page.leaves import EVERY_KIND, STOCKS, cards, faces, said
from tests.page.tabbed import EVERY_STOCK, TABBED

ALL = {name: stock for name, stock in (EVERY_STOCK | TABBED).items() if not stock.folded}
EXAMPLE = Path(__file__).parents[2] / "examples" / "ostrel-two"
BINDINGS = pytest.mark.parametrize("stock", [STOCKS["A5"], STOCKS["bound at the top"]], ids=["left", "top"])


def way(place: LeafPlace, x: int, y: int) -> tuple[int, int]:
    """Where a step across or down on a face leads on the sheet."""
    there = on_sheet(Slot(place.x, place.y, place.w, place.h, place.turn))
    (from_x, from_y), (to_x, to_y) = there.point(0, 0), there.point(x, y)
    return to_x - from_x, to_y - from_y


def at(place: LeafPlace, x: int, y: int) -> tuple[int, int]:
    return on_sheet(Slot(place.x, place.y, place.w, place.h, place.turn)).point(x, y)


@pytest.mark.parametrize("stock", ALL.values(), ids=ALL)
@pytest.mark.parametrize("turning", TURNINGS)
def test_leaves_turn_like_a_book_or_over_their_head(stock: Stock, turning: Turning) -> None:
    (across, along), (width, height) = stock.paper, stock.leaf
    for sheet in sheets(faces(*EVERY_KIND, stock=stock), stock, turning=turning):
        for front, back in zip(sheet.front.leaves, sheet.back.leaves, strict=True):
            dx, dy = way(back, 0, 1)
            seen = (-dx, dy) if turning == "long-edge" else (dx, -dy)  # through the paper, as the front is looked at
            down = way(front, 0, 1)
            assert seen == (down if stock.bound_at == "left" else (-down[0], -down[1]))
            binding = (0, height // 2) if stock.bound_at == "left" else (width // 2, 0)
            behind = (width, height // 2) if stock.bound_at == "left" else (width // 2, height)
            x, y = at(back, *behind)
            assert ((across - x, y) if turning == "long-edge" else (x, along - y)) == at(front, *binding)


@pytest.mark.parametrize("stock", ALL.values(), ids=ALL)
def test_all_text_stands_upright_on_its_face_but_for_words_along_the_edge(stock: Stock) -> None:
    for face in faces(*EVERY_KIND, stock=stock):
        for group in face.groups:
            assert group.turn == 0
            turns = {item.turn for item, _ in extents(group.items) if isinstance(item, Text)}
            outer_right = face.side is Side.FRONT or stock.bound_at == "top"
            assert turns <= ({90 if outer_right else 270} if group.role == "edge" else {0})


def drills(of: tuple[LaidCard, ...], stock: Stock) -> None:
    """Each drill is whole on one face, or on two that say that they lie open beside each other."""
    made = faces(*of, stock=stock)
    for face in made:
        flat = OPEN_FLAT in said(face, "head")
        assert flat is (face.kind in CHECKLISTS and face.parts == 2)
    for before, after in pairwise(made):
        if before.kind in CHECKLISTS and before.parts == 2 and before.part == 0:
            assert (after.key, after.part) == (before.key, 1)
            assert (before.side, after.side) == (Side.BACK, Side.FRONT)  # of two leaves: both are up at once


@BINDINGS
@settings(deadline=None)
@given(some=cards())
def test_what_a_drill_needs_is_on_one_face_or_on_two_that_lie_open_together(
    stock: Stock, some: tuple[LaidCard, ...]
) -> None:
    drills(some, stock)


@pytest.mark.parametrize("rows", ["", "  bound at ... top\n", "  tabs .... cut, 8 mm deep\n  dividers .... yes\n"])
def test_every_item_of_the_example_stands_on_a_face_of_its_own_card(rows: str) -> None:
    def read(path: str) -> Outcome[SourceText]:
        text = (EXAMPLE / path).read_text(encoding="utf-8")
        return Outcome(SourceText(path, text), ())

    main = (EXAMPLE / "handbook.cards").read_text(encoding="utf-8")
    before, _, after = main.partition("\nstock\n")
    _, _, after = after.partition("\n\n")
    text = f"{before}\nstock A5\n{rows}\n{after}"
    handbook, *_ = resolve(SourceText("handbook.cards", text), "handbook.cards", read).value
    laid = Checklists(handbook).all()
    book = make_book(handbook, laid)
    assert len(laid) > 30
    for card in laid:
        own = [face for face in book.faces if face.key == card.key]
        assert [says for face in own for says in face.says] == [says for face in card.faces for says in face.says]
        assert 1 <= len(own) <= 2
        for face in own:
            assert (OPEN_FLAT in said(face, "head")) is (len(own) == 2)
        if len(own) == 2:
            first, second = (book.faces.index(face) for face in own)
            assert (second - first, first % 2) == (1, 1)


def test_a_leaf_group_is_turned_as_its_place_is() -> None:
    for stock in (STOCKS["A5"], TABBED["A6, tabs"], STOCKS["bound at the top"]):
        for sheet in sheets(faces(*EVERY_KIND, stock=stock), stock):
            for side in sheet.sides:
                groups = [item for item in side.items if isinstance(item, Group) and item.role == "leaf"]
                assert [group.turn for group in groups] == [place.turn for place in side.leaves]
                assert all(role_of(group, "head") for group in groups)


def role_of(group: Group, name: str) -> bool:
    return any(isinstance(item, Group) and item.role == name for item in group.items)
