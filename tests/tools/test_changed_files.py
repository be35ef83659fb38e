"""What somebody changed of a print is kept when the next one takes its place: nothing is lost, nothing written over."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.printing.printed_folder import MANIFEST, Written, write_folder
from tests.tools.running import environment, names
from tests.tools.test_printed_folder import KILLED, calls, failing, held

FIRST = {"reading.pdf": b"first reading", "cut.svg": b"first cut", "cut-2.svg": b"first second cut"}
SECOND = {"reading.pdf": b"second reading", "cut.svg": b"second cut", "cut-2.svg": b"second second cut"}
MINE = b"first cut, for my plotter"
KEPT = (("cut.svg", "cut-changed.svg"),)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    write_folder("printed", FIRST)
    return tmp_path / "printed"


def change(folder: Path, text: bytes = MINE) -> None:
    (folder / "cut.svg").write_bytes(text)
    os.utime(folder / "cut.svg", (1_000_000_000, 1_000_000_000))


def test_a_file_that_was_changed_is_kept_under_another_name(folder: Path) -> None:
    change(folder)
    assert write_folder("printed", SECOND) == Written(tuple(SECOND), (), (), KEPT)
    found = held(folder)
    found.pop(MANIFEST)
    assert found == {**SECOND, "cut-changed.svg": MINE}
    assert (folder / "cut-changed.svg").stat().st_mtime == 1_000_000_000
    assert write_folder("printed", SECOND) == Written(tuple(SECOND), (), ())
    assert (folder / "cut-changed.svg").read_bytes() == MINE


def test_a_second_one_is_kept_beside_the_first_and_the_same_one_once(folder: Path) -> None:
    change(folder)
    write_folder("printed", SECOND)
    for text, name in ((b"another", "cut-changed-2.svg"), (MINE, "cut-changed.svg"), (b"more", "cut-changed-3.svg")):
        change(folder, text)
        assert write_folder("printed", SECOND).kept == (("cut.svg", name),)
        assert (folder / name).read_bytes() == text
    assert (folder / "cut-changed.svg").read_bytes() == MINE


@pytest.mark.parametrize("text", [FIRST["cut.svg"], SECOND["cut.svg"]])
def test_what_is_as_it_was_printed_or_will_be_is_not_kept(folder: Path, text: bytes) -> None:
    change(folder, text)
    assert write_folder("printed", SECOND).kept == ()
    assert not (folder / "cut-changed.svg").exists()


def test_a_folder_in_the_place_of_a_file_stops_the_print(folder: Path) -> None:
    (folder / "cut.svg").unlink()
    (folder / "cut.svg").mkdir()
    (folder / "cut.svg" / "mine").write_text("mine")
    with pytest.raises(CannotRun) as stopped:
        write_folder("printed", SECOND)
    assert stopped.value.message == "`printed/cut.svg` is no plain file any more, as the print before left it."
    assert (folder / "reading.pdf").read_bytes() == FIRST["reading.pdf"]
    assert (folder / "cut.svg" / "mine").exists()


@pytest.mark.parametrize("call", ["write", "fsync", "replace", "rename", "open", "listdir"])
@pytest.mark.parametrize("error", [OSError(errno.ENOSPC, "No space left on device"), KeyboardInterrupt()])
def test_a_failure_at_any_step_loses_nothing(
    folder: Path, monkeypatch: pytest.MonkeyPatch, call: str, error: BaseException
) -> None:
    for step in range(max(calls(call, "trial", monkeypatch), 3) + 4):
        for name in names(folder):
            (folder / name).unlink()
        write_folder("printed", FIRST)
        change(folder)
        with monkeypatch.context() as patched:
            failing(patched, call, step, error)
            try:
                write_folder("printed", SECOND, patience=0)
            except (CannotRun, KeyboardInterrupt):
                assert not (folder / "cut-changed.svg").exists() or (folder / "cut.svg").read_bytes() != MINE
        assert MINE in held(folder).values(), f"{call} failing at {step}"
        write_folder("printed", SECOND)
        assert (folder / "cut-changed.svg").read_bytes() == MINE
        assert not [name for name in names(folder) if name.startswith(".")]


@pytest.mark.parametrize("call", ["replace", "rename", "fsync"])
def test_a_process_killed_at_any_step_loses_nothing(folder: Path, monkeypatch: pytest.MonkeyPatch, call: str) -> None:
    for step in range(max(calls(call, "trial", monkeypatch), 1) + 1):
        for name in names(folder):
            (folder / name).unlink()
        write_folder("printed", FIRST)
        change(folder)
        script = KILLED.format(call=call, step=step, files=SECOND)
        done = subprocess.run([sys.executable, "-c", script], cwd=folder.parent, env=environment(), check=False)
        assert done.returncode in (-signal.SIGKILL, 0)
        assert MINE in {path.read_bytes() for path in folder.iterdir()}
        write_folder("printed", SECOND, patience=2)
        assert names(folder) == sorted([*SECOND, MANIFEST, "cut-changed.svg"])
        assert (folder / "cut-changed.svg").read_bytes() == MINE
