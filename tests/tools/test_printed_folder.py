"""A folder holds one print: all of it, and nothing of another."""

from __future__ import annotations

import contextlib
import errno
import hashlib
import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.lock import LOCK
from dotleader.tools.printing.printed_folder import MANIFEST, Written, write_folder
from tests.tools.running import environment, names

FIRST = {"reading.pdf": b"first reading", "sheets.pdf": b"first sheets", "punch.svg": b"first punch"}
SECOND = {"reading.pdf": b"second reading", "sheets.pdf": b"second sheets", "cut.svg": b"second cut"}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path / "printed"


def held(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir() if not path.name.startswith(".")}


def whole(folder: Path) -> dict[str, bytes]:
    """What is in a folder, once its manifest has been found to be true of it."""
    found = held(folder)
    files = json.loads(found.pop(MANIFEST))["files"]
    assert files == {name: hashlib.sha256(data).hexdigest() for name, data in found.items()}
    assert not [name for name in names(folder) if name.startswith(".")]
    return found


def test_a_print_and_the_next(folder: Path) -> None:
    assert write_folder("printed", FIRST) == Written(tuple(FIRST), (), ())
    assert whole(folder) == FIRST
    assert write_folder("printed", SECOND) == Written(tuple(SECOND), ("punch.svg",), ())
    assert whole(folder) == SECOND
    assert write_folder("printed", SECOND) == Written(tuple(SECOND), (), ())


def test_equal_prints_give_equal_folders(folder: Path) -> None:
    write_folder("printed", FIRST)
    write_folder("other/deep", FIRST)
    assert held(folder) == held(folder.parent / "other" / "deep")


def test_what_belongs_to_somebody_else_is_never_touched(folder: Path) -> None:
    write_folder("printed", FIRST)
    (folder / "notes.txt").write_text("mine")
    (folder / "punch.svg").write_text("mine, drawn over")
    assert write_folder("printed", SECOND) == Written(tuple(SECOND), (), ("punch.svg",))
    assert (folder / "notes.txt").read_text() == "mine"
    assert (folder / "punch.svg").read_text() == "mine, drawn over"


def test_a_file_of_that_name_that_no_print_made_stops_it(folder: Path) -> None:
    folder.mkdir()
    (folder / "reading.pdf").write_text("mine")
    with pytest.raises(CannotRun) as stopped:
        write_folder("printed", FIRST)
    assert stopped.value.message == "`printed/reading.pdf` is there, and no print of dotleader made it."
    assert names(folder) == ["reading.pdf"]


@pytest.mark.parametrize("text", ["", "[]", "{", '{"files": []}', "\xff", '{"files": {"a": 1}}'])
def test_a_manifest_that_is_none_is_taken_for_none(folder: Path, text: str) -> None:
    folder.mkdir()
    (folder / MANIFEST).write_text(text, encoding="latin-1")
    write_folder("printed", FIRST)
    assert whole(folder) == FIRST


@pytest.mark.parametrize("name", ["../outside.txt", "sub/inside.txt", "printed.json", "..", ".hidden", ""])
def test_a_manifest_cannot_reach_out_of_its_folder(folder: Path, name: str) -> None:
    (folder / "sub").mkdir(parents=True)
    for other in ("outside.txt", "printed/sub/inside.txt", "printed/.hidden"):
        (folder.parent / other).write_text("mine")
    digest = hashlib.sha256(b"mine").hexdigest()
    (folder / MANIFEST).write_text(json.dumps({"files": {name: digest}}))
    write_folder("printed", FIRST)
    for other in ("outside.txt", "printed/sub/inside.txt", "printed/.hidden"):
        assert (folder.parent / other).read_text() == "mine"


def failing(monkeypatch: pytest.MonkeyPatch, call: str, at: int, error: BaseException) -> None:
    """Let the n-th call of an `os` function fail, counted from 0; the others go on."""
    real, count = getattr(os, call), iter(range(10_000))

    def sometimes(*arguments: object, **more: object) -> object:
        if next(count) == at:
            raise error
        return real(*arguments, **more)

    monkeypatch.setattr(os, call, sometimes)


