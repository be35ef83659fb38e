"""What is said about the command line itself, and how a run ends."""

from __future__ import annotations

import importlib
import os
import re
import signal
import subprocess
import time
from pathlib import Path

import pytest

from dotleader import __version__
from dotleader.__main__ import main
from dotleader.tools import command_line
from dotleader.tools.command_line import SUMMARIES, Parser
from tests.tools.running import CLEAN, FAULTY, command, environment, process, run, write


@pytest.mark.parametrize("arguments", [(), ("--help",), ("-h",), ("help",)])
def test_help_names_every_command(capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...]) -> None:
    ran = run(capsys, *arguments)
    assert (ran.code, ran.err) == (0, "")
    for name in SUMMARIES:
        assert f"  dotleader {name} " in ran.out
    assert all(len(line) <= 80 for line in ran.out.splitlines())


@pytest.mark.parametrize("name", SUMMARIES)
def test_help_of_a_command_names_its_options_and_nothing_else(capsys: pytest.CaptureFixture[str], name: str) -> None:
    ran = run(capsys, name, "--help")
    assert (ran.code, ran.err) == (0, "")
    assert run(capsys, "help", name).out == ran.out
    assert run(capsys, name, "x", "-h").out == ran.out
    module = importlib.import_module(f"dotleader.tools.{name}_command")
    parser = Parser(name)
    module.arguments(parser)
    known = {option for action in parser._actions for option in action.option_strings} | {"--help", "-h"}
    assert set(re.findall(r"(?<![\w-])--?[a-z]+(?:-[a-z]+)*", ran.out.split("\n", 1)[1])) == known
    assert all(len(line) <= 80 for line in ran.out.splitlines())
    assert SUMMARIES[name] in ran.out.splitlines()[0]


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "--version").out == f"dotleader {__version__}\n"
    assert run(capsys, "-V").out == f"dotleader {__version__}\n"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("lnt",), "There is no command `lnt`.\n  Did you mean `lint`?"),
        (("frobnicate",), "There is no command `frobnicate`.\n  The commands are lint, format,"),
        (("--strict", "lint"), "There is no command `--strict`.\n  Options stand after the command"),
        (("lint",), "Nothing to lint was named.\n  Name files or folders"),
        (("lint", ".", "--sctrict"), "`dotleader lint` has no option `--sctrict`.\n  Did you mean `--strict`?"),
        (("lint", ".", "--xyz=3"), "`dotleader lint` has no option `--xyz`.\n  See `dotleader lint --help`."),
        (("lint", ".", "--as"), "`--as` needs a word after it."),
        (("lint", ".", "--as", "breif"), "`--as breif` is not known.\n  Did you mean `brief`?"),
        (("lint", ".", "--as=xml"), "`--as xml` is not known.\n  Take one of full, brief, json, sarif, github."),
        (("lint", ".", "--strict=yes"), "`--strict` takes no value."),
        (("lint", ".", "--str"), "`dotleader lint` has no option `--str`.\n  Did you mean `--strict`?"),
        (("format",), "Nothing to format was named."),
        (("format", "-", "a.cards"), "Standard input is formatted by itself."),
        (("explain", "--in", "a.cards"), "No name was given."),
    ],
)
def test_slips_are_said_and_end_with_2(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], said: str
) -> None:
    ran = run(capsys, *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith(f"dotleader: {said}")


def test_paths_may_stand_around_options(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    write(tmp_path, a=CLEAN, b=FAULTY)
    ran = run(capsys, "lint", tmp_path / "a.cards", "--as", "brief", tmp_path / "b.cards")
    assert ran.code == 1
    assert "b.cards:3:17: error unknown-value" in ran.out


def test_a_fault_of_our_own_is_one_sentence(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(_: object) -> int:
        raise KeyError("no\nsuch")

    monkeypatch.setattr(command_line, "run", broken)
    monkeypatch.delenv("DOTLEADER_DEBUG", raising=False)
    ran = run(capsys, "lint", ".")
    assert ran.code == 2
    assert ran.err.splitlines()[0] == "dotleader: This is a fault of dotleader itself (KeyError: 'no\\nsuch')."
    assert "Traceback" not in ran.err
    monkeypatch.setenv("DOTLEADER_DEBUG", "1")
    with pytest.raises(KeyError):
        main(["lint", "."])


def test_interruption_ends_with_130(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(_: object) -> int:
        raise KeyboardInterrupt

    monkeypatch.setattr(command_line, "run", interrupted)
    ran = run(capsys, "lint", ".")
    assert (ran.code, ran.out, ran.err) == (130, "", "")


def test_a_real_interruption_says_nothing(tmp_path: Path) -> None:
    waiting = subprocess.Popen(
        command("lint", "-"),
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=environment(),
    )
    time.sleep(1.0)  # it waits for its input by then, and 130 is right before that too
    waiting.send_signal(signal.SIGINT)
    out, err = waiting.communicate(timeout=20)
    assert (waiting.returncode, out, err) == (130, b"", b"")


@pytest.mark.parametrize("form", ["full", "brief", "json"])
def test_a_closed_pipe_ends_quietly_with_the_answer(tmp_path: Path, form: str) -> None:
    write(tmp_path, a=FAULTY * 400)
    read, written = os.pipe()
    os.close(read)
    try:
        done = subprocess.run(
            command("lint", "--as", form, tmp_path),
            stdout=written,
            stderr=subprocess.PIPE,
            env=environment(),
            check=False,
        )
    finally:
        os.close(written)
    assert (done.returncode, done.stderr) == (1, b"")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="there is no full device here")
def test_a_full_disk_behind_standard_output_is_said(tmp_path: Path) -> None:
    write(tmp_path, a=FAULTY)
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            command("lint", tmp_path), stdout=full, stderr=subprocess.PIPE, env=environment(), check=False
        )
    assert done.returncode == 2
    assert done.stderr == b"dotleader: Standard output cannot be written: no space left on device.\n"


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        (("lint", "{}"), 1),
        (("lint", "--as", "brief", "{}"), 1),
        (("lint", "--as", "json", "{}"), 1),
        (("print", "{}"), 1),
        (("print", "--draft", "{}"), 0),
        (("format", "--check", "{}"), 1),
        (("format", "--diff", "{}"), 1),
        (("explain",), 0),
        (("--help",), 0),
    ],
)
def test_a_closed_standard_output_is_no_fault(tmp_path: Path, arguments: tuple[str, ...], code: int) -> None:
    write(tmp_path, a=FAULTY)
    shell = " ".join(command(*(word.format(tmp_path) for word in arguments)))
    done = subprocess.run(["sh", "-c", shell + " >&-"], stderr=subprocess.PIPE, env=environment(), check=False)
    assert (done.returncode, done.stderr) == (code, b"")
    silent = subprocess.run(["sh", "-c", shell + " >&- 2>&- <&-"], env=environment(), check=False)
    assert silent.returncode == code


def test_a_working_folder_that_is_gone_is_said(tmp_path: Path) -> None:
    gone = tmp_path / "gone"
    gone.mkdir()
    shell = f"cd {gone} && rmdir {gone} && " + " ".join(command("lint", "."))
    done = subprocess.run(["sh", "-c", shell], capture_output=True, env=environment(), check=False)
    assert done.returncode == 2
    assert done.stderr.decode() == (
        "dotleader: The folder that this was started in is no longer there.\n"
        "  Change into another one: `cd ..`, or `cd` and its path.\n"
    )


def test_a_narrow_encoding_is_served(tmp_path: Path) -> None:
    write(tmp_path, a="normal Taxi\n  Öl .... {Vé}\n")
    ran = process("lint", ".", cwd=tmp_path, PYTHONIOENCODING="ascii")
    assert ran.code == 1
    assert ran.out.isascii()
    assert r"  \xd6l .... {V\xe9}" in ran.out
