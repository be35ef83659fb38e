"""`dotleader baseline`: an old book is accepted, and only what is new is shown."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.resolve import resolve
from dotleader.rules.baseline import Baseline, Key, accepted, entries_of, keys_of
from dotleader.rules.catalogue import BY_NAME
from dotleader.rules.checks import check
from dotleader.rules.settling import settled
from dotleader.rules.subject import subject_of
from dotleader.source.finding import Severity
from dotleader.source.text import SourceText
from tests.syntax.strategies import ANY
from tests.tools.running import CLEAN, FAULTY, names, run, write

BOOK = """\
handbook Ostrel Two flight handbook
  aircraft .... Ostrel Two
  engine .... none

include cards.cards

values
  spare .... 5 mm  unverified
"""
CARDS = """\
normal Taxi
  when the engine runs smoothly
  Mixture .... RICH  # ask Bob
  Brakes .... AS REQUIRED
  Brakes .... AS REQUIRED
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, book=BOOK, cards=CARDS)
    return tmp_path


def _brief(capsys: pytest.CaptureFixture[str], *more: str) -> str:
    return run(capsys, "lint", "--as", "brief", *more, ".").out


def test_what_is_found_is_accepted_and_what_is_new_is_shown(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = _brief(capsys).count("\n")
    assert found > 3
    ran = run(capsys, "baseline", "book.cards")
    assert ran.code == 0
    assert ran.out == f"accepted {found} warnings in baseline.txt\n"
    assert _brief(capsys) == ""
    assert run(capsys, "lint", "--strict", ".").code == 0
    assert _brief(capsys, "--no-baseline").count("\n") == found
    write(here, cards=CARDS + "  Trim .... AS REQUIRED\n")
    new = _brief(capsys)
    assert new.count("\n") == 1
    assert "cards.cards:6:" in new


def test_the_file_is_sorted_and_can_be_read(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "baseline", "book.cards")
    text = (here / "baseline.txt").read_text(encoding="utf-8")
    assert text.startswith("# Findings that `dotleader baseline` has accepted")
    assert "\nin values\n  value-never-used: spare .... 5 mm unverified\n" in text
    assert text.splitlines().count("  vague-response: Brakes .... AS REQUIRED") == 2
    assert "\non Taxi\n" in text
    blocks = [block.splitlines() for block in text.split("\n\n")[1:]]
    assert [block[0] for block in blocks] == sorted(block[0] for block in blocks)
    assert all(block[1:] == sorted(block[1:]) for block in blocks)
    run(capsys, "baseline", "book.cards")
    assert (here / "baseline.txt").read_text(encoding="utf-8") == text


def test_it_outlives_lines_that_move_files_that_are_renamed_and_format(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(capsys, "baseline", ".")
    (here / "cards.cards").unlink()
    (here / "book.cards").unlink()
    moved = CARDS.replace("  Mixture", "  # A remark.\n\n  Mixture")
    write(here, handbook="# Invented.\n\n" + BOOK.replace("cards.cards", "normal.cards"), normal=moved)
    run(capsys, "format", ".")
    assert _brief(capsys) == ""


def test_what_no_longer_applies_is_said_and_falls_away(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "baseline", ".")
    write(here, cards=CARDS.replace("  Brakes .... AS REQUIRED\n", "  Brakes .... HELD\n", 1))
    found = _brief(capsys)
    assert found.count("\n") == 1
    assert "baseline.txt:" in found
    assert "warning baseline-unused: `vague-response` is found no more on this line." in found
    full = run(capsys, "lint", ".").out
    assert "vague-response: Brakes .... AS REQUIRED" in full
    ran = run(capsys, "baseline", ".")
    assert "1 entry that no longer applied fell away\n" in ran.out
    assert _brief(capsys) == ""


def test_a_card_that_is_renamed_is_looked_at_anew(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "baseline", ".")
    write(here, cards=CARDS.replace("normal Taxi", "normal Taxiing"))
    found = _brief(capsys)
    assert "vague-response" in found
    assert "baseline-unused" in found


def test_errors_are_never_accepted(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, cards=CARDS + "  Airspeed .... {VX}\n")
    ran = run(capsys, "baseline", ".")
    assert ran.code == 1
    assert "1 error left: errors are never accepted" in ran.out
    found = _brief(capsys)
    assert found.count("\n") == 1
    assert "error unknown-value" in found
    path = here / "baseline.txt"
    path.write_text(path.read_text(encoding="utf-8") + "\non Taxi\n  unknown-value: Airspeed .... {VX}\n")
    found = _brief(capsys)
    assert "error unknown-value" in found
    assert "`unknown-value` is an error, and an error cannot be accepted." in found


def test_an_error_behind_an_accepted_finding_comes_back(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    controls = "equipment\n  Brakes .... OFF, ON\n    also called .... x\n\n"
    write(here, cards=controls + "normal Taxi\n  when the engine runs smoothly\n  Brakes .... AS REQUIRED\n")
    before = _brief(capsys)
    assert "vague-response" in before
    assert "error" not in before
    ran = run(capsys, "baseline", ".")
    assert ran.code == 1
    assert "1 error left" in ran.out
    assert "error unknown-position" in _brief(capsys)
    assert run(capsys, "baseline", ".").out == ran.out


def test_what_a_book_lacks_is_known_by_what_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK.replace("  engine .... none\n", ""))
    run(capsys, "baseline", ".")
    text = (here / "baseline.txt").read_text(encoding="utf-8")
    lacks = [line for line in text.splitlines() if "missing-" in line]
    assert lacks
    assert len(set(lacks)) == len(lacks)


def test_a_part_is_linted_with_what_was_accepted_of_its_handbook(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(capsys, "baseline", "cards.cards")  # the handbook that includes it
    assert run(capsys, "lint", "--as", "brief", "cards.cards").out == ""
    assert _brief(capsys) == ""


def test_handbooks_in_one_folder_share_a_file(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, loose="normal Cruise\n  when level\n  Trim .... AS REQUIRED\n")
    run(capsys, "baseline", "book.cards")
    assert "loose.cards" in _brief(capsys)
    ran = run(capsys, "baseline", "loose.cards")
    assert "stayed" in ran.out
    assert _brief(capsys) == ""
    assert run(capsys, "lint", "--as", "brief", "loose.cards").out == ""  # nothing is said of the other one's entries


def test_nothing_to_accept(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, sub__a=CLEAN)
    assert run(capsys, "baseline", "sub").out == "nothing to accept\n"
    assert names(here / "sub") == ["a.cards"]
    write(here, sub__a=FAULTY)
    ran = run(capsys, "baseline", "sub")
    assert ran.code == 1
    assert names(here / "sub") == ["a.cards"]


@pytest.mark.parametrize(
    "data",
    [
        b"\x00\x01\x02" * 50,
        b"on Taxi\n  Vague: x\n",
        b"Taxi\n  vague-response: x\n",
        b"  vague-response: x\n",
        b"on Taxi\n<<<<<<< here\n  vague-response: x\n",
        b"{}",
        b"on \n",
        "on Taxi\n  vague-response: Öl\n".encode("cp1252"),
        b"\xff\xfe" + "on Taxi\n".encode("utf-16-le"),
    ],
)
def test_a_damaged_file_is_one_sentence(here: Path, capsys: pytest.CaptureFixture[str], data: bytes) -> None:
    (here / "baseline.txt").write_bytes(data)
    for command in ("lint", "baseline"):
        ran = run(capsys, command, ".")
        assert ran.code == 2
        assert ran.err.startswith("dotleader: `baseline.txt` is no list of accepted findings: ")
        assert ran.err.count("\n") == 2
    assert (here / "baseline.txt").read_bytes() == data


def test_a_merge_that_was_not_finished_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (here / "baseline.txt").write_text("on Taxi\n<<<<<<< ours\n  near-name: x\n=======\n>>>>>>> theirs\n")
    assert "line 2 is a mark of a merge; take these out" in run(capsys, "lint", ".").err


def test_an_entry_typed_by_hand_may_be_spaced_otherwise(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (here / "baseline.txt").write_text("on Taxi\n\ttrailing-comment:   Mixture .......... RICH   # ask Bob \n")
    assert "trailing-comment" not in _brief(capsys)


@pytest.mark.skipif(os.name == "nt", reason="there are no named pipes in folders")
def test_a_pipe_in_its_place_is_not_waited_for(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    os.mkfifo(here / "baseline.txt")
    assert run(capsys, "lint", ".").err == "dotleader: `baseline.txt` cannot be read: it is not a plain file.\n"


@pytest.mark.parametrize("data", [b"", b"\n\n", b"# remark\r\n", "\ufeffon Taxi\r\n".encode()])
def test_an_empty_file_accepts_nothing(here: Path, capsys: pytest.CaptureFixture[str], data: bytes) -> None:
    (here / "baseline.txt").write_bytes(data)
    assert _brief(capsys) == _brief(capsys, "--no-baseline")


def test_a_write_protected_file_is_said(
    here: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (here / "baseline.txt").write_text("on Taxi\n  near-name: x\n")
    monkeypatch.setattr("os.access", lambda *_: False)
    ran = run(capsys, "baseline", ".")
    assert ran.code == 2
    assert "`baseline.txt` is write-protected and was left as it is." in ran.err


def test_a_folder_in_its_place(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (here / "baseline.txt").mkdir()
    ran = run(capsys, "lint", ".")
    assert (ran.code, ran.err) == (2, "dotleader: `baseline.txt` cannot be read: it is a folder.\n")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [((), "No handbook was named."), (("-",), "What is found in standard input"), (("x.cards",), "cannot be read")],
)
def test_slips(here: Path, capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], said: str) -> None:
    ran = run(capsys, "baseline", *arguments)
    assert ran.code == 2
    assert said in ran.err


@given(ANY)
@settings(max_examples=150, deadline=None)
def test_whatever_is_found_is_accepted_but_for_errors(text: str) -> None:
    read = resolve(SourceText("a.cards", text), "a.cards", lambda _: "there is no such file")
    handbook, files = read.value
    found = settled([*read.findings, *check(subject_of(handbook))], files, handbook.settings).findings
    weak = [finding for finding in found if BY_NAME[finding.rule].severity is not Severity.ERROR]
    entries = entries_of(SourceText("baseline.txt", accepted(key for _, key in keys_of(weak, files))))
    assert not isinstance(entries, str), entries
    assert len(entries) == len(weak)
    known = Baseline(entries)
    assert [each.finding for each in known.take(found, files)] == weak
    assert not list(known.unused())


WORDS = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), max_size=20).map(
    lambda text: " ".join(text.split())
)
KEYS = st.builds(
    lambda place, name, rule, text: Key(f"{place} {name}".strip(), rule, text),
    st.sampled_from(("on", "in")),
    WORDS.filter(bool),
    st.sampled_from(("near-name", "vague-response")),
    WORDS.filter(bool),
)


@given(st.lists(KEYS, max_size=8))
def test_what_is_written_is_read_again(keys: list[Key]) -> None:
    entries = entries_of(SourceText("baseline.txt", accepted(keys)))
    assert not isinstance(entries, str), entries
    assert [entry.key for entry in entries] == sorted(keys)
    assert all(entry.spot.text == f"{entry.key.rule}: {entry.key.text}" for entry in entries)
