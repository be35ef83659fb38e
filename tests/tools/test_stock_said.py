"""What is said of a print on folded cards, with either cut lines, and with holes that film seals."""

from __future__ import annotations

from pathlib import Path

import pypdf
import pytest

from tests.tools.running import run, write

BOOK = """\
handbook Ostrel Two flight handbook
  registration .... N0STL
"""
CARDS = "".join(f"\nnormal Taxi {number}\n  Brakes .... CHECK, HOLD\n" for number in range(1, 5))
MORE = "\nnormal Shutdown\n  Brakes .... SET\n"
FOLDED = "\nstock folded card, A6\n"


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def said(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    ran = run(capsys, "print", *arguments)
    assert (ran.code, ran.err) == (0, "")
    return " ".join(ran.out.split())


def test_four_cards_make_one_folded_card_and_nothing_else(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK + CARDS + FOLDED)
    text = said(capsys, "book.cards")
    assert "reading.pdf 4 faces, to read" in text
    assert "sheets.pdf 1 folded card on 1 sheet of A4, to print and cut" in text
    assert "no control leaf, no index, no contents and no tables of numbers" in text
    assert "Score and fold from dashes to dashes" in text
    assert "each folded by itself" not in text
    pages = pypdf.PdfReader(here / "printed" / "reading.pdf").pages
    for number, page in enumerate(pages, start=1):
        assert f"Taxi {number}" in page.extract_text()
        assert "Builder’s own handbook. The pilot in command is responsible." in " ".join(page.extract_text().split())


def test_a_fifth_card_makes_a_second_one_and_it_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK + CARDS + MORE + FOLDED)
    text = said(capsys, "book.cards")
    assert "2 folded cards on 2 sheets of A4" in text
    assert "A folded card has 4 faces, and these are 5: they make 2 cards, each folded by itself" in text
    checked = said(capsys, "--check", "book.cards")
    assert "8 faces on 2 folded cards." in checked
    assert "they make 2 cards" in checked
    stacked = said(capsys, "--order", "stack", "book.cards")
    assert "There is one card to a sheet: the cut pile is the book in order." in stacked


def test_a_part_of_a_book_is_whole_folded_cards(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK + CARDS + MORE + FOLDED)
    text = said(capsys, "--cards", "Taxi 2", "book.cards")
    assert "reading.pdf 4 faces, to read" in text
    assert "1 folded card on 1 sheet" in text
    assert "4 faces" in said(capsys, "--cards", "Shutdown", "book.cards")


def test_where_the_open_card_fills_the_paper_the_setting_up_sheet_says_where_to_fold(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, book=BOOK + CARDS + "\nstock A4 folded to A5\n  bound at .... left\n")
    assert "Score and fold where the setting-up sheet says" in said(capsys, "book.cards")
    first = " ".join(pypdf.PdfReader(here / "printed" / "sheets.pdf").pages[0].extract_text().split())
    assert "Fold across, 148.5 mm from the sheet's upper edge, the side that is printed first outside." in first


def test_how_many_leaves_either_cut_lines_give_is_said_before_printing(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, book=BOOK + CARDS + "\nstock A5\n", apart=BOOK + CARDS + "\nstock A5\n  cut lines .... separate\n")
    both = "A sheet takes with shared cut lines 2 leaves and with separate cut lines 1 leaf"
    assert f"{both}." in said(capsys, "--check", "book.cards")
    assert f"{both}, as here." in said(capsys, "--check", "apart.cards")
    write(here, large=BOOK + CARDS + "\nstock A4\n")
    assert "1 leaf and with separate cut lines none." in said(capsys, "--check", "large.cards")


def test_relief_is_said_with_both_widths(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK + CARDS + "\nstock 6 x 9 in pouch\n  relief .... 3 mm\n")
    wanted = "The holes in the paper are 12 mm wide, 3 mm more all round than they are punched (6 mm)"
    assert wanted in said(capsys, "book.cards")
    assert wanted in said(capsys, "--check", "book.cards")


@pytest.mark.parametrize(
    "rows",
    ["  relief .... 9 mm\n", "  folded .... once\n  seal .... 4 mm\n", "  holes .... 4, 80 mm apart\n"],
)
def test_a_stock_that_cannot_be_prints_nothing(here: Path, capsys: pytest.CaptureFixture[str], rows: str) -> None:
    write(here, book=BOOK + CARDS + "\nstock 6 x 9 in pouch\n" + rows)
    ran = run(capsys, "print", "--draft", "book.cards")
    assert (ran.code, ran.err) == (1, "")
    assert "impossible-stock" in ran.out
    assert not (here / "printed").exists()