def calls(call: str, folder: str, monkeypatch: pytest.MonkeyPatch) -> int:
    """How often a second print calls an `os` function."""
    real, count = getattr(os, call), [0]

    def counting(*arguments: object, **more: object) -> object:
        count[0] += 1
        return real(*arguments, **more)

    write_folder(folder, FIRST)
    with monkeypatch.context() as patched:
        patched.setattr(os, call, counting)
        write_folder(folder, SECOND)
    return count[0]


@pytest.mark.parametrize("call", ["write", "fsync", "replace", "open", "listdir"])
@pytest.mark.parametrize("error", [OSError(errno.ENOSPC, "No space left on device"), KeyboardInterrupt()])
def test_a_failure_at_any_step_leaves_the_print_before_or_the_new_one(
    folder: Path, monkeypatch: pytest.MonkeyPatch, call: str, error: BaseException
) -> None:
    count = calls(call, "trial", monkeypatch)
    assert count
    for step in range(count):
        write_folder("printed", FIRST)
        with monkeypatch.context() as patched:
            failing(patched, call, step, error)
            try:
                write_folder("printed", SECOND, patience=0)
                ended = "well"
            except (CannotRun, KeyboardInterrupt):
                ended = "badly"
        found = held(folder)
        manifest = json.loads(found.pop(MANIFEST))["files"]
        assert found in (FIRST, SECOND), f"{call} failing at {step}"
        assert set(manifest) == set(found)
        assert ended == "badly" or found == SECOND
        write_folder("printed", SECOND)
        assert whole(folder) == SECOND


KILLED = """
import os, signal, sys
from dotleader.tools.printing.printed_folder import write_folder
real, left = os.{call}, [{step}]
def sometimes(*arguments, **more):
    if left[0] == 0:
        os.kill(os.getpid(), signal.SIGKILL)
    left[0] -= 1
    return real(*arguments, **more)
os.{call} = sometimes
write_folder("printed", {files!r})
"""


@pytest.mark.parametrize("call", ["replace", "fsync", "unlink"])
def test_a_process_killed_at_any_step_leaves_no_mixture(
    folder: Path, monkeypatch: pytest.MonkeyPatch, call: str
) -> None:
    for step in range(calls(call, "trial", monkeypatch)):
        write_folder("printed", FIRST)
        script = KILLED.format(call=call, step=step, files=SECOND)
        done = subprocess.run([sys.executable, "-c", script], cwd=folder.parent, env=environment(), check=False)
        assert done.returncode == -signal.SIGKILL
        found = held(folder)
        found.pop(MANIFEST, None)
        assert found.items() <= FIRST.items() or found.items() <= SECOND.items(), f"killed at {call} {step}"
        third = {**SECOND, "third.svg": b"third"}
        write_folder("printed", third, patience=2)
        assert whole(folder) == third


@pytest.fixture
def tiny_disk(tmp_path: Path) -> Iterator[Path]:
    """A file system of 64 kB, where the system lets us have one."""
    disk = tmp_path / "disk"
    disk.mkdir()
    mounted = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)], capture_output=True, check=False
    )
    if mounted.returncode:
        pytest.skip("no file system may be mounted here")
    yield disk
    subprocess.run(["umount", str(disk)], check=True)


@pytest.mark.skipif(sys.platform != "linux", reason="tmpfs is Linux's")
def test_a_disk_that_is_really_full(tiny_disk: Path) -> None:
    small = {"reading.pdf": b"r" * 9_000, "sheets.pdf": b"s" * 9_000}
    write_folder(str(tiny_disk / "printed"), small)
    with pytest.raises(CannotRun) as stopped:
        write_folder(str(tiny_disk / "printed"), {"reading.pdf": b"R" * 20_000, "sheets.pdf": b"S" * 60_000})
    assert "no space left on device" in stopped.value.message
    assert stopped.value.advice == (
        "What was printed before stands as it was. Make room on that disk, or print into another folder with `--to`."
    )
    assert whole(tiny_disk / "printed") == small


