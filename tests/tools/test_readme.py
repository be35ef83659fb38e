"""What the README shows is so: its first card lints without a finding and is in form, and its commands exist."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from dotleader.tools.command_line import SUMMARIES
from tests.tools.running import run

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```\n(.*?)^```", README, re.DOTALL | re.MULTILINE)


def test_the_first_two_blocks_are_one_command_each() -> None:
    assert [block.count("\n") for block in BLOCKS[:2]] == [1, 1]
    assert "dotleader lint examples/ostrel-two" in BLOCKS[0]
    assert "pytest" in BLOCKS[1]


def test_the_first_card(capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "first.cards").write_text(BLOCKS[2], encoding="utf-8")
    assert run(capsys, "lint", "--strict", "first.cards").out == "no findings: 1 card in 1 file\n"
    assert format_text(SourceText("first.cards", BLOCKS[2])) == BLOCKS[2]


def test_the_stock_and_the_punch_go_with_the_first_card(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "first.cards").write_text(f"{BLOCKS[2]}\n{BLOCKS[3]}", encoding="utf-8")
    assert run(capsys, "lint", "--strict", "first.cards").out == "no findings: 1 card in 1 file\n"
    assert format_text(SourceText("first.cards", BLOCKS[3])) == BLOCKS[3]
    said = run(capsys, "print", "first.cards", "--check").out
    assert re.search(r"Desk punch: 3 holes .* in one stroke\.", said)


def test_every_command_of_the_table_works_on_it(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "first.cards").write_text(BLOCKS[2], encoding="utf-8")
    commands = re.findall(r"^\| `dotleader ([^`]+)` \|", README, re.MULTILINE)
    assert {command.split()[0] for command in commands} == set(SUMMARIES)
    for command in commands:
        ran = run(capsys, *command.split())
        assert (ran.code, ran.err) == (0, ""), command
    assert (tmp_path / "printed" / "sheets.pdf").exists()
