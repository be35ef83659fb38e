"""What a print says before and after, and to whom it says no: each in one sentence, in lines that fit."""

from __future__ import annotations

import os
import re
from pathlib import Path

import pypdf
import pytest

from dotleader.page.sheet.cut_shapes import Layer
from dotleader.page.sheet.cut_words import colours_in_brief, colours_said
from dotleader.page.sheet.registration import QUIET
from tests.tools.running import Ran, in_one_line, names, run, write

CARDS = """\
handbook Ostrel Two flight handbook
  registration .... N0STL

emergency Trouble
  when it sounds odd
  memory
    Nose .... DOWN
  end

normal Taxi
  when the engine runs smoothly
  Brakes .... CHECK, HOLD
"""
PUNCH = "\npunch Desk punch\n  holes .... 2, 80 mm apart\n  stop .... scale, 45 to 160 mm\n"
APART = "\nstock\n  leaf .... 140 x 200 mm\n  holes .... 2, 80 mm apart\n  paper .... A4\n"


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.setenv("COLUMNS", "80")
    write(tmp_path, book=CARDS + APART + PUNCH)
    return tmp_path


def stopped(ran: Ran) -> tuple[str, str]:
    assert (ran.code, ran.out) == (2, "")
    said, help_ = ran.err.splitlines()
    return said.removeprefix("dotleader: "), help_.strip()


@pytest.mark.parametrize(
    "options",
    [
        ("--check",), ("--copies", "2"), ("--copies", "1"), ("--only", "normal"), ("--cards", "Taxi"),
        ("--faces", "3-1"), ("--one-sided",), ("--black",), ("--book", "Full"), ("--order", "stack"),
        ("--order", "sequence"), ("--draft",), ("--cutter-marks",),
    ],
)  # fmt: skip
def test_the_calibration_sheet_refuses_what_says_nothing_of_it(
    here: Path, capsys: pytest.CaptureFixture[str], options: tuple[str, ...]
) -> None:
    said, help_ = stopped(run(capsys, "print", "--calibration", *options))
    assert said == f"`{options[0]}` says nothing of the calibration sheet."
    assert help_ == "With `--calibration` go `--to`, `--paper`, `--printer` and `--turn`."
    assert names(here) == ["book.cards"]


