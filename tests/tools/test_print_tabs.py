"""A book with cut tabs and dividers, printed: which files there are, and what is said of them."""

from __future__ import annotations

import re
from pathlib import Path

import pypdf
import pytest

from tests.tools.running import names, run, write

CARDS = "\n".join(
    f"{kind} Card {n}\n  when it sounds odd\n  Nose .... DOWN\n{'' if kind == 'normal' else '  end'}\n"
    for n, kind in enumerate(["emergency", "emergency", "abnormal", "normal", "normal"], start=1)
)


def book(stock: str, *rows: str) -> str:
    return "\n".join(
        ["handbook Ostrel Two flight handbook", f"stock {stock}", *(f"  {row}" for row in rows), "", CARDS]
    )


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "200")
    return tmp_path


def test_each_place_of_tabs_has_a_pair_of_files_and_the_number_is_said(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, book=book("6 x 9 in pouch", "tabs .... cut, 8 mm deep"))
    ran = run(capsys, "print", "book.cards", "--to", "out")
    assert (ran.code, ran.err) == (0, "")
    # the front matter, and sections 3, 3A and 4
    assert {"cut.svg", "cut-2.svg", "cut-3.dxf", "cut-4.dxf"} < set(names(here / "out"))
    assert "cut-5.svg" not in names(here / "out")
    said = " ".join(ran.out.split())
    assert "Tabs are cut in 4 ways, each by a pair of files of its own" in said
    assert "The film around them stays whole" in said
    sheets = pypdf.PdfReader(here / "out" / "sheets.pdf").pages
    fronts = [" ".join(page.extract_text().split()) for page in sheets][::2]
    by = [found[1] for text in fronts if (found := re.search(r"Cut by (cut[-\d]*\.svg)", text))]
    assert sorted(set(by)) == ["cut-2.svg", "cut-3.svg", "cut-4.svg", "cut.svg"]


def test_where_all_tabs_are_in_one_place_one_pair_cuts_all(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=book("6 x 9 in pouch", "tabs .... cut"))
    ran = run(capsys, "print", "book.cards", "--to", "out", "--only", "normal")
    assert ran.code == 0
    assert "one pair of files cuts them" in ran.out
    assert "cut-2.svg" not in names(here / "out")


def test_what_is_cut_off_beside_tabs_is_waste(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    waste = []
    for tabs in ("printed", "cut, 15 mm deep"):
        write(here, book=book("6 x 9 in pouch", f"tabs .... {tabs}"))
        ran = run(capsys, "print", "book.cards", "--check")
        assert ran.code == 0
        found = re.search(r"(\d+) % of it waste", ran.out)
        assert found
        waste.append(int(found[1]))
    # 15 mm by (222.25 - 24) mm of 215.9 by 279.4 mm of paper are 4.9 per cent
    assert waste[1] - waste[0] in (4, 5)


def test_a_tab_that_cannot_be_cut_prints_nothing(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=book("A5", "tabs .... cut, 2 mm deep"))
    ran = run(capsys, "print", "book.cards", "--to", "out")
    assert ran.code == 1
    assert "2 mm too shallow" in ran.out
    assert not (here / "out").exists()


def test_dividers_are_in_the_reading_copy_and_in_its_outline(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=book("A5", "dividers .... yes"))
    assert run(capsys, "print", "book.cards", "--to", "out").code == 0
    reader = pypdf.PdfReader(here / "out" / "reading.pdf")
    labels = list(reader.page_labels)
    text = " ".join(reader.pages[labels.index("3-1")].extract_text().split())
    assert "3 Emergency procedures Card 1 When it sounds odd Card 2 When it sounds odd 3-3 3-4" in text
    entries = [entry for entry in reader.outline if not isinstance(entry, list)]
    assert {reader.get_destination_page_number(entry) for entry in entries} >= {
        labels.index(label) for label in ("3-1", "3A-1", "4-1")
    }
