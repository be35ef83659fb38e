"""Printers are kept, shown, changed and forgotten; what is wrong with a name, a number or a file is one sentence."""

from __future__ import annotations

import errno
import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.page.sheet.alignment import MOST_MOVED, MOST_STRETCHED, Moved
from dotleader.page.sheet.duplex import TURNINGS
from dotleader.tools.lock import LOCK, locked
from dotleader.tools.printing import printer_store
from dotleader.tools.printing.printer_store import store_path
from dotleader.tools.printing.printers import Damage, Printer, printer_name, read, written
from tests.tools.running import command, environment, in_one_line, names, run, write

BOOK = "handbook Ostrel Two flight handbook\n\nnormal Taxi\n  Brakes .... CHECK, HOLD\n"
SMALL = BOOK.replace("\n\n", "\n\nstock\n  leaf .... 120 x 180 mm\n\n", 1)
KEPT = """\
# How far the backs of printers are out of register, seen from the front. Kept by `dotleader printer`.

printer Workshop laser
  back moved ........... 0.8 mm right, 0.3 mm up
  back stretched ....... 0.12 % wider
  measured on .......... A4
  default .............. yes
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.setenv("APPDATA", str(tmp_path / "config"))
    return tmp_path


def keep(here: Path, text: str = KEPT) -> Path:
    path = here / "config" / "dotleader" / "printers.txt"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def test_a_printer_is_kept_shown_changed_and_forgotten(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "printer").out.startswith("No printer is kept yet.")
    assert names(here) == []
    ran = run(capsys, "printer", "set", "Workshop", "laser", "--right", "0.8", "--down", "-0.3")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines() == [
        "Workshop laser: the back is out by 0.8 mm right, 0.3 mm up.",
        '`dotleader print --printer "Workshop laser"` corrects the backs of sheets for it.',
    ]
    assert names(here / "config" / "dotleader") == ["printers.txt"]
    run(capsys, "printer", "set", "Attic", "--down", "1", "--paper", "Letter")
    assert run(capsys, "printer").out.splitlines() == [
        "Workshop laser  0.8 mm right, 0.3 mm up",
        "Attic           0 mm right, 1 mm down",
    ]
    assert run(capsys, "printer", "show", "attic").out.splitlines() == [
        "printer Attic",
        "  back moved ........... 0 mm right, 1 mm down",
        "  measured on .......... Letter",
        "  turned on ............ long edge",
        "",
        "It is kept in config/dotleader/printers.txt.",
    ]
    run(capsys, "printer", "set", "ATTIC", "--right", "-.25")
    assert "Attic           0.25 mm left, 1 mm down\n" in run(capsys, "printer").out
    assert run(capsys, "printer", "delete", "Workshop laser").out == "Workshop laser was deleted.\n"
    assert run(capsys, "printer").out == "Attic  0.25 mm left, 1 mm down\n"


@pytest.mark.parametrize("name", ["Attic", "Büro 2", "Old (left)", 'The "good" one', "Tom's $5 jet", "a;b"])
def test_the_name_that_is_offered_is_one_word_of_a_command_line(
    here: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    ran = run(capsys, "printer", "set", name, "--right", "0.2")
    offered = ran.out.splitlines()[1].removeprefix("`").split("` corrects")[0]
    assert shlex.split(offered) == ["dotleader", "print", "--printer", name]


def test_one_printer_at_most_is_the_default(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = keep(here)
    ran = run(capsys, "printer", "set", "Attic", "--right", "0.1", "--default")
    assert "`dotleader print --printer none` prints without" in ran.out
    assert path.read_text(encoding="utf-8").count("default") == 1
    assert run(capsys, "printer").out.splitlines()[1].endswith(" (default)")
    assert run(capsys, "printer", "set", "workshop laser", "--default").code == 0
    assert run(capsys, "printer").out.splitlines()[0].endswith("0.8 mm right, 0.3 mm up, 0.12 % wider (default)")
    run(capsys, "printer", "set", "none", "--default")
    assert "default" not in run(capsys, "printer").out


def test_what_is_read_further_is_added(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "printer", "set", "Attic", "--right", "4", "--down", "-3.5")
    run(capsys, "printer", "set", "Attic", "--right", "-0.2", "--further")
    assert run(capsys, "printer").out == "Attic  3.8 mm right, 3.5 mm up\n"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("set", "A", "--right", "0,8"), "`--right 0,8` is no number.\n  Write it with a point: 0.8."),
        (("set", "A", "--down", "-0,3"), "`--down -0,3` is no number.\n  Write it with a point: -0.3."),
        (("set", "A", "--down", "much"), "`--down much` is no number.\n  Write millimetres like 0.8"),
        (("set", "A", "--down", "nan"), "`--down nan` is no number."),
        (("set", "A", "--down", "-"), "`--down -` is no number."),
        (("set", "A", "--down", "1e0"), "`--down 1e0` is no number."),
        (("set", "A", "--down", ""), "`--down ` is no number.\n  Write millimetres like 0.8"),
        (("set", "A", "--down", "0.8mm"), "`--down 0.8mm` is no number.\n  Write millimetres like 0.8"),
        (("set", "A", "--down", "9" * 5_000), f"`--down {'9' * 5_000}` is beyond 5 mm"),
        (("set", "A", "--down", "-10000"), "`--down -10000` is beyond 5 mm"),
        (("set", "A", "--right", "5.01"), "`--right 5.01` is beyond 5 mm, and more is not righted.\n  Read the sheet"),
        (("set", "A", "--right", "-1", "1"), "The back is 1.316 % wider, and more than 1 % is not righted."),
        (("set", "A", "--right", "1", "1", "1"), "`--right` takes one number or two, and here are 3."),
        (("set", "A", "--right"), "`--right` needs a word after it."),
        (("set", "A"), "No number was given."),
        (("set", "A", "--default"), "There is no printer `A`.\n  Did you mean `Attic`?"),
        (("set", "A", "--right", "1", "--further"), "There is no printer `A` to add to."),
        (
            ("set", "Attic", "--right", "1", "--further"),
            "The back is moved 5.5 mm right, 0 mm down, and more than 5 mm",
        ),
        (("set", "none", "--right", "1"), "`none` stands for no printer and has no numbers."),
        (("set", "a\nb" * 30, "--right", "1"), "`a\\x0ab"),
        (("set",), "No printer was named."),
        (("show", "Atic"), "There is no printer `Atic`.\n  Did you mean `Attic`?"),
        (("delete", "Xyz"), "There is no printer `Xyz`.\n  There is `Attic`."),
        (("frobnicate", "A"), "`frobnicate` is nothing to do with a printer.\n  It is one of set, show, delete"),
        (("show", "Attic", "--right", "1"), "Numbers and marks go with `set`."),
        (("show", "Attic", "--turn", "long-edge"), "Numbers and marks go with `set`."),
        (("set", "A", "--paper", "A2"), "`--paper A2` is not known."),
        (("set", "A", "--right", "1", "--turn", "short"), "`--turn short` is not known."),
    ],
)
def test_slips_are_said_and_change_nothing(
    here: Path, capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], said: str
) -> None:
    path = keep(here, "printer Attic\n  back moved .... 4.5 mm right, 0 mm down\n  measured on .... A4\n")
    before = path.read_bytes()
    ran = run(capsys, "printer", *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith(f"dotleader: {said}")
    assert path.read_bytes() == before
    assert names(path.parent) == ["printers.txt"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("nonsense\n", "line 1: this line is not understood"),
        (KEPT.replace("0.8 mm", "x mm"), "line 4: this line is not understood"),
        (KEPT.replace("0.8 mm", "7 mm"), "line 4: that is more than is righted"),
        (KEPT.replace("0.12 %", "1.2 %"), "line 5: that is more than is righted"),
        (KEPT.replace("A4", "A99"), "line 6: this line is not understood"),
        (KEPT + "  turned on .... edge\n", "line 8: this line is not understood"),
        (KEPT.replace("  measured on .......... A4\n", ""), "line 3: `measured on` is missing below this line"),
        (KEPT + "  default .... yes\n", "line 8: this is said twice"),
        (KEPT + KEPT, "line 10: this printer is there twice"),
        (KEPT + KEPT.replace("Workshop", "Attic"), "line 14: more than one printer is the default"),
        (KEPT.replace("Workshop laser", "none"), "line 3: no printer can have this name"),
    ],
)
def test_a_damaged_file_is_said_and_left(here: Path, capsys: pytest.CaptureFixture[str], text: str, said: str) -> None:
    path = keep(here, text)
    write(here, book=BOOK)
    for arguments in (
        ("printer",),
        ("printer", "show", "Attic"),
        ("printer", "delete", "Attic"),
        ("printer", "set", "Attic", "--right", "1"),
        ("print", "book.cards"),
        ("print", "book.cards", "--printer", "Attic"),
        ("print", "--calibration", "--printer", "Attic"),
    ):
        ran = run(capsys, *arguments)
        assert (ran.code, ran.out) == (2, "")
        assert ran.err.splitlines() == [
            f"dotleader: The printers in `config/dotleader/printers.txt` cannot be read, because of {said}.",
            "  Mend that line, or delete the file and set the printers anew."
            + " `--printer none` prints without a correction." * (arguments == ("print", "book.cards")),
        ]
    assert path.read_text(encoding="utf-8") == text
    assert names(here) == ["book.cards", "config"]
    assert run(capsys, "print", "book.cards", "--printer", "none").code == 0


def test_a_file_that_is_no_text_is_damaged(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    keep(here).write_bytes(KEPT.encode() + b"\xff\xfe\n")
    assert "because of line 8: this is not text." in run(capsys, "printer").err


def test_an_editor_may_have_saved_it_in_its_own_way(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    keep(here).write_bytes(b"\xef\xbb\xbf" + KEPT.replace("\n", "\r\n").encode())
    assert run(capsys, "printer").out.startswith("Workshop laser  0.8 mm right")


def test_a_folder_that_cannot_be_made_or_written_into(
    here: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (here / "config").write_text("a file")
    ran = run(capsys, "printer", "set", "A", "--right", "1")
    assert ran.code == 2
    assert ran.err.startswith("dotleader: `config/dotleader` cannot be made: ")
    assert re.search(r"set (XDG_CONFIG_HOME|APPDATA) to a folder", ran.err)
    (here / "config").unlink()
    path = keep(here)

    def full(*_: object) -> None:
        raise OSError(errno.EROFS, os.strerror(errno.EROFS))

    monkeypatch.setattr(printer_store, "put_file", full)
    ran = run(capsys, "printer", "set", "A", "--right", "1")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.splitlines() == [
        "dotleader: `config/dotleader/printers.txt` cannot be written: read-only file system.",
        "  The printers are as they were.",
    ]
    assert path.read_text(encoding="utf-8") == KEPT


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="the administrator may write everywhere")
def test_a_folder_that_is_read_only(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = keep(here).parent
    folder.chmod(0o555)
    ran = run(capsys, "printer", "set", "A", "--right", "1")
    folder.chmod(0o755)
    assert ran.code == 2
    assert "`config/dotleader` cannot be written into: permission denied." in ran.err


def test_a_printer_that_cannot_be_read(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    keep(here).unlink()
    (here / "config" / "dotleader" / "printers.txt").mkdir()
    ran = run(capsys, "printer")
    assert (ran.code, ran.out) == (2, "")
    assert "The printers in `config/dotleader/printers.txt` cannot be read: " in ran.err
    write(here, book=BOOK)
    for options, offered in (((), True), (("--printer", "A"), False)):
        ran = run(capsys, "print", "book.cards", *options)
        assert ("`--printer none` prints without a correction." in ran.err) is offered


def test_two_commands_at_once_lose_nothing(here: Path) -> None:
    started = [
        subprocess.Popen(command("printer", "set", f"P{n}", "--right", "1"), cwd=here, env=environment())
        for n in range(6)
    ]
    assert [process.wait(timeout=60) for process in started] == [0] * 6
    text = (here / "config" / "dotleader" / "printers.txt").read_text(encoding="utf-8")
    found = read(text)
    assert not isinstance(found, Damage)
    assert sorted(printer.name for printer in found) == [f"P{n}" for n in range(6)]


def test_who_waits_too_long_says_for_what(
    here: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = keep(here).parent
    monkeypatch.setattr(printer_store, "locked", lambda folder, busy: locked(folder, 0.1, busy))
    with locked(str(folder)):
        ran = run(capsys, "printer", "set", "A", "--right", "1")
    assert ran.code == 2
    assert "Another command is changing the printers in `config/dotleader`" in ran.err
    assert LOCK not in names(folder)


def test_where_they_are_kept(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    home = str(here / "home")
    monkeypatch.setenv("HOME", home)
    for platform, xdg, expected in (
        ("linux", "", f"{home}/.config"),
        ("linux", "relative", f"{home}/.config"),
        ("linux", "/elsewhere", "/elsewhere"),
        ("darwin", "", f"{home}/Library/Application Support"),
        ("win32", "/elsewhere", str(here / "config")),
    ):
        monkeypatch.setattr(sys, "platform", platform)
        monkeypatch.setenv("XDG_CONFIG_HOME", xdg)
        assert store_path() == os.path.join(expected, "dotleader", "printers.txt")  # noqa: PTH118


NAMES = (
    st.text(st.characters(codec="utf-8"), max_size=60)
    .map(printer_name)
    .filter(lambda name: name and name.casefold() != "none")
)
PRINTERS = st.builds(
    Printer,
    NAMES,
    st.builds(
        Moved,
        *[st.integers(-MOST_MOVED, MOST_MOVED)] * 2,
        *[st.integers(-MOST_STRETCHED, MOST_STRETCHED)] * 2,
    ),
    st.sampled_from(["A4", "Letter"]),
    st.just(False),
    st.sampled_from(TURNINGS),
)


@given(st.lists(PRINTERS, max_size=4, unique_by=lambda printer: printer.name.casefold()))
def test_what_is_kept_is_read_back(printers: list[Printer]) -> None:
    assert read(written(printers)) == tuple(printers)


@given(st.text() | st.lists(st.sampled_from([*KEPT.splitlines(), "", "  x .. y", "printer"])).map("\n".join))
def test_no_text_is_a_fault_of_ours(text: str) -> None:
    found = read(text)
    assert isinstance(found, Damage | tuple)


# Printing


def test_calibration_takes_no_handbook_and_touches_nothing_else(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK)
    run(capsys, "print", "book.cards")
    before = names(here / "printed")
    ran = run(capsys, "print", "--calibration", "--paper", "leter", "--to", "printed")
    assert ran.code == 2
    assert "`--paper leter` is not known.\n  Did you mean `Letter`?" in ran.err
    ran = run(capsys, "print", "--calibration", "--paper", "letter", "--to", "printed")  # as a stock reads it
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.startswith("printed/calibration.pdf  2 sides of a sheet of Letter\n")
    assert names(here / "printed") == sorted([*before, "calibration.pdf"])
    pages = pypdf.PdfReader(here / "printed" / "calibration.pdf").pages
    assert [[float(side) for side in page.mediabox] for page in pages] == [[0, 0, 612, 792]] * 2
    assert run(capsys, "print", "book.cards").code == 0
    assert names(here / "printed") == sorted([*before, "calibration.pdf"])
    assert run(capsys, "print", "book.cards", "--calibration").code == 2
    assert "`--paper` goes with `--calibration`" in run(capsys, "print", "book.cards", "--paper", "A4").err


def test_calibration_is_the_same_each_time_and_takes_no_strangers_place(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    keep(here)
    for folder in ("one", "two"):
        assert run(capsys, "print", "--calibration", "--to", folder).code == 0
    first = (here / "one" / "calibration.pdf").read_bytes()
    assert first == (here / "two" / "calibration.pdf").read_bytes()  # the default printer changes nothing here
    assert run(capsys, "print", "--calibration", "--to", "two", "--printer", "workshop laser").code == 0
    assert first != (here / "two" / "calibration.pdf").read_bytes()
    (here / "calibration.pdf").write_text("mine")
    ran = run(capsys, "print", "--calibration")
    assert ran.err.startswith("dotleader: `calibration.pdf` is there, and is no calibration sheet of dotleader.")
    assert (ran.code, (here / "calibration.pdf").read_text()) == (2, "mine")


def test_only_backs_are_corrected_and_it_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=SMALL)
    plain = run(capsys, "print", "book.cards", "--to", "plain")
    assert "The backs of the sheets are not corrected for a printer" in plain.out
    run(capsys, "printer", "set", "Attic", "--right", "0.8", "--down", "-0.3")
    righted = run(capsys, "print", "book.cards", "--to", "righted", "--printer", "attic")
    said = "The backs of the sheets are corrected for Attic, which puts them 0.8 mm right, 0.3 mm up."
    assert said in in_one_line(righted)
    one, two = here / "plain", here / "righted"
    assert names(one) == names(two)
    differing = [name for name in names(one) if (one / name).read_bytes() != (two / name).read_bytes()]
    assert differing == ["making-up.pdf", "printed.json", "sheets.pdf"]
    before, after = (pypdf.PdfReader(folder / "sheets.pdf").pages for folder in (one, two))
    for number, (old, new) in enumerate(zip(before, after, strict=True)):
        same = old.get_contents().get_data() == new.get_contents().get_data()
        assert same is (number % 2 == 0)
        assert (old.mediabox, old.trimbox) == (new.mediabox, new.trimbox)
        said = (
            "Not corrected for a printer." in old.extract_text(),
            "Corrected for Attic: 0.8 mm right" in new.extract_text(),
        )
        assert said == (number % 2 == 1, number % 2 == 1)


def test_the_default_is_taken_and_can_be_left_out(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK)
    keep(here)
    by_name = run(capsys, "print", "book.cards", "--to", "name", "--printer", "Workshop laser")
    by_default = run(capsys, "print", "book.cards", "--to", "default")
    none = run(capsys, "print", "book.cards", "--to", "none", "--printer", "none")
    assert by_name.code == by_default.code == none.code == 0
    sheets = [(here / folder / "sheets.pdf").read_bytes() for folder in ("name", "default", "none")]
    assert sheets[0] == sheets[1] != sheets[2]
    assert "corrected for Workshop laser" in by_default.out
    assert "not corrected" in none.out
    setting_up = pypdf.PdfReader(here / "default" / "sheets.pdf").pages[1].extract_text()
    assert "Corrected for Workshop laser" in " ".join(setting_up.split())


def test_another_paper_than_it_was_measured_on_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    keep(here, KEPT.replace("A4", "Letter"))
    write(here, book=BOOK)
    assert "That was measured on Letter, and this is A4" in run(capsys, "print", "book.cards").out


def test_a_large_shift_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK)
    for moved, much in (("1", False), ("-1.01", True)):
        run(capsys, "printer", "set", "Attic", "--down", moved)
        ran = run(capsys, "print", "book.cards", "--printer", "Attic")
        assert ("a printer may leave out what stands near the edges of the backs" in ran.out) is much


def test_a_folder_for_the_calibration_sheet_that_cannot_be(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (here / "file").write_text("mine")
    ran = run(capsys, "print", "--calibration", "--to", "file")
    assert (ran.code, ran.err) == (2, "dotleader: `file` is a file.\n  Name a folder to print into.\n")
    ran = run(capsys, "print", "--calibration", "--to", "file/deeper")
    assert ran.code == 2
    assert ran.err.startswith("dotleader: `file/deeper/calibration.pdf` cannot be written: ")
    (here / "calibration.pdf").mkdir()
    ran = run(capsys, "print", "--calibration")
    assert (ran.code, ran.out) == (2, "")
    assert names(here) == ["calibration.pdf", "file"]


def test_a_printer_that_is_not_there(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    keep(here)
    write(here, book=BOOK)
    ran = run(capsys, "print", "book.cards", "--printer", "Workshop")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err == "dotleader: There is no printer `Workshop`.\n  Did you mean `Workshop laser`?\n"
    assert names(here) == ["book.cards", "config"]
