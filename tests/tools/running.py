"""The command, run in this process and in one of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from dotleader.__main__ import main

CLEAN = "normal Taxi\n  when the engine runs smoothly\n  Brakes .... CHECK, HOLD\n"
"""A loose card that no rule has anything to say about."""

FAULTY = "normal Taxi\n  when the engine runs smoothly\n  Airspeed .... {VX}\n"
"""A loose card with one error, at line 3 and column 17."""

SRC = Path(__file__).parents[2] / "src"


@dataclass(frozen=True)
class Ran:
    code: int
    out: str
    err: str


def run(capsys: pytest.CaptureFixture[str], *arguments: str | Path) -> Ran:
    """Run a command in this process."""
    capsys.readouterr()
    code = main([str(argument) for argument in arguments])
    said = capsys.readouterr()
    return Ran(code, said.out, said.err)


def in_one_line(ran: Ran) -> str:
    """What was said, without regard to where its lines break."""
    return " ".join(ran.out.split())


def command(*arguments: str | Path) -> list[str]:
    return [sys.executable, "-m", "dotleader", *map(str, arguments)]


def environment(**more: str) -> dict[str, str]:
    plain = {name: value for name, value in os.environ.items() if name not in ("NO_COLOR", "FORCE_COLOR", "COLUMNS")}
    return {**plain, "PYTHONPATH": str(SRC), **more}


def process(*arguments: str | Path, stdin: bytes = b"", cwd: Path | None = None, **more: str) -> Ran:
    """Run a command in a process of its own."""
    done = subprocess.run(
        command(*arguments), input=stdin, capture_output=True, cwd=cwd, env=environment(**more), check=False
    )
    return Ran(done.returncode, done.stdout.decode(), done.stderr.decode())


def write(folder: Path, **files: str) -> None:
    """Sources by their stems; two underscores stand for a slash."""
    for stem, text in files.items():
        path = folder / (stem.replace("__", "/") + ".cards")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="")


def names(folder: Path) -> list[str]:
    """What is in a folder, hidden files too."""
    return sorted(path.name for path in folder.iterdir())
