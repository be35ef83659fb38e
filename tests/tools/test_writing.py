"""A file is replaced whole or not at all, whatever happens on the way."""

from __future__ import annotations

import errno
import os
import signal
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.writing import replace_file
from tests.tools.running import environment, names, run, write

OLD = b"old\n"
NEW = b"new and longer\n" * 50
UGLY = "normal  Taxi\n   Brakes.....HELD\n"
NEAT = "normal Taxi\n  Brakes ................ HELD\n"


@pytest.fixture
def path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "a.cards"
    path.write_bytes(OLD)
    return path


def untouched(path: Path) -> bool:
    return path.read_bytes() == OLD and names(path.parent) == [path.name]


def no_space(*_: object) -> int:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


@pytest.mark.parametrize("mode", [0o600, 0o644, 0o664, 0o755])
def test_the_mode_stays(path: Path, mode: int) -> None:
    path.chmod(mode)
    replace_file(str(path), NEW, OLD)
    assert path.read_bytes() == NEW
    assert stat.S_IMODE(path.stat().st_mode) == mode
    assert names(path.parent) == ["a.cards"]


def test_a_link_stays_and_its_target_is_replaced(path: Path) -> None:
    (path.parent / "sub").mkdir()
    link = path.parent / "sub" / "link.cards"
    link.symlink_to("../a.cards")
    replace_file(str(link), NEW, OLD)
    assert link.is_symlink()
    assert path.read_bytes() == NEW
    assert names(link.parent) == ["link.cards"]


@pytest.mark.parametrize("call", ["write", "fsync", "replace"])
def test_a_full_disk_loses_nothing(path: Path, monkeypatch: pytest.MonkeyPatch, call: str) -> None:
    monkeypatch.setattr(os, call, no_space)
    with pytest.raises(CannotRun) as stopped:
        replace_file(str(path), NEW, OLD)
    monkeypatch.undo()
    assert stopped.value.message.endswith("cannot be written: no space left on device.")
    assert untouched(path)


def test_short_writes_go_on(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    whole = os.write
    monkeypatch.setattr(os, "write", lambda handle, data: whole(handle, bytes(data)[:7]))
    replace_file(str(path), NEW, OLD)
    assert path.read_bytes() == NEW


@pytest.mark.parametrize("call", ["write", "fsync", "replace"])
def test_an_interruption_loses_nothing(path: Path, monkeypatch: pytest.MonkeyPatch, call: str) -> None:
    def interrupted(*_: object) -> int:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, call, interrupted)
    with pytest.raises(KeyboardInterrupt):
        replace_file(str(path), NEW, OLD)
    assert untouched(path)


def test_a_file_that_was_saved_in_the_meantime_is_left(path: Path) -> None:
    with pytest.raises(CannotRun) as stopped:
        replace_file(str(path), NEW, b"what was read")
    assert stopped.value.message == "`a.cards` was changed in the meantime and was left as it is."
    assert untouched(path)


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="the administrator may write everywhere")
def test_protected_files_and_folders_are_left(path: Path) -> None:
    path.chmod(0o444)
    with pytest.raises(CannotRun):
        replace_file(str(path), NEW, OLD)
    path.chmod(0o644)
    path.parent.chmod(0o555)
    with pytest.raises(CannotRun):
        replace_file(str(path), NEW, OLD)
    path.parent.chmod(0o755)
    assert untouched(path)


def test_a_protected_folder_is_said(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def denied(*_: object) -> int:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr(os, "open", denied)
    with pytest.raises(CannotRun) as stopped:
        replace_file(str(path), NEW, OLD)
    monkeypatch.undo()
    assert stopped.value.message == "`a.cards` cannot be written: permission denied."
    assert stopped.value.advice == "The file was left as it is."
    assert untouched(path)


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGKILL, signal.SIGINT])
def test_a_process_that_is_ended_while_it_writes_loses_nothing(path: Path, number: signal.Signals) -> None:
    script = f"""
import os, sys, signal
from dotleader.__main__ import main
def ended(*_):
    os.kill(os.getpid(), {int(number)})
    signal.pause()
os.fsync = ended
sys.exit(main(["format", "a.cards"]))
"""
    path.write_text(UGLY)
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=path.parent, env=environment(), capture_output=True, check=False
    )
    assert path.read_text() == UGLY
    left = [name for name in names(path.parent) if name != "a.cards"]
    if number == signal.SIGKILL:
        assert done.returncode == -signal.SIGKILL
        assert all(name.startswith(".a.cards.") and name.endswith(".new") for name in left)
    else:
        assert done.returncode == 128 + number
        assert left == []
        assert done.stderr == b""


