"""Large type: what is larger, what gives way, and that it still stands inside its frame.

Outside checks: NUREG-0700, 1.3.1-4 (capitals of 16 minutes of arc at least, 20 to 22 preferred); CR-177605, section 6
no. 7 (an x-height of 0.10 in or more in important documents) and no. 9 (a gap of a quarter of the size between lines).
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.book import LARGE_TYPE, LARGEST_TYPE
from dotleader.handbook.cards import Card
from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.handbook.stocks.known import STOCK_NAMES, known_stock
from dotleader.handbook.stocks.making import made
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Font, Group, Text, mm, pt
from dotleader.page.extents import Rect, extents
from dotleader.page.face.book import make_book
from dotleader.page.face.margins import margins
from dotleader.page.frames import FREE_EDGE, frame_of, head_rule
from dotleader.page.lay.checklists import Checklists
from dotleader.page.lay.lay_card import lay_card
from dotleader.page.lay.measures import ladder, slot
from dotleader.page.lay.roominess import surely_fits
from dotleader.page.type.metrics import cap_arcminutes
from dotleader.page.type.widths import X_HEIGHT
from dotleader.source.record import replace
from dotleader.source.text import SourceText
from tests.page.strategies import cards

STOCKS = {name: made(known_stock(name), name, None) for name in STOCK_NAMES}
SIZES = st.integers(101, LARGEST_TYPE)


def large(stock: Stock, percent: int = LARGE_TYPE) -> Stock:
    return replace(stock, type_percent=percent)


def book(more: str) -> Handbook:
    text = (
        "handbook Ostrel Two flight handbook\n  registration .... N0STL\n\nspeeds\n  VNE .... 160 KIAS unverified\n\n"
        "gauge Cylinder temperature in degC from unverified\n  yellow .... 224 to 246\n\n"
        "emergency Fire in flight\n  when flames come from the cowling\n  memory\n    Fuel selector .... OFF\n  end\n\n"
        "emergency Forced landing\n  when the engine has stopped\n  Nose .... DOWN\n  go to Fire in flight\n\n"
        "abnormal Flap failure\n  when the flaps stay up\n  go to Forced landing\n\n" + more
    )
    return resolve(SourceText("book.cards", text), "book.cards", lambda _: "no").value[0]


def test_the_smallest_type_is_read_at_arms_length_with_room_to_spare() -> None:
    stock = large(STOCKS["A5, two holes"])
    assert stock.reading_distance == mm(600)
    smallest = ladder(frame_of(stock))[-1]
    assert smallest == 15_000
    assert cap_arcminutes(smallest, 600) >= 20
    assert pt(smallest / 1000) * X_HEIGHT / 1000 >= mm(2.54)
    assert slot(smallest) >= pt(smallest / 1000) * 5 // 4


@given(st.sampled_from(sorted(STOCKS)), st.integers(300, 1500), SIZES)
def test_large_type_is_never_smaller_than_usual_type(name: str, distance: int, percent: int) -> None:
    usual = replace(STOCKS[name], reading_distance=mm(distance))
    one, other = frame_of(usual), frame_of(large(usual, percent))
    before, after = ladder(one)[-1], ladder(other)[-1]
    assert after * 100 >= before * percent
    assert after - before * percent / 100 < 500
    assert other.label_size >= one.label_size
    assert (other.width, other.top, other.bottom) == (one.width, one.top, one.bottom)


def test_type_of_the_usual_size_leaves_every_frame_as_it_was() -> None:
    for stock in STOCKS.values():
        assert frame_of(large(stock, 100)) == frame_of(stock)


@pytest.mark.parametrize("name", STOCKS)
def test_labels_grow_with_the_type_and_stay_in_their_places(name: str) -> None:
    stock = large(STOCKS[name])
    handbook = replace(book(""), stock=stock)
    made_book = make_book(handbook, Checklists(handbook).all())
    frame = frame_of(stock)
    for face in made_book.faces:
        at = margins(stock, face.side)
        column = Rect(at.left, -mm(3), at.left + frame.width, stock.leaf[1] + mm(3))
        groups = {group.role: group for group in face.groups}
        own = [rect for item, rect in extents((groups["label"],)) if isinstance(item, Box)]
        assert own[0].bottom == head_rule(stock) + at.down
        assert own[0].top >= FREE_EDGE or at.down
        for role in ("head", "label", "tabs", "foot", "issue"):
            for _, rect in extents((groups[role],)) if role in groups else ():
                assert rect.left >= column.left - 1
                assert rect.right <= column.right + 1
        assert not _meet(groups["head"], groups["label"])
        for item, _ in extents((groups["tabs"],)) if "tabs" in groups else ():
            assert not isinstance(item, Text) or item.size == frame.label_size > 14_000


def _meet(head: Group, label: Group) -> bool:
    (box,) = (rect for item, rect in extents((label,)) if isinstance(item, Box))
    return any(rect.meets(box) for item, rect in extents((head,)) if isinstance(item, Text))


@settings(max_examples=60, deadline=None)
@given(cards(), st.sampled_from(sorted(STOCKS)), SIZES)
def test_cards_in_large_type_stay_inside_their_frame_and_are_not_underrated(
    card: Card, name: str, percent: int
) -> None:
    frame = frame_of(large(STOCKS[name], percent))
    laid = lay_card(card, frame, frozenset())
    assert laid.size >= ladder(frame)[-1]
    if surely_fits(card, frame):
        assert len(laid.faces) == 1
    for face in laid.faces:
        for tab in face.slots:
            assert tab.height == frame.label_height


def test_the_smallest_text_of_a_card_is_as_large_as_was_asked_for() -> None:
    handbook = book("")
    for percent in (LARGE_TYPE, 110, LARGEST_TYPE):
        frame = frame_of(large(STOCKS["A5, two holes"], percent))
        for card in handbook.cards:
            sizes = [
                item.size
                for face in lay_card(card, frame, frozenset()).faces
                for item, _ in extents(face.items)
                if isinstance(item, Text)
            ]
            assert min(sizes) >= 12_000 * percent // 100


def test_no_word_of_a_table_is_parted() -> None:
    """`temperature` and `yellow` have to stand in a column each: on a narrow leaf they share one."""
    for name in ("A5, two holes", "half letter, three holes", "A6"):
        handbook = replace(book(""), stock=large(STOCKS[name]))
        made_book = make_book(handbook, Checklists(handbook).all())
        (face,) = (face for face in made_book.faces if face.title == "Instrument markings")
        texts = " ".join(item.string for item, _ in extents(face.groups) if isinstance(item, Text))
        assert "temperature" in texts
        assert "yellow" in texts


def test_the_title_stays_on_one_face_in_smaller_type_where_that_is_enough() -> None:
    handbook = replace(book(""), stock=large(STOCKS["A5, two holes"]))
    made_book = make_book(handbook, Checklists(handbook).all())
    assert [face.label.serial for face in made_book.faces if face.key == "*title"] == [1]


@pytest.mark.parametrize("name", ["kneeboard, quarter letter", "95 x 171 mm, six rings", "A6"])
def test_the_list_of_faces_ends_in_the_largest_type_on_the_smallest_leaves(name: str) -> None:
    """In type that grew with all else, each face of the list held less than it added."""
    title = "A very long title of a card that tells of trouble in more words than were needed"
    more = "".join(f"normal {title} {n}\n  when it is time\n  Nose .... DOWN\n\n" for n in range(20))
    handbook = replace(book(more), stock=large(STOCKS[name], LARGEST_TYPE))
    made_book = make_book(handbook, Checklists(handbook).all())
    listed = [face for face in made_book.faces if face.key == "*effective faces"]
    assert 1 < len(listed) < len(made_book.faces) // 2


def test_kind_and_registration_grow_too() -> None:
    stock = STOCKS["A5, two holes"]
    sizes = []
    for one in (stock, large(stock)):
        handbook = replace(book(""), stock=one)
        face = next(face for face in make_book(handbook, Checklists(handbook).all()).faces if face.kind == "emergency")
        head = next(group for group in face.groups if group.role == "head")
        sizes.append([item.size for item, _ in extents((head,)) if isinstance(item, Text) and item.font is Font.BOLD])
    assert sizes == [[9_500], [12_500]]
