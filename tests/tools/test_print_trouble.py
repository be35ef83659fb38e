"""What the outside world does to a print: a sentence, exit code 2, nothing half done. A finding in the source is 1."""

from __future__ import annotations

import hashlib
import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.tools.running import command, environment, names, process, write

BOOK = "handbook Ostrel Two flight handbook\n\nnormal Taxi\n  Brakes .... CHECK, HOLD\n"


@pytest.fixture
def here(tmp_path: Path) -> Path:
    write(tmp_path, book=BOOK)
    return tmp_path


def whole(folder: Path) -> bool:
    """Whether a folder holds one print, as its manifest says."""
    files = json.loads((folder / "printed.json").read_text())["files"]
    found = {name: hashlib.sha256((folder / name).read_bytes()).hexdigest() for name in files}
    return found == files and names(folder) == sorted([*files, "printed.json"])


def limited(here: Path, *arguments: str, kilobytes: int) -> subprocess.CompletedProcess[str]:
    """A command that may write no file larger than that, which is as good as a full disk."""
    resource = pytest.importorskip("resource")

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (kilobytes * 1024,) * 2)

    return subprocess.run(
        command(*arguments), cwd=here, env=environment(XDG_CONFIG_HOME=str(here / "config")), preexec_fn=limit,
        capture_output=True, text=True, check=False,
    )  # fmt: skip


def test_a_disk_that_is_full(here: Path) -> None:
    config = {"XDG_CONFIG_HOME": str(here / "config")}
    ran = limited(here, "print", "book.cards", kilobytes=4)
    assert (ran.returncode, ran.stdout) == (2, "")
    assert ran.stderr.splitlines() == [
        "dotleader: `printed` cannot be written into: file too large.",
        "  Nothing was printed. Print into another folder with `--to`.",
    ]
    assert names(here) == ["book.cards"]
    assert process("print", "book.cards", cwd=here, **config).code == 0
    before = (here / "printed" / "printed.json").read_bytes()
    ran = limited(here, "print", "book.cards", "--copies", "9", kilobytes=4)
    assert (ran.returncode, ran.stdout) == (2, "")
    assert "  What was printed before stands as it was. Print into another folder with `--to`.\n" in ran.stderr
    assert (here / "printed" / "printed.json").read_bytes() == before
    assert whole(here / "printed")
    ran = limited(here, "print", "--calibration", kilobytes=4)
    assert (ran.returncode, ran.stdout) == (2, "")
    assert ran.stderr.splitlines() == [
        "dotleader: `calibration.pdf` cannot be written: file too large.",
        "  Print into another folder with `--to`.",
    ]
    assert names(here) == ["book.cards", "printed"]


def test_prints_into_one_folder_at_once_come_one_after_the_other(here: Path) -> None:
    write(here, other=BOOK + "\nstock A6\n", third=BOOK + "\nstock letter\n")
    started = [
        subprocess.Popen(
            command("print", f"{name}.cards", "--to", "desk"), cwd=here, env=environment(), stdout=subprocess.DEVNULL
        )
        for name in ("book", "other", "third")
    ]
    assert [each.wait(timeout=120) for each in started] == [0, 0, 0]
    assert whole(here / "desk")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("book.cards", "--printer", "Nope"), "There is no printer `Nope`.\n  None is kept yet: print the sheet"),
        (("book.cards", "--to", "book.cards"), "`book.cards` is a file.\n  Name a folder to print into."),
        (("book.cards", "--to", "book.cards/in"), "`book.cards/in` cannot be made: not a directory.\n  Print into"),
        (("--calibration", "--to", "book.cards"), "`book.cards` is a file.\n  Name a folder to print into."),
        (("--calibration", "--turn", "left"), "`--turn left` is not known.\n  Take one of long-edge, short-edge."),
        (("book.cards", "--turn"), "`--turn` needs a word after it."),
    ],
)
def test_what_cannot_be_done_is_said_and_nothing_is_written(here: Path, arguments: tuple[str, ...], said: str) -> None:
    ran = process("print", *arguments, cwd=here, XDG_CONFIG_HOME=str(here / "config"))
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith(f"dotleader: {said}")
    assert names(here) == ["book.cards"]


@pytest.mark.skipif(sys.platform == "win32", reason="permissions are others there")
def test_a_folder_that_may_not_be_written_into(here: Path) -> None:
    """Not even by the administrator: a file system that takes no files."""
    if not Path("/proc/self").is_dir():
        pytest.skip("there is no such file system here")
    for arguments in (("book.cards", "--to", "/proc/self"), ("--calibration", "--to", "/proc/self")):
        ran = process("print", *arguments, cwd=here)
        assert (ran.code, ran.out) == (2, "")
        assert "cannot be written" in ran.err
        assert ran.err.endswith("  Print into another folder with `--to`.\n")


def test_a_finding_in_the_source_is_another_exit_code(here: Path) -> None:
    write(here, wrong=BOOK + "  Airspeed .... {VX}\n")
    ran = process("print", "wrong.cards", cwd=here)
    assert (ran.code, ran.err) == (1, "")
    assert names(here) == ["book.cards", "wrong.cards"]
