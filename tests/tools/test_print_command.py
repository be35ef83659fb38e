"""Print from end to end: what is written, what is refused, and what is said."""

from __future__ import annotations

import json
import os
import pty
import subprocess
from pathlib import Path

import pypdf
import pytest

from dotleader.page.sheet.cut_files import sheets_numbered
from dotleader.tools.printing import progress as progress_module
from dotleader.tools.printing.progress import Progress
from tests.tools.running import command, environment, in_one_line, names, run, write

CLEAN = """\
handbook Ostrel Two flight handbook
  registration .... N0STL

normal Taxi
  Brakes .... CHECK, HOLD
"""
FAULTY = CLEAN + "  Airspeed .... {VX}\n"
IMPOSSIBLE = CLEAN + "\nstock\n  leaf .... 300 x 400 mm\n  paper .... A4\n"


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_a_handbook_is_printed_beside_it(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book__book=CLEAN)
    ran = run(capsys, "print", "book/book.cards")
    assert (ran.code, ran.err) == (0, "")
    assert names(here / "book" / "printed") == [
        "cut.dxf", "cut.svg", "making-up.pdf", "printed.json", "reading.pdf", "sheets.pdf",
    ]  # fmt: skip
    faces = len(pypdf.PdfReader(here / "book" / "printed" / "reading.pdf").pages)
    sheets = len(pypdf.PdfReader(here / "book" / "printed" / "sheets.pdf").pages)
    assert faces % 2 == sheets % 2 == 0
    first, second, third, fourth, fifth, blank, *rest = ran.out.splitlines()
    assert first == f"book/printed/reading.pdf    {faces} faces, to read"
    assert second == f"book/printed/sheets.pdf     {faces // 2} leaves on {sheets // 2} sheets of A4, to print and cut"
    assert third == "book/printed/cut.svg        to cut every sheet by, the front up"
    assert fourth == "book/printed/cut.dxf        the same paths for other programs"
    assert fifth == "book/printed/making-up.pdf  for the bench: what is needed and done, the order of the leaves"
    assert blank == ""
    assert any("100 %" in line and "both sides" in line for line in rest)


