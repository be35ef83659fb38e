"""Lint from end to end: what is shown, and how it ends."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.tools.running import CLEAN, FAULTY, process, run, write

HANDBOOK = """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two

include cards.cards

sources
  glide tests .... flight test card 15

speeds
  VG .... 82 KIAS  from glide tests
"""
WARNED = "# allow no-such-rule: because\n" + CLEAN


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_clean(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=CLEAN)
    ran = run(capsys, "lint", "a.cards")
    assert (ran.code, ran.out, ran.err) == (0, "no findings: 1 card in 1 file\n", "")
    assert run(capsys, "lint", "--as", "brief", "a.cards").out == ""
    assert run(capsys, "lint", "--as", "json", "a.cards").out == "[]\n"


def test_an_error_ends_with_1_in_every_form(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=FAULTY)
    full = run(capsys, "lint", "a.cards")
    assert full.code == 1
    assert full.out.startswith("error unknown-value ...")
    assert full.out.endswith("\n\n1 error in 1 file\n")
    brief = run(capsys, "lint", "--as", "brief", "a.cards")
    assert brief.code == 1
    assert brief.out.startswith("a.cards:3:17: error unknown-value: ")
    assert brief.out.count("\n") == 1
    listed = run(capsys, "lint", "--as", "json", "a.cards")
    assert listed.code == 1
    (found,) = json.loads(listed.out)
    assert (found["file"], found["line"], found["column"], found["end_column"]) == ("a.cards", 3, 17, 21)


def test_strict(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=WARNED)
    assert run(capsys, "lint", "a.cards").code == 0
    assert run(capsys, "lint", "--strict", "a.cards").code == 1


def test_a_missing_file_ends_with_2_and_the_rest_is_shown(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=FAULTY)
    ran = run(capsys, "lint", "--as", "brief", "a.cards", "b.cards")
    assert ran.code == 2
    assert ran.out.startswith("a.cards:3:17:")
    assert ran.err == "dotleader: `b.cards` cannot be read: there is no such file.\n"
    assert run(capsys, "lint", "b.cards").out == ""


def test_a_missing_include_is_a_finding(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=HANDBOOK)
    ran = run(capsys, "lint", "--as", "brief", "book.cards")
    assert ran.code == 1
    assert "book.cards:4:9: error missing-file: `cards.cards` cannot be read: there is no such file." in ran.out


def test_a_part_is_read_with_its_handbook_and_only_its_findings_are_shown(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, book=HANDBOOK + "  VR .... 55 pounds  from nowhere\n", cards="normal Taxi\n  Airspeed .... {VG}\n")
    alone = run(capsys, "lint", "--as", "brief", "cards.cards")
    assert "unknown-value" not in alone.out
    assert "book.cards" not in alone.out
    full = run(capsys, "lint", "cards.cards").out
    assert full.endswith(" in 1 file\n`cards.cards` was read as a part of `book.cards`.\n")
    assert "book.cards" in run(capsys, "lint", "--as", "brief", ".").out


def test_a_part_that_is_included_with_a_slip_is_not_read_again_by_itself(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, book=HANDBOOK.replace("include", "inlcude"), cards="normal Taxi\n  Airspeed .... {VG}\n")
    out = run(capsys, "lint", "--as", "brief", ".").out
    assert "unknown-keyword" in out
    assert "unknown-value" not in out


def test_a_folder_counts_its_cards_and_files(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, sub__loose=CLEAN, sub__other=CLEAN)
    assert run(capsys, "lint", "sub").out == "no findings: 2 cards in 2 files\n"


def test_standard_input(here: Path) -> None:
    ran = process("lint", "--as", "brief", "-", stdin=FAULTY.encode(), cwd=here)
    assert ran.code == 1
    assert ran.out.startswith("-:3:17: error unknown-value: ")
    listed = process("lint", "--as", "json", "-", stdin=FAULTY.encode(), cwd=here)
    assert json.loads(listed.out)[0]["file"] == "-"


def test_standard_input_may_include_from_here(here: Path) -> None:
    write(here, cards="normal Taxi\n  Airspeed .... {VG}\n")
    ran = process("lint", "--as", "brief", "-", stdin=HANDBOOK.encode(), cwd=here)
    assert "missing-file" not in ran.out
    assert "unknown-value" not in ran.out


def test_not_utf8_is_a_finding_and_the_rest_is_read(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (here / "a.cards").write_bytes(b"normal Taxi\n  when it runs\n  \xd6l .... {VX}\n")
    out = run(capsys, "lint", "--as", "brief", "a.cards").out
    assert out.startswith("a.cards:3:3: error not-utf8: The file is not UTF-8: the byte at offset 29 ")
    assert "a.cards:3:11: error unknown-value" in out


def test_a_picture_is_one_finding(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (here / "a.cards").write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 40)
    out = run(capsys, "lint", "--as", "brief", "a.cards").out
    assert out.count("\n") == 1
    assert out.startswith("a.cards:1:1: error not-text: ")


def test_equal_runs_say_the_same(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, b=FAULTY, a=FAULTY + "  Dots .... .... HELD\n", c=WARNED)
    first = run(capsys, "lint", "c.cards", "b.cards", "a.cards", "--as", "json").out
    assert first == run(capsys, "lint", ".", "--as", "json").out
    places = [(each["file"], each["line"], each["column"]) for each in json.loads(first)]
    assert places == sorted(places)


def test_colour_only_when_asked_for_in_a_pipe(here: Path) -> None:
    write(here, a=FAULTY)
    assert "\x1b" not in process("lint", ".", cwd=here).out
    assert "\x1b[1;31merror" in process("lint", ".", cwd=here, FORCE_COLOR="1").out
    assert "\x1b" not in process("lint", ".", cwd=here, FORCE_COLOR="1", NO_COLOR="1").out
    assert "\x1b" not in process("lint", "--as", "brief", ".", cwd=here, FORCE_COLOR="1").out
