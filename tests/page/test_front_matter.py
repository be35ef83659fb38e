"""The control leaf and the tables of declared numbers: whole, true and inside their frames.

Outside checks: the list of effective faces lists every face, the title face and itself, and stands behind the title
(MIL-STD-38784A, 4.5.3); limits are section 2 (GAMA Specification 1).
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Drawn, Text
from dotleader.page.extents import Rect, extents
from dotleader.page.face.book import make_book
from dotleader.page.face.declared import lay_declared
from dotleader.page.face.front_matter import CAUTIONS, LIST_TITLE, lay_title
from dotleader.page.frames import frame_of
from dotleader.page.laid import LaidCard, LaidFace
from dotleader.page.lay.flow import Strip, flowed, heading, prose
from dotleader.page.lay.tables import cells, table
from dotleader.page.type.symbols import symbols_of
from dotleader.source.outcome import Outcome
from dotleader.source.record import replace
from dotleader.source.text import SourceText
from tests.page.leaves import EVERY_KIND, STOCKS, cards, stock_of

ALL_STOCKS = pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)

TEXT = """\
handbook Ostrel Two flight handbook
  aircraft ......... Ostrel Two
  registration ..... N0STL
  engine ........... four cylinders, fuel injected, with a propeller of constant speed and two blades
  paper ............ A4

sources
  kit manual ....... builder's manual, issue 4
  stall tests ...... flight test card 12, 2026-04-11

speeds
  VS0 .............. 46 KIAS from stall tests
  VFE at 10 deg .... 100 KIAS from kit manual, page 12
  VNE .............. 160 KIAS unverified
  VREF ............. 1.3 * {VS0} rounded up to 1 KIAS
  circuit speed .... 80 KIAS from kit manual

values
  usable fuel ...... 38 US gal from kit manual

gauge Oil pressure in psi from kit manual
  red .............. below 25
  green ............ 55 to 95

gauge Cylinder head temperature in degC from kit manual
  green ............ 65 to 224
  red .............. above 246