def test_each_arrangement_of_leaves_has_a_pair_of_files_to_cut_by(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    stock = "\nstock\n  leaf .... 100 x 140 mm\n  holes .... 2, 80 mm apart\n  paper .... A4\n"
    for cards in (1, 2):
        card = "\nnormal Taxi {}\n  Brakes .... CHECK, HOLD\n"
        write(here, book=CLEAN + "".join(map(card.format, range(1, cards))) + stock)
        ran = run(capsys, "print", "book.cards")
        sheets = len(pypdf.PdfReader(here / "printed" / "sheets.pdf").pages) // 2
        leaves = len(pypdf.PdfReader(here / "printed" / "reading.pdf").pages) // 2
        odd = leaves % 2 == 1
        assert (here / "printed" / "cut-2.svg").exists() is (here / "printed" / "cut-2.dxf").exists() is odd
        if odd:
            these = sheets_numbered(range(1, sheets))
            assert f"printed/cut.svg        to cut {these} by, the front up\n" in ran.out
            assert f"printed/cut-2.svg      to cut sheet {sheets} by, the front up\n" in ran.out
        else:
            assert "printed/cut.svg        to cut every sheet by, the front up\n" in ran.out


def test_marks_for_a_cutter_are_printed_when_they_are_asked_for(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    fitting = CLEAN + "\nstock\n  leaf .... 140 x 200 mm\n  paper .... A4\n"
    write(here, book=fitting, filled=CLEAN + "\nstock A5\n")
    said = (
        "The front of each sheet bears three black squares of 4 mm by which a cutter finds it, their centres "
        "7 mm from the paper's edges: upper left, upper right, lower left. "
        "The 3 mm around each are free of all else that is printed. "
    )
    assert said not in in_one_line(run(capsys, "print", "book.cards"))
    assert "registration" not in (here / "printed" / "cut.svg").read_text()
    assert said in in_one_line(run(capsys, "print", "book.cards", "--cutter-marks"))
    assert '<g id="registration">' in (here / "printed" / "cut.svg").read_text()
    ran = run(capsys, "print", "filled.cards", "--cutter-marks", "--to", "filled")
    assert (
        "No cutter's marks: there is no room for them beside the leaves. With `cut lines .... separate` in the stock "
        "there would be room, and a sheet would take 1 leaf."
    ) in in_one_line(ran)
    assert "registration" not in (here / "filled" / "cut.svg").read_text()


def test_equal_input_gives_equal_bytes(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=CLEAN)
    for folder in ("one", "two"):
        assert run(capsys, "print", "book.cards", "--to", folder).code == 0
    for name in names(here / "one"):
        assert (here / "one" / name).read_bytes() == (here / "two" / name).read_bytes()


@pytest.mark.parametrize(("source", "options"), [(FAULTY, ()), (IMPOSSIBLE, ()), (IMPOSSIBLE, ("--draft",))])
def test_errors_are_listed_and_nothing_is_printed(
    here: Path, capsys: pytest.CaptureFixture[str], source: str, options: tuple[str, ...]
) -> None:
    write(here, book=source)
    ran = run(capsys, "print", "book.cards", *options)
    assert ran.code == 1
    assert ran.out.startswith("error ")
    assert "\nNothing was printed: 1 error in 1 file.\n" in ran.out
    assert ("--draft" in ran.out) is (source == FAULTY)
    assert names(here) == ["book.cards"]


def test_a_refused_print_leaves_the_one_before(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=CLEAN)
    run(capsys, "print", "book.cards")
    before = (here / "printed" / "sheets.pdf").read_bytes()
    write(here, book=FAULTY)
    assert run(capsys, "print", "book.cards").code == 1
    assert (here / "printed" / "sheets.pdf").read_bytes() == before


def test_a_draft_that_was_asked_for_ends_well_and_says_so(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=FAULTY)
    ran = run(capsys, "print", "book.cards", "--draft")
    assert ran.code == 0
    said = "This is a draft, and says so across every face; 1 error, see `dotleader lint book.cards`."
    assert said in in_one_line(ran)
    for page in pypdf.PdfReader(here / "printed" / "reading.pdf").pages:
        assert "DRAFT" in page.extract_text()


def test_what_cannot_be_printed_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book="handbook A book\n\ninclude part.cards\n", part="normal Taxi\n  Brakes .... CHECK, HOLD\n")
    ran = run(capsys, "print", "part.cards")
    assert ran.code == 2
    assert ran.err.splitlines()[0] == "dotleader: `part.cards` is a part of a handbook, and is printed with it."
    assert run(capsys, "print").code == 2
    assert run(capsys, "print", "missing.cards").code == 2
    write(here, empty="# nothing\n")
    ran = run(capsys, "print", "empty.cards")
    assert (ran.code, ran.out) == (1, "Nothing was printed: there is no card in empty.cards.\n")


def test_what_only_the_print_before_had_goes(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=CLEAN)
    run(capsys, "print", "book.cards")
    manifest = json.loads((here / "printed" / "printed.json").read_text())
    (here / "printed" / "old.svg").write_text("old")
    manifest["files"]["old.svg"] = "0"
    (here / "printed" / "printed.json").write_text(json.dumps(manifest))
    ran = run(capsys, "print", "book.cards")
    assert "old.svg of the print before was changed by somebody and was left." in ran.out
    assert (here / "printed" / "old.svg").exists()


def test_progress_is_shown_on_a_terminal_only_and_after_a_second(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    now = [0.0]
    monkeypatch.setattr(progress_module.time, "monotonic", lambda: now[0])
    for watched, said in ((False, ""), (True, "\rpages: 12 of 40\r               \r")):
        monkeypatch.setattr(progress_module, "_watched", lambda watched=watched: watched)
        shown = Progress("pages", 40)
        for count, seconds in ((5, 0.5), (12, 1.2), (13, 1.25)):
            now[0] += seconds
            shown.done(count)
            now[0] -= seconds
        shown.end()
        assert capsys.readouterr().err == said


def test_nothing_of_progress_in_a_short_print_on_a_terminal(here: Path) -> None:
    write(here, book=CLEAN)
    main, other = pty.openpty()
    done = subprocess.run(
        command("print", "book.cards"), stdout=subprocess.PIPE, stderr=other, env=environment(), check=False
    )
    os.close(other)
    os.close(main)
    assert done.returncode == 0


def test_the_plan_for_the_punch_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    punch = "\npunch Desk punch\n  holes .... 2, 80 mm apart\n  stop .... scale\n"
    write(here, book=CLEAN + "\nstock\n  leaf .... A5\n  holes .... 4, 40 mm apart\n" + punch)
    ran = run(capsys, "print", "book.cards")
    assert ran.code == 0
    head, *steps = ran.out[ran.out.index("Desk punch: ") :].splitlines()
    assert head == "Desk punch: 4 holes 40 mm apart, in two strokes."
    assert [line[:5] for line in steps if line[2].isdigit()] == ["  1. ", "  2. ", "  3. ", "  4. "]
    assert all(len(line) <= 80 for line in steps)
    assert "Set the stop on the right to 85 mm" in ran.out
    write(here, book=CLEAN + punch.replace("80 mm", "60 mm"))
    ran = run(capsys, "print", "book.cards")
    assert ran.code == 0
    assert "Desk punch cannot make 2 holes 80 mm apart on an edge of 210 mm.\n" in ran.out
    assert "`holes .... 2, 60 mm apart, 6 mm wide, 12 mm from edge`" in ran.out
    write(here, book=CLEAN + "\nstock\n  leaf .... A5\n  holes .... none\n" + punch)
    assert "Desk punch" not in run(capsys, "print", "book.cards").out