@pytest.mark.skipif(sys.platform != "linux", reason="tmpfs is Linux's")
def test_a_disk_with_room_for_names_only(tiny_disk: Path) -> None:
    """Not even the number of the process can be written into the lock."""
    small = {"reading.pdf": b"r" * 9_000}
    write_folder(str(tiny_disk / "printed"), small)
    with (tiny_disk / "fill").open("wb", buffering=0) as fill, contextlib.suppress(OSError):
        while fill.write(b"x" * 4_096):
            pass
    for folder, kept in (("printed", "What was printed before stands as it was."), ("new", "Nothing was printed.")):
        with pytest.raises(CannotRun) as stopped:
            write_folder(str(tiny_disk / folder), {"reading.pdf": b"R" * 9_000})
        assert stopped.value.message.endswith(f"{folder}` cannot be written into: no space left on device.")
        assert stopped.value.advice.startswith(kept)
    assert whole(tiny_disk / "printed") == small
    assert names(tiny_disk) == ["fill", "printed"]


@pytest.mark.skipif(sys.platform != "linux", reason="tmpfs is Linux's")
def test_a_disk_that_is_read_only(tiny_disk: Path) -> None:
    write_folder(str(tiny_disk / "printed"), FIRST)
    subprocess.run(["mount", "-o", "remount,ro", str(tiny_disk)], check=True)
    for folder, what in (("printed", "written into"), ("new", "made")):
        with pytest.raises(CannotRun) as stopped:
            write_folder(str(tiny_disk / folder), SECOND)
        assert stopped.value.message.endswith(f"{folder}` cannot be {what}: read-only file system.")
        assert stopped.value.advice.endswith("Print into another folder with `--to`.")
    assert whole(tiny_disk / "printed") == FIRST


def test_files_that_may_not_be_that_large_leave_nothing(folder: Path) -> None:
    """As on a full disk, for those who may not mount one: no file may be larger than 16 kB."""
    resource = pytest.importorskip("resource")
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (16_384, hard))
    try:
        with pytest.raises(CannotRun) as stopped:
            write_folder("printed", {"reading.pdf": b"r" * 9_000, "sheets.pdf": b"s" * 60_000})
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert stopped.value.message == "`printed` cannot be written into: file too large."
    assert not folder.exists()


HOLDING = """
import sys, time
from dotleader.tools.lock import locked
with locked("printed"):
    print("held", flush=True)
    time.sleep(float(sys.argv[1]))
"""


def holder(folder: Path, seconds: float) -> subprocess.Popen[bytes]:
    folder.mkdir(exist_ok=True)
    process = subprocess.Popen(
        [sys.executable, "-c", HOLDING, str(seconds)],
        cwd=folder.parent, env=environment(), stdout=subprocess.PIPE,
    )  # fmt: skip
    assert process.stdout
    assert process.stdout.readline().strip() == b"held"
    return process


def test_a_second_print_waits_or_says_so(folder: Path) -> None:
    with holder(folder, 30) as process:
        with pytest.raises(CannotRun) as stopped:
            write_folder("printed", FIRST, patience=0.2)
        assert stopped.value.message == f"Another print is going on in `printed` (process {process.pid})."
        assert held(folder) == {}
        process.kill()
    started = time.monotonic()
    with holder(folder, 0.5):
        write_folder("printed", FIRST, patience=20)
    assert time.monotonic() - started < 19
    assert whole(folder) == FIRST


def test_the_lock_of_a_process_that_was_killed_is_taken_over(folder: Path) -> None:
    with holder(folder, 30) as process:
        process.kill()
    assert (folder / LOCK).exists()
    write_folder("printed", FIRST, patience=0)
    assert whole(folder) == FIRST


def test_a_folder_that_cannot_be_made(folder: Path) -> None:
    folder.write_text("a file")
    with pytest.raises(CannotRun) as stopped:
        write_folder("printed", FIRST)
    assert stopped.value.message == "`printed` is a file."
    with pytest.raises(CannotRun) as stopped:
        write_folder("printed/below", FIRST)
    assert stopped.value.message == "`printed/below` cannot be made: not a directory."
