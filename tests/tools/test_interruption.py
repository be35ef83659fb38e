"""Ctrl-C ends a command with 130 and without a word, whenever it comes and whatever would swallow it."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.tools.running import CLEAN, FAULTY, environment, names, write

pytestmark = pytest.mark.skipif(os.name == "nt", reason="signals are sent as on POSIX")

SILENT = (130, b"", b"")
START = """
import os, signal, sys
sys.argv = ["dotleader", {arguments}]
{before}
from dotleader.__main__ import main
sys.exit(main())
"""
AT_IMPORT = """
left = [{count}]
def hook(event, _):
    if event == "import" and hasattr(sys.modules.get("dotleader.__main__"), "main"):
        left[0] -= 1
        if not left[0]:
            os.kill(os.getpid(), signal.SIGINT)
sys.addaudithook(hook)
"""
SWALLOWED = """
from dotleader.tools import command_line, ending
def run(_):
    {tidily}
    try:
        os.kill(os.getpid(), signal.SIGINT)
        sum(range(1000))
    except BaseException:
        pass
    return 0
command_line.run = run
"""
WHEN_TAKEN_AWAY = """
from dotleader.tools import command_line, ending
class Gone:
    def __del__(self):
        os.kill(os.getpid(), signal.SIGINT)
        sum(range(1000))
def run(_):
    ending.end_tidily()
    gone = Gone()
    del gone
    return 0
command_line.run = run
"""


def ended(*arguments: str, before: str, cwd: Path) -> tuple[int, bytes, bytes]:
    script = START.format(arguments=", ".join(map(repr, arguments)), before=before)
    done = subprocess.run(
        [sys.executable, "-c", script],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        cwd=cwd,
        env=environment(),
        check=False,
    )
    return done.returncode, done.stdout, done.stderr


@pytest.mark.parametrize("count", [1, 2, 5, 12, 30, 60])
def test_at_any_import(tmp_path: Path, count: int) -> None:
    write(tmp_path, a=FAULTY)
    assert ended("lint", ".", before=AT_IMPORT.format(count=count), cwd=tmp_path) == SILENT


def test_an_import_later_than_all_interrupts_nothing(tmp_path: Path) -> None:
    """What the test before this one counts is there."""
    write(tmp_path, a=FAULTY)
    assert ended("lint", ".", before=AT_IMPORT.format(count=10**6), cwd=tmp_path)[0] == 1


@pytest.mark.parametrize("tidily", ["", "ending.end_tidily()"])
def test_where_everything_is_swallowed(tmp_path: Path, tidily: str) -> None:
    assert ended("lint", ".", before=SWALLOWED.format(tidily=tidily), cwd=tmp_path) == SILENT


def test_where_the_interpreter_itself_swallows_it(tmp_path: Path) -> None:
    assert ended("lint", ".", before=WHEN_TAKEN_AWAY, cwd=tmp_path) == SILENT


def test_one_that_got_lost_is_raised_before_anything_is_written(tmp_path: Path) -> None:
    write(tmp_path, a="normal  Taxi\n   Brakes .... HELD\n")
    held = (tmp_path / "a.cards").read_bytes()
    lost = """
from dotleader.tools import format_command
formatted = format_command._formatted
def lose(path):
    try:
        os.kill(os.getpid(), signal.SIGINT)
        sum(range(1000))
    except KeyboardInterrupt:
        pass
    return formatted(path)
format_command._formatted = lose
"""
    assert ended("format", "a.cards", before=lost, cwd=tmp_path) == SILENT
    assert (tmp_path / "a.cards").read_bytes() == held
    assert names(tmp_path) == ["a.cards"]


def test_when_the_interpreter_ends(tmp_path: Path) -> None:
    write(tmp_path, a=CLEAN)
    before = "import atexit; atexit.register(lambda: (os.kill(os.getpid(), signal.SIGINT), sum(range(1000))))"
    code, _, err = ended("lint", ".", before=before, cwd=tmp_path)
    assert (code, err) == (130, b"")


def test_one_that_is_to_be_ignored_is(tmp_path: Path) -> None:
    write(tmp_path, a=CLEAN)
    before = "signal.signal(signal.SIGINT, signal.SIG_IGN)" + AT_IMPORT.format(count=5)
    assert ended("lint", ".", before=before, cwd=tmp_path)[0] == 0


@pytest.mark.parametrize("wait", [0.0, 0.005, 0.02, 0.05, 0.1, 0.3])
def test_at_any_time(tmp_path: Path, wait: float) -> None:
    """It waits for its input in the end, so that it cannot have ended before."""
    before = "print('here', flush=True)\nfrom dotleader.__main__ import main  # from here on it is ours\n"
    script = START.format(arguments="'lint', '-'", before=before).replace(
        "sys.exit", "print('go', flush=True)\nsys.exit"
    )
    process = subprocess.Popen(
        [sys.executable, "-c", script],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=environment(),
    )
    assert process.stdout is not None
    assert process.stdout.readline() + process.stdout.readline() == b"here\ngo\n"
    time.sleep(0.001 + wait)
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=20)
    assert (process.returncode, out, err) == SILENT
