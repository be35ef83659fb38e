"""`making-up.pdf` from end to end: it is written with every print, and says how that was printed."""

from __future__ import annotations

import re
from pathlib import Path

import pypdf
import pytest

from tests.tools.running import Ran, run, write

PUNCH = "\npunch Desk punch\n  holes .... 2, 80 mm apart, 6 mm wide, 12 mm from edge\n  stop .... {}\n"
BOOK = (
    "handbook Ostrel Two flight handbook\n  registration .... N0STL\n\n"
    + "\n".join(f"normal Taxi {n}\n  when the engine runs smoothly\n  Brakes .... HOLD\n" for n in range(5))
    + "\nemergency Fire\n  when you see flames\n  memory\n    Nose .... DOWN\n  end\n"
)


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, book=BOOK)
    return tmp_path


def printed(capsys: pytest.CaptureFixture[str], *options: str) -> Ran:
    ran = run(capsys, "print", "book.cards", "--to", "out", *options)
    assert (ran.code, ran.err) == (0, "")
    return ran


def pages(here: Path) -> list[str]:
    """The text of each page, lines joined."""
    reader = pypdf.PdfReader(here / "out" / "making-up.pdf")
    return [" ".join(page.extract_text().split()) for page in reader.pages]


def test_it_is_written_and_named_in_the_summary(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = printed(capsys)
    assert re.search(r"^out/making-up.pdf +for the bench", ran.out, re.MULTILINE)
    reader = pypdf.PdfReader(here / "out" / "making-up.pdf")
    assert reader.root_object["/ViewerPreferences"]["/PrintScaling"] == "/None"
    box = reader.pages[0].mediabox
    assert (round(float(box.width), 3), round(float(box.height), 3)) == (595.276, 841.89)  # A4, ISO 216
    text = pages(here)[0]
    assert "MAKING-UP SHEET N0STL, Ostrel Two flight handbook" in text
    assert "The pilot in command is responsible." in text
    labels = pypdf.PdfReader(here / "out" / "reading.pdf").page_labels
    assert all(str(label) in " ".join(pages(here)) for label in labels)


def test_it_is_the_same_for_the_same_print(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    printed(capsys)
    first = (here / "out" / "making-up.pdf").read_bytes()
    printed(capsys)
    assert (here / "out" / "making-up.pdf").read_bytes() == first


def test_selections_and_copies_show(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    printed(capsys, "--only", "emergency", "--copies", "3", "--black")
    text = " ".join(pages(here))
    sheets = len(pypdf.PdfReader(here / "out" / "sheets.pdf").pages) // 2
    assert f"{sheets} (1 + 3 × {sheets // 3}) sheets of A4" in text
    assert "3 copies, a part of the book, with the labels of all of it, black only." in text
    assert "3-1" in text
    assert "4-1" not in text


def test_the_order_and_the_turning_show(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    printed(capsys, "--order", "stack", "--turn", "short-edge")
    text = " ".join(pages(here))
    assert "turned on the short edge" in text
    assert "SHORT EDGE" in text
    assert "into 2 stacks" in text


def test_one_sided_printing_shows(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    printed(capsys, "--one-sided")
    text = " ".join(pages(here))
    assert "Print fronts.pdf on one side, then backs.pdf on the backs of these sheets." in text
    assert "ONE SIDE" in text


def test_a_draft_says_so(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK + "\nnormal Late\n  Airspeed .... {VX}\n")
    printed(capsys, "--draft")
    assert "A draft with errors: not for use." in pages(here)[0]


def test_a_printer_shows(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    printed(capsys)
    assert "not corrected for a printer" in pages(here)[0]


@pytest.mark.parametrize("stop", ["scale", "plain", "none"])
def test_the_punch_on_the_desk_is_planned_for(here: Path, capsys: pytest.CaptureFixture[str], stop: str) -> None:
    write(here, book=BOOK + PUNCH.format(stop))
    printed(capsys)
    text = " ".join(pages(here))
    assert "Stroke 1" in text
    assert ("Guide A" in text and "To be cut out" in text) == (stop != "scale")


def test_what_no_font_has_in_a_name_stops_nothing(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK + PUNCH.format("plain").replace("Desk punch", "穿孔機 " + "x" * 200))
    printed(capsys)
    assert "□□□" in " ".join(pages(here))
