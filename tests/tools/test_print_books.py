"""Books of one handbook: each printed by itself, into a folder of its own, and looked at before."""

from __future__ import annotations

from pathlib import Path

import pypdf
import pytest

from dotleader.handbook.contents import books_of
from dotleader.tools.files import Files
from dotleader.tools.pipeline import lint_handbook
from dotleader.tools.printing.book_choice import folder_of
from tests.tools.running import Ran, names, run, write

CARDS = """\
handbook Ostrel Two flight handbook
  registration .... N0STL

emergency Fire in flight
  when flames come from the cowling
  memory
    Fuel selector .... OFF
  go to Forced landing

emergency Forced landing
  when the engine gives no power
  Landing site .... CHOOSE
  end

normal Cruise
  when level
  Mixture .... LEANED

stock A5
"""
LOOSE = CARDS.partition("\n\n")[2]
"""Nothing is missing from cards that are no handbook."""

SET = "\nbook Full book\n\nbook Cockpit set\n  section .... Emergency\n  stock .... A6\n"
LONG = "\nnormal Taxi\n  when the engine runs\n" + "".join(
    f"  group Row {row}\n" + "".join(f"    Breaker {row}{number} .... IN\n" for number in range(1, 7)) for row in "ABC"
)


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, book=CARDS + SET)
    return tmp_path


def printed(capsys: pytest.CaptureFixture[str], *options: str) -> Ran:
    return run(capsys, "print", "book.cards", *options)


def words(path: Path) -> list[str]:
    return [page.extract_text() for page in pypdf.PdfReader(path).pages]