def test_several_such_options_are_named_together(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said, _ = stopped(run(capsys, "print", "--calibration", "--black", "--check"))
    assert said == "`--check` and `--black` say nothing of the calibration sheet."


def test_what_goes_with_the_calibration_sheet_does(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "printer", "set", "Attic", "--right", "0.8")
    options = ("--to", "here", "--paper", "LEGAL", "--turn", "Short-edge", "--printer", "Attic")
    ran = run(capsys, "print", "--calibration", *options)
    assert (ran.code, ran.err) == (0, "")
    assert "sheet of Legal" in ran.out
    assert "turned on the short edge." in in_one_line(ran)
    assert all(len(line) <= 80 for line in ran.out.splitlines())


@pytest.mark.parametrize("what", [("book.cards",), ("--calibration",)])
def test_what_is_no_folder_is_not_printed_into(
    here: Path, capsys: pytest.CaptureFixture[str], what: tuple[str, ...]
) -> None:
    said, _ = stopped(run(capsys, "print", *what, "--to", ""))
    assert said == "`--to` names no folder."
    if hasattr(os, "mkfifo"):
        os.mkfifo(here / "pipe")
        said, _ = stopped(run(capsys, "print", *what, "--to", "pipe"))
        assert said == "`pipe` is no folder."
        said, _ = stopped(run(capsys, "print", *what, "--to", "/dev/null"))
        assert said.endswith("/dev/null` is no folder.")
    (here / "nowhere").symlink_to("gone")
    said, _ = stopped(run(capsys, "print", *what, "--to", "nowhere"))
    assert said == "`nowhere` is no folder."
    said, _ = stopped(run(capsys, "print", *what, "--to", "book.cards"))
    assert said == "`book.cards` is a file."


def test_a_look_says_all_that_a_print_says_at_the_bench(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "printer", "set", "Workshop laser", "--right", "0.8", "--down", "-0.3", "--default")
    options = ("book.cards", "--cutter-marks", "--order", "stack", "--one-sided", "--turn", "short-edge")
    looked, printed = (run(capsys, "print", *options, *more) for more in (("--check",), ()))
    assert (looked.code, printed.code) == (0, 0)
    bench = printed.out[printed.out.index("\nPrint at actual size") :]
    assert "corrected for Workshop laser" in bench
    assert "That was measured on a sheet turned on the long edge" in bench
    assert "three black squares" in bench
    assert "Desk punch: 2 holes 80 mm apart, in one stroke." in bench
    assert bench in looked.out
    assert looked.out.endswith("\n\nNothing was written.\n")


def test_a_look_says_which_file_is_for_which_sheets(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=CARDS + "\nstock A5\n")
    looked, printed = (in_one_line(run(capsys, "print", "book.cards", *more)) for more in (("--check",), ()))
    pairs = re.findall(r"(cut\S*\.svg) to cut (sheets? [\d, and]+) by", printed)
    assert len(pairs) == 2
    assert f"To cut by, {' and '.join(f'{name} is for {sheets}' for name, sheets in pairs)}." in looked


@pytest.mark.parametrize("width", ["80", "50"])
def test_no_sentence_is_wider_than_the_terminal(
    here: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, width: str
) -> None:
    monkeypatch.setenv("COLUMNS", width)
    run(capsys, "printer", "set", "The laser at the far end of the attic", "--right", "4.8", "--default")
    for stock in (APART, "\nstock half letter\n", "\nstock folded card, A6\n"):
        write(here, book=CARDS + stock + PUNCH)
        for more in ((), ("--draft", "--order", "stack"), ("--one-sided", "--turn", "short-edge")):
            ran = run(capsys, "print", "book.cards", "--cutter-marks", *more)
            assert ran.code == 0
            bench = ran.out[ran.out.index("\nPrint at actual size") :]
            assert [line for line in bench.splitlines() if len(line) > int(width)] == []


def test_the_quiet_zone_of_cutter_marks_is_told(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = in_one_line(run(capsys, "print", "book.cards", "--cutter-marks"))
    assert f"The {QUIET // 1000} mm around each are free of all else that is printed." in said


def test_cutter_marks_without_room_are_offered_it(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What is offered is tried."""
    for stock in ("A5", "half letter"):
        write(here, book=CARDS + f"\nstock {stock}\n")
        said = in_one_line(run(capsys, "print", "book.cards", "--cutter-marks", "--check"))
        assert "no room for them beside the leaves. With `cut lines .... separate` in the stock there would be" in said
        write(here, book=CARDS + f"\nstock {stock}\n  cut lines .... separate\n")
        said = in_one_line(run(capsys, "print", "book.cards", "--cutter-marks", "--check"))
        assert "three black squares" in said
        assert "no room" not in said
    write(here, book=CARDS + "\nstock\n  leaf .... A4\n  paper .... A4\n")
    said = in_one_line(run(capsys, "print", "book.cards", "--cutter-marks", "--check"))
    assert "no room for them beside the leaves. A larger paper or a smaller leaf would leave room." in said


@pytest.mark.parametrize(
    ("stock", "expected"),
    [
        (APART, "red is cut, and blue (the outline of the paper) is for the eye only"),
        ("\nstock 6 x 9 in pouch\n", "red is cut, and blue (the outlines of paper and pouch) is for the eye only"),
        ("\nstock folded card, A6\n", "red is cut, green is scored, and blue (the outline of the paper)"),
    ],
)
def test_what_a_machine_may_cut_is_said_as_the_files_have_it(
    here: Path, capsys: pytest.CaptureFixture[str], stock: str, expected: str
) -> None:
    write(here, book=CARDS + stock)
    ran = run(capsys, "print", "book.cards")
    assert f"In the cut files {expected}" in in_one_line(ran)
    bench = " ".join(pypdf.PdfReader(here / "printed" / "making-up.pdf").pages[0].extract_text().split())
    brief = "green is scored, blue" if "green" in expected else "Red is cut, blue"
    assert f"{brief} is for the eye only." in bench
    svg = (here / "printed" / "cut.svg").read_text()
    colours = {
        layer: set(re.findall(r'stroke="(#\w+)"', part))
        for layer, part in re.findall(r'<g id="(\w+)">(.*?)</g>', svg, re.DOTALL)
    }
    assert all(colours[layer.value] == {"#ff0000"} for layer in Layer if layer.is_cut and layer.value in colours)
    assert colours.get("folds", {"#00aa00"}) == {"#00aa00"}
    assert colours["paper"] == {"#0000ff"}
    assert colours.get("pouch", {"#0000ff"}) == {"#0000ff"}
    assert ("green" in expected) is ("folds" in colours)
    assert ("pouch" in expected) is ("pouch" in colours)


def test_without_cut_files_nothing_is_said_of_them() -> None:
    assert colours_said(()) == colours_in_brief(()) == ""


def test_a_book_too_thick_for_its_rings_is_a_finding_with_its_place(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    thick = "\nstock A5\n  rings .... 2, 12.06 mm\n  paper thickness .... 0.9 mm\n"
    write(here, book=CARDS + thick)
    line = (CARDS + thick).splitlines().index("  rings .... 2, 12.06 mm") + 1
    for options in ((), ("--check",)):
        ran = run(capsys, "print", "book.cards", *options)
        assert (ran.code, ran.err) == (1, "")
        assert re.search(rf"error impossible-stock \.+ book\.cards:{line}:14\n", ran.out)
        said = in_one_line(ran)
        assert "more than rings of 12.06 mm hold so that leaves still turn." in said
        wanted = re.search(r"Take rings of ([\d.]+) mm or more", said)
        assert wanted is not None
        assert float(wanted[1]) > 12.06
        assert ("Nothing was written." in said) is bool(options)
        assert ("Nothing was printed: 1 error in 1 file." in said) is not bool(options)
        assert names(here) == ["book.cards"]


def test_a_part_that_its_rings_hold_is_printed(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=CARDS + "\nstock A5\n  rings .... 2, 12.06 mm\n  paper thickness .... 0.9 mm\n")
    assert run(capsys, "print", "book.cards").code == 1
    assert run(capsys, "print", "book.cards", "--faces", "3-1").code == 0


def test_a_print_says_what_it_kept(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "print", "book.cards").code == 0
    (here / "printed" / "cut.svg").write_bytes(b"for my plotter")
    ran = run(capsys, "print", "book.cards")
    assert ran.code == 0
    assert (
        "printed/cut.svg was changed by somebody since the print before: what it was is kept as "
        "printed/cut-changed.svg." in in_one_line(ran)
    )
    assert (here / "printed" / "cut-changed.svg").read_bytes() == b"for my plotter"


def test_how_many_handbooks_are_not_named_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for count, more in ((5, "`many/5.cards`."), (7, "`many/5.cards` and 2 more.")):
        write(here, **{f"many__{number}": CARDS for number in range(1, count + 1)})
        said, help_ = stopped(run(capsys, "print", "many"))
        assert said == "There is more than one handbook in `many`."
        assert help_.endswith(more)
