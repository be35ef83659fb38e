"""Books: what is in them, what they are printed on, and what is wrong with them."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.book import LARGE_TYPE, DeclaredBook
from dotleader.handbook.contents import books_of, contents
from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.handbook.stocks.known import STOCK_NAMES
from dotleader.page.lay.laid_books import LaidBooks
from dotleader.source.finding import Finding
from dotleader.source.text import SourceText

CARDS = """\
handbook Ostrel Two flight handbook

values
  fuel .... 38 US gal unverified

emergency Forced landing
  when no power is left
  Landing site .... CHOOSE
  end

abnormal Flap failure
  when the flaps stay up
  Approach .... FLAT
  end

normal Cruise
  when level
  Fuel .... {fuel}

normal Descent
  when the field is in sight
  Mixture .... RICH

text Foreword
  Invented.
"""


def resolved(more: str) -> tuple[Handbook, tuple[Finding, ...]]:
    made = resolve(SourceText("book.cards", f"{CARDS}\n{more}"), "book.cards", lambda _: "no")
    return made.value[0], made.findings


def only(more: str) -> tuple[Handbook, DeclaredBook]:
    handbook, findings = resolved(more)
    assert findings == ()
    (book,) = handbook.books
    return handbook, book


def titles(handbook: Handbook, book: DeclaredBook) -> list[str]:
    return [card.title for card in contents(handbook, book).cards]


def test_without_a_book_everything_is_one() -> None:
    handbook, findings = resolved("")
    assert (handbook.books, findings) == ((), ())
    (book,) = books_of(handbook)
    assert (book.name, book.whole, book.stock) == ("", True, handbook.stock)
    assert contents(handbook, book) is handbook


@pytest.mark.parametrize(
    ("rows", "expected", "essays"),
    [
        ("", ["Forced landing", "Flap failure", "Cruise", "Descent"], 1),
        ("  section .... Emergency\n", ["Forced landing"], 0),
        ("  section .... emergency procedures\n  section .... 3A\n", ["Forced landing", "Flap failure"], 0),
        ("  section .... General\n", [], 1),
        ("  card .... descent\n  card .... Forced landing\n", ["Forced landing", "Descent"], 0),
        ("  section .... Emergency\n  card .... Cruise\n", ["Forced landing", "Cruise"], 0),
    ],
)
def test_a_book_has_its_sections_and_cards_in_the_order_of_the_handbook(
    rows: str, expected: list[str], essays: int
) -> None:
    handbook, book = only(f"book Set\n{rows}")
    assert titles(handbook, book) == expected
    assert len(contents(handbook, book).essays) == essays
    assert book.whole is (not rows)


@pytest.mark.parametrize(
    ("text", "percent"), [("usual", 100), ("large", LARGE_TYPE), ("Large", LARGE_TYPE), ("110 %", 110), ("150%", 150)]
)
def test_type_is_usual_large_or_a_factor(text: str, percent: int) -> None:
    _, book = only(f"book Set\n  type .... {text}\n")
    assert book.stock.type_percent == percent


@pytest.mark.parametrize("name", STOCK_NAMES)
def test_every_known_stock_can_be_asked_for(name: str) -> None:
    _, book = only(f"book Set\n  stock .... {name}\n")
    assert book.stock.name == name
    assert book.stock.spot is None


def test_the_first_stock_is_the_handbooks_and_others_are_for_books() -> None:
    handbook, findings = resolved(
        "stock A5\n\nstock Thigh card\n  leaf .... 110 x 160 mm\n\nbook Full\n\nbook Thigh\n  stock .... thigh CARD\n"
    )
    assert findings == ()
    full, thigh = handbook.books
    assert full.stock == handbook.stock
    assert handbook.stock.leaf == (148_000, 210_000)
    assert thigh.stock.leaf == (110_000, 160_000)


def test_a_stock_of_the_handbook_goes_before_a_known_one_of_its_name() -> None:
    _, book = only("stock A5\n  corners .... 7 mm\n\nbook Set\n  stock .... A5\n")
    assert book.stock.corner_radius == 7_000


def test_a_known_stock_is_on_the_paper_of_the_handbook_where_it_fits() -> None:
    text = CARDS.replace("handbook\n", "handbook\n  paper .... Letter\n", 1)
    made = resolve(
        SourceText("book.cards", f"{text}\nbook Set\n  stock .... A6\n\nbook Large\n  stock .... A4\n"),
        "b",
        lambda _: "no",
    )
    small, large = made.value[0].books
    assert (small.stock.paper_name, large.stock.paper_name) == ("Letter", "A4")


@pytest.mark.parametrize(
    ("more", "rule", "marked", "helped"),
    [
        ("book Set\n  setion .... Normal\n", "unknown-property", "setion", "`section`"),
        ("book Set\n  colour .... red\n", "unknown-property", "colour", "`section`"),
        ("book Set\n  section .... Emergencies\n", "unknown-section", "Emergencies", "`Emergency`"),
        ("book Set\n  section .... Normal, Emergency\n", "unknown-section", "Normal, Emergency", "row of its own"),
        ("book Set\n  section .... Zzz\n", "unknown-section", "Zzz", "row of its own"),
        ("book Set\n  section .... Performance\n", "empty-section", "Performance", "take the row out"),
        ("book Set\n  card .... Cruse\n", "unknown-card", "Cruse", "`Cruise`"),
        ("book Set\n  stock .... A5, tow holes\n", "unknown-stock", "A5, tow holes", "`A5, two holes`"),
        ("book Set\n  type .... huge\n", "unreadable-value", "huge", "100 % to 150 %"),
        ("book Set\n  type .... larg\n", "unreadable-value", "larg", "`large`"),
        ("book Set\n  type .... 90 %\n", "unreadable-value", "90 %", "100 % to 150 %"),
        ("book Set\n  type .... 9000 %\n", "unreadable-value", "9000 %", "100 % to 150 %"),
        ("book Set\n  card .... {fuel}\n", "unreadable-value", "{fuel}", "card .... "),
        ("book Set\n  type .... large\n  type .... usual\n", "name-used-twice", "type", "Take one"),
        ("book Set\n  card .... Cruise\n  card .... CRUISE\n", "name-used-twice", "card", "Take one"),
        ("book Set\n\nbook set\n", "name-used-twice", "set", "another name"),
        ("stock A5\n\nstock\n  leaf .... A6\n", "name-used-twice", "stock", "Give this one a name"),
        ("stock A5\n\nstock A6\n\nstock a6\n\nbook S\n  stock .... A6\n", "name-used-twice", "a6", "another name"),
        ("stock A5\n\nstock A6\n", "stock-never-used", "A6", "stock .... A6"),
        ("stock A5\n\nstock Own\n  leaf .... 3 mm\n\nbook S\n  stock .... Own\n", "unreadable-value", "3 mm", "leaf"),
    ],
)
def test_what_is_wrong_is_one_finding_that_helps(more: str, rule: str, marked: str, helped: str) -> None:
    handbook, findings = resolved(more)
    assert [(found.rule, found.spot.text) for found in findings] == [(rule, marked)]
    assert helped in findings[0].help
    assert all(book.stock.type_percent == 100 or rule == "name-used-twice" for book in handbook.books)


def test_a_book_whose_rows_name_nothing_is_not_everything() -> None:
    handbook, _ = resolved("book Set\n  section .... Zzz\n  card .... Yyy\n")
    (book,) = handbook.books
    assert not book.whole
    assert titles(handbook, book) == []


def test_a_book_without_a_name_is_said_by_the_parser_and_left_out() -> None:
    handbook, findings = resolved("book\n  section .... Normal\n")
    assert handbook.books == ()
    assert [found.rule for found in findings] == ["unnamed-block"]


_RIGHTS = st.sampled_from(
    [
        "Emergency",
        "3A",
        "Zzz",
        "Cruise",
        "Forced landing",
        "A5",
        "Own",
        "folded card, A6",
        "large",
        "100 %",
        "{fuel}",
        "",
    ]
)
_ROWS = st.lists(st.tuples(st.sampled_from(["section", "card", "stock", "type", "colour"]), _RIGHTS), max_size=6)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(["One", "Two", "one"]), _ROWS), max_size=3), st.integers(0, 2))
def test_whatever_is_written_a_book_is_read_and_laid_out(
    books: list[tuple[str, list[tuple[str, str]]]], own: int
) -> None:
    stocks = ["", "stock Own\n  leaf .... A6\n\n", "stock A5\n\nstock Own\n  leaf .... A6\n\nstock Own\n\n"][own]
    text = stocks + "\n".join(
        f"book {name}\n" + "".join(f"  {left} .... {right}\n" for left, right in rows) for name, rows in books
    )
    handbook, findings = resolved(text)
    assert len(handbook.books) == len({name.casefold() for name, _ in books})
    assert all(found.message and found.help for found in findings)
    laid = LaidBooks(handbook, books_of(handbook))
    for book in books_of(handbook):
        assert [card.key for card in laid.cards(book)] == [card.key for card in contents(handbook, book).cards]