def test_the_first_book_is_printed_unasked_and_others_beside_it(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    full = printed(capsys)
    assert (full.code, full.err) == (0, "")
    assert "This is the book `Full book`; `--book` prints `Cockpit set`." in full.out
    before = {name: (here / "printed" / name).read_bytes() for name in names(here / "printed")}
    ran = printed(capsys, "--book", "cockpit SET")
    assert (ran.code, ran.err) == (0, "")
    assert "This is the book `Cockpit set`; `--book` prints `Full book`." in ran.out
    assert {name: (here / "printed" / name).read_bytes() for name in before} == before
    other = here / "printed" / "cockpit-set"
    assert {"reading.pdf", "sheets.pdf", "printed.json"} <= set(names(other))
    assert run(capsys, "print", "book.cards", "--book", "Full book").out == full.out
    assert set(names(here / "printed")) == {*before, "cockpit-set"}


def test_a_book_has_its_own_labels_list_and_title(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=CARDS + "\nbook Full book\n\nbook Home set\n  section .... Normal\n  stock .... A5, no holes\n")
    printed(capsys)
    printed(capsys, "--book", "Home set")
    reading = pypdf.PdfReader(here / "printed" / "home-set" / "reading.pdf")
    assert [str(label) for label in reading.page_labels] == ["0-1", "0-2", "4-1", "4-2"]
    assert reading.metadata is not None
    assert reading.metadata.title == "Home set, Ostrel Two flight handbook"
    texts = words(here / "printed" / "home-set" / "reading.pdf")
    assert "Home set" in texts[0]
    assert "4 faces on 2 leaves" in texts[1]
    assert "Fire in flight" not in " ".join(texts)
    assert all("Home set, Ostrel Two" in " ".join(text.split()) for text in texts)
    assert reading.pages[0].trimbox[2] == pytest.approx(148 / 25.4 * 72, abs=0.01)
    assert "Fire in flight" in " ".join(words(here / "printed" / "reading.pdf"))


def test_a_book_that_is_not_there_stops_the_print(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = printed(capsys, "--book", "Cokpit set")
    assert (ran.code, ran.out) == (2, "")
    assert "`--book Cokpit set`: the handbook has no such book." in ran.err
    assert "`Cockpit set`" in ran.err
    assert "`Full book`, `Cockpit set`" in printed(capsys, "--book", "zzz").err
    write(here, book=CARDS)
    ran = printed(capsys, "--book", "Full book")
    assert ran.code == 2
    assert "declares no books" in ran.err
    assert names(here) == ["book.cards"]


def test_a_go_to_that_leads_out_of_the_book_stops_its_print_and_no_others(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, book=CARDS + "\nbook Full book\n\nbook Fire set\n  card .... Fire in flight\n")
    lint = run(capsys, "lint", "book.cards")
    assert lint.code == 1
    said = " ".join(lint.out.split())
    assert "The book `Fire set` has no card `Forced landing`, to which `Fire in flight` leads." in said
    assert "card .... Forced landing" in said
    ran = printed(capsys, "--book", "Fire set")
    assert ran.code == 1
    assert "go-to-outside-book" in ran.out
    assert not (here / "printed").exists()
    assert printed(capsys).code == 0
    assert printed(capsys, "--book", "Fire set", "--draft").code == 0
    text = " ".join(" ".join(words(here / "printed" / "fire-set" / "reading.pdf")).split())
    assert "Forced landing not in this book" in text


def test_a_card_too_long_for_one_book_is_said_of_that_book(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=LOOSE + LONG + "\nbook Full book\n\nbook Night\n  type .... large\n")
    ran = run(capsys, "lint", "--as", "brief", "book.cards")
    assert ran.code == 0
    assert "In the book `Night`, `Taxi` continues on a second face" in ran.out
    assert "Full book" not in ran.out
    assert "finding" not in printed(capsys, "--check").out
    assert "1 warning" in printed(capsys, "--check", "--book", "Night").out


def test_books_on_leaves_of_one_size_have_one_finding(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    books = "\nbook One\n\nbook Two\n  section .... Normal\n\nbook Three\n  section .... Emergency\n"
    write(here, book=CARDS.replace("stock A5", "stock A6") + LONG + books)
    ran = run(capsys, "lint", "--as", "brief", "book.cards")
    found = [line for line in ran.out.splitlines() if "card-" in line]
    assert len(found) == 1
    assert "In the books `One` and `Two`, `Taxi`" in found[0]


def test_a_suppression_for_one_book_is_not_unused_when_another_is_printed(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    allowed = LONG.replace("normal Taxi\n", "normal Taxi  # allow card-continued: lies open on the knee\n")
    write(here, book=LOOSE + allowed + "\nbook Full book\n\nbook Night\n  type .... large\n")
    assert run(capsys, "lint", "--as", "brief", "book.cards").out == ""
    assert "warning" not in printed(capsys, "--check").out


def test_parts_of_a_book_are_asked_for_in_the_book(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = printed(capsys, "--book", "Cockpit set", "--cards", "Cruise")
    assert ran.code == 2
    assert "no such card in the book" in ran.err
    assert printed(capsys, "--book", "Cockpit set", "--only", "emergency", "--check").code == 0


def test_check_lays_out_the_book_that_is_asked_for(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    full, part = printed(capsys, "--check"), printed(capsys, "--check", "--book", "Cockpit set")
    assert "6 faces on 3 leaves." in full.out
    assert "6 faces on 3 leaves." in part.out
    assert full.out != part.out
    assert names(here) == ["book.cards"]


def test_every_book_has_a_folder_of_its_own(here: Path) -> None:
    named = ("Full book", "A/B: set", "A b - SET", "..", "Ünïcode", "x" * 200, "reading.pdf")
    write(here, book=CARDS + "".join(f"\nbook {name}\n" for name in named))
    handbook = lint_handbook("book.cards", Files()).handbook
    found = [folder_of(handbook, book) for book in books_of(handbook)]
    assert found[:5] == ["printed", *(f"printed/{name}" for name in ("a-b-set", "a-b-set-2", "book", "ünïcode"))]
    assert len(set(found)) == len(named)
    assert max(map(len, found)) < 80
    assert "printed/reading-pdf" in found


def test_a_book_has_a_page(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = run(capsys, "explain", "cockpit", "set", "--in", "book.cards")
    assert (ran.code, ran.err) == (0, "")
    said = " ".join(ran.out.split())
    assert "stock A6" in said
    assert "2 of 3: Fire in flight, Forced landing" in said
    assert '--book "Cockpit set"' in said
    assert "Did you mean" in run(capsys, "explain", "cokpit", "set", "--in", "book.cards").err