def test_format_keeps_line_ends_marks_and_everything_that_is_in_form(
    path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    crlf, old_mac, mark, neat = (path.parent / f"{n}.cards" for n in ("crlf", "mac", "mark", "neat"))
    crlf.write_bytes(UGLY.replace("\n", "\r\n").encode())
    old_mac.write_bytes(UGLY.replace("\n", "\r").encode())
    mark.write_bytes(b"\xef\xbb\xbf" + UGLY.encode())
    neat.write_text(NEAT)
    before = neat.stat().st_mtime_ns
    ran = run(capsys, "format", crlf, old_mac, mark, neat)
    assert ran.code == 0
    assert ran.out == "formatted crlf.cards\nformatted mac.cards\nformatted mark.cards\n3 of 4 files changed\n"
    assert crlf.read_bytes() == NEAT.replace("\n", "\r\n").encode()
    assert old_mac.read_bytes() == NEAT.replace("\n", "\r").encode()
    assert mark.read_bytes() == b"\xef\xbb\xbf" + NEAT.encode()
    assert neat.stat().st_mtime_ns == before
    assert run(capsys, "format", crlf, old_mac, mark, neat).out == "4 files in form\n"


def test_check_and_diff_never_write(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path.write_text(UGLY)
    check = run(capsys, "format", "--check", ".")
    assert (check.code, check.out) == (1, "would format a.cards\n1 of 1 file would change\n")
    assert path.read_text() == UGLY
    path.write_text(NEAT)
    assert run(capsys, "format", "--check", ".").code == 0
    assert run(capsys, "format", "--diff", ".").code == 0


def test_a_diff_is_one_that_patch_understands(path: Path) -> None:
    path.write_text(UGLY.replace("Taxi", "Täxi").rstrip("\n"), encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "dotleader", "format", "--diff", "a.cards"],
        cwd=path.parent,
        env=environment(PYTHONIOENCODING="ascii"),
        capture_output=True,
        check=False,
    )
    assert done.returncode == 1
    assert done.stdout.decode() == (
        "--- a.cards\n+++ a.cards\n@@ -1,2 +1,2 @@\n"
        "-normal  Täxi\n-   Brakes.....HELD\n\\ No newline at end of file\n"
        "+normal Täxi\n+  Brakes ................ HELD\n"
    )


def test_format_from_standard_input(path: Path) -> None:
    def formatted(*options: str) -> subprocess.CompletedProcess[bytes]:
        return subprocess.run(
            [sys.executable, "-m", "dotleader", "format", *options, "-"],
            input=UGLY.replace("HELD", "HÄLT").encode(),
            env=environment(PYTHONIOENCODING="ascii"),
            capture_output=True,
            check=False,
        )

    assert formatted().stdout.decode() == NEAT.replace("HELD", "HÄLT")
    assert formatted().returncode == 0
    assert formatted("--check").returncode == 1
    assert formatted("--check").stdout == b"would format -\n1 of 1 file would change\n"


def test_what_is_not_utf8_is_left_and_the_rest_is_formatted(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path.write_bytes(b"normal  Taxi\n  \xd6l .... HELD\n")
    write(path.parent, b=UGLY)
    ran = run(capsys, "format", ".")
    assert ran.code == 1
    assert ran.out == "formatted b.cards\n1 of 1 file changed\n"
    assert ran.err.startswith("dotleader: `a.cards` was left as it is. The file is not UTF-8: the byte at offset 15 ")
    assert run(capsys, "format", ".", "missing.cards").code == 2


def test_broken_lines_survive(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path.write_text("stray\nnormal  Taxi\n  Brakes\n\n  .... x\n")
    assert run(capsys, "format", ".").code == 0
    text = path.read_text()
    assert all(word in text for word in ("stray", "normal", "Taxi", "Brakes", ".... x"))