"""


def handbook(text: str = TEXT) -> Handbook:
    outcome = resolve(SourceText("book.cards", text), "book.cards", lambda _: Outcome(SourceText("", "")))
    return outcome.value[0]


def on(stock: Stock, text: str = TEXT) -> Handbook:
    return replace(handbook(text), stock=stock)


def words(items: tuple[Drawn, ...]) -> str:
    return " ".join(item.string for item, _ in extents(items) if isinstance(item, Text))


def inside(card: LaidCard, stock: Stock) -> bool:
    frame = frame_of(stock)
    room = Rect(0, frame.top, frame.width, frame.bottom)
    return all(ink.inside(room) for face in card.faces for _, ink in extents(face.items))


@ALL_STOCKS
def test_the_title_face_says_what_the_handbook_says_and_every_caution(stock: Stock) -> None:
    title = lay_title(on(stock), frame_of(stock))
    again = ("Ostrel Two flight handbook", "continued")
    whole = " ".join(line for face in title.faces for line in face.says if line not in again)
    assert title.title == "Ostrel Two flight handbook"
    for said in ("N0STL", "four cylinders", "Record of issues", "not issued", *CAUTIONS):
        assert said in whole
    assert "A4" not in whole
    drawn = " ".join(words(face.items) for face in title.faces)
    for caution in CAUTIONS:
        assert all(word in drawn for word in caution.split())
    assert inside(title, stock)


def test_the_title_face_is_one_face_of_a_usual_leaf() -> None:
    assert len(lay_title(handbook(), frame_of(STOCKS["A5"])).faces) == 1


@ALL_STOCKS
def test_the_list_of_effective_faces_lists_every_face_once_and_stands_behind_the_title(stock: Stock) -> None:
    book = make_book(on(stock), EVERY_KIND)
    listed = [face for face in book.faces if face.title == LIST_TITLE]
    rows = [line for face in listed for line in face.says if line.endswith(("  not issued", "  none"))]
    assert [row.split("  ")[0] for row in rows] == [str(face.label) for face in book.faces]
    for row, face in zip(rows, book.faces, strict=True):
        short = row.endswith("none")
        title = row.split("  ")[1]
        if face.blank:
            assert title == "left blank"
        elif face.part:
            assert title == ("continued" if short else f"{face.title}, continued")
        else:
            assert title == face.title
    total = f"{len(book.faces)} faces on {len(book.faces) // 2} leaves"
    assert total in " ".join(listed[-1].says)
    assert str(book.faces[0].label) == "0-1"
    assert (book.faces[0].parts, str(listed[0].label)) == (1, "0-2") or book.faces[0].parts > 1


@given(cards())
def test_the_list_is_as_long_as_it_says(some: tuple[LaidCard, ...]) -> None:
    book = make_book(handbook(), some)
    rows = [line for face in book.faces if face.title == LIST_TITLE for line in face.says if "not issued" in line]
    assert len(rows) == len(book.faces)


@pytest.mark.parametrize("text", ["stock\n  leaf .... 90 x 130 mm\n  holes .... none\n  paper .... A4\n", "stock A6\n"])
def test_on_small_leaves_the_list_is_not_about_itself(text: str) -> None:
    """Where a face holds five rows, a list of twenty has four of its own, each in a row of two lines."""
    stock = stock_of(text)
    book = make_book(on(stock), EVERY_KIND)
    listed = [face for face in book.faces if face.title == LIST_TITLE]
    rows = [line for face in listed for line in face.says if line.endswith("  none")]
    assert [row.split("  ")[0] for row in rows] == [str(face.label) for face in book.faces]
    assert len(book.faces) > 12 * (len(listed) - 1)
    assert "0-1  Ostrel Two flight handbook  none" in rows
    own = next(stand.card for stand in book.placement.stands if stand.card and stand.card.title == LIST_TITLE)
    assert inside(own, stock)


def test_a_total_stands_on_no_other_face() -> None:
    few, many = make_book(handbook(), EVERY_KIND[:4]), make_book(handbook(), EVERY_KIND)
    for book in (few, many):
        for face in book.faces:
            if face.title != LIST_TITLE:
                assert f"{len(book.faces)} faces" not in " ".join(words(group.items) for group in face.groups)


def test_declared_numbers_stand_in_one_place_with_their_sources() -> None:
    book = handbook()
    found = {card.title: card for card in lay_declared(book, frame_of(book.stock), symbols_of(book))}
    assert {title: card.section for title, card in found.items()} == {
        "Sources": "1",
        "Airspeeds": "2",
        "Values": "2",
        "Instrument markings": "2",
    }
    speeds = found["Airspeeds"].faces[0].says
    assert "VS0  46 KIAS  stalling speed, landing configuration; from stall tests" in speeds
    assert "VFE at 10 deg  100 KIAS  greatest speed, flaps extended; from kit manual, page 12" in speeds
    assert "VNE  160 KIAS  never exceed; UNVERIFIED" in speeds
    assert "VREF  60 KIAS  landing reference speed; = 1.3 × VS0 rounded up to 1 KIAS" in speeds
    assert "circuit speed  80 KIAS  from kit manual" in speeds
    assert "usable fuel  38 US gal  kit manual" in found["Values"].faces[0].says
    marks = found["Instrument markings"].faces[0].says
    assert "Oil pressure  red  below 25 psi  kit manual" in marks
    assert "green  55 to 95 psi" in marks


def test_speeds_have_subscripts_and_other_names_have_none() -> None:
    book = handbook()
    assert symbols_of(book) == {"VS0", "VFE", "VNE", "VREF"}
    laid = lay_declared(book, frame_of(book.stock), symbols_of(book))
    (airspeeds,) = (card for card in laid if card.title == "Airspeeds")
    strings = [item.string for item, _ in extents(airspeeds.faces[0].items) if isinstance(item, Text)]
    assert "S0" in strings
    assert "circuit speed" in strings


def test_nothing_declared_makes_no_table() -> None:
    empty = handbook("handbook Bare\n")
    assert lay_declared(empty, frame_of(empty.stock), symbols_of(empty)) == ()


@ALL_STOCKS
def test_tables_stay_in_the_frame_of_every_leaf(stock: Stock) -> None:
    book = on(stock)
    for card in lay_declared(book, frame_of(stock), symbols_of(book)):
        assert inside(card, stock)


TEXTS = st.text("abc VS0 12-/é", max_size=40)


@given(st.lists(st.tuples(TEXTS, TEXTS, TEXTS), max_size=30), st.integers(50_000, 180_000))
def test_cells_of_a_table_do_not_run_into_each_other(rows: list[tuple[str, str, str]], width: int) -> None:
    made = table(("Name", "Value", "From"), [cells(*row, bold=(1,)) for row in rows], width, 12_000)
    assert sum(bool(strip.says) for strip in made.rows) == sum(any(text.split() for text in row) for row in rows)
    for strip in (made.head, *made.rows):
        found = [ink for item, ink in extents(strip.items) if isinstance(item, Text)]
        for ink in found:
            assert ink.left >= 0
            assert ink.right <= width + 20  # rounding of widths to whole micrometres, once for each run
            assert ink.top >= 0
            assert ink.bottom <= strip.height
        by_line: dict[int, list[Rect]] = {}
        for ink in found:
            by_line.setdefault(ink.bottom, []).append(ink)
        for line in by_line.values():
            for one, other in pairwise(sorted(line)):
                assert one.right <= other.left + 20


@given(st.lists(TEXTS, max_size=30), st.sampled_from(sorted(STOCKS)))
def test_text_that_flows_over_faces_is_whole_and_in_order(paragraphs: list[str], name: str) -> None:
    frame = frame_of(STOCKS[name])
    strips = list(heading("Cautions", frame.width, 14_000))
    for text in paragraphs:
        strips += prose(text, frame.width, 12_000)
    made = flowed("A title", strips, frame)
    assert made
    said = [line for face in made for line in face.says if line not in ("A title", "continued")]
    assert said == [line for strip in strips for line in strip.says]
    room = Rect(0, frame.top, frame.width, frame.bottom)
    for face in made:
        assert all(ink.inside(room) for _, ink in extents(face.items))
        assert heading_is_not_last(face)


def heading_is_not_last(face: LaidFace) -> bool:
    return face.says[-1] != "Cautions" or face.says == ("A title", "Cautions")


def test_a_row_that_is_higher_than_a_face_goes_on_on_the_next() -> None:
    long = handbook(TEXT.replace("four cylinders", "four cylinders, " * 400))
    for stock in STOCKS.values():
        title = lay_title(long, frame_of(stock))
        assert len(title.faces) > 1
        assert inside(title, stock)
        drawn = " ".join(words(face.items) for face in title.faces)
        assert drawn.count("cylinders") == 400


def test_what_is_held_to_what_follows_goes_over_with_it() -> None:
    frame = frame_of(STOCKS["A6"])
    room = frame.bottom - frame.top
    tall = Strip(room * 2 // 3, (), ("tall",))
    head = Strip(5_000, (), ("head",), keep=True)
    made = flowed("T", [tall, head, tall, head], frame)
    assert [face.says for face in made] == [("T", "tall"), ("T", "continued", "head", "tall", "head")]
