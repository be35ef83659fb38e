"""`lint --fix` and `--fix-unsafe`: what is mended, how it is written, and that it comes to an end."""

from __future__ import annotations

import codecs
import os
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.cards import Item
from dotleader.handbook.walking import every_step
from dotleader.source.editing import compatible, edited
from dotleader.source.finding import Edit, Fix
from dotleader.source.text import SourceText, Spot
from dotleader.tools.discovery import Task
from dotleader.tools.files import Files
from dotleader.tools.linting import fixing
from dotleader.tools.linting.fixing import ROUNDS, Fixing
from dotleader.tools.pipeline import lint_handbook
from tests.syntax.strategies import mutated
from tests.tools.running import CLEAN, command, environment, process, run, write

SLIPS = """\
equipment
  Fuel pump .... OFF, ON
    also called .... boost pump

normal Taxi
  when the engine runs smoothly
\tFeul pump .... ON
  Boost pump .... ON
  Note: The brakes are cold.
"""
SAFE = SLIPS.replace("\tFeul", "  Fuel").replace("Note:", "note")
ALL = SAFE.replace("Boost", "Fuel")


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def _text(folder: Path, name: str = "a.cards") -> str:
    return (folder / name).read_bytes().decode()


def test_fix_mends_what_is_safe_and_says_what_is_left(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=SLIPS)
    before = run(capsys, "lint", "a.cards")
    assert before.code == 1
    assert "`dotleader lint --fix` mends 3 of them." in before.out
    assert "`dotleader lint --fix-unsafe` offers an answer to 1 more." in before.out
    ran = run(capsys, "lint", "--fix", "a.cards")
    assert _text(here) == SAFE
    assert ran.code == 0
    assert "3 findings mended in 1 file." in ran.out
    assert "alias-used" in ran.out
    assert "near-name" not in ran.out
    again = run(capsys, "lint", "--fix", "a.cards")
    assert "There is nothing to fix." in again.out
    assert _text(here) == SAFE


def test_unsafe_shows_and_without_anybody_to_ask_changes_nothing(here: Path) -> None:
    write(here, a=SLIPS)
    ran = process("lint", "--fix-unsafe", "a.cards", cwd=here)
    assert ran.code == 2
    assert "-  Boost pump .... ON\n" in ran.out
    assert "+  Fuel pump .... ON\n" in ran.out
    assert (
        ran.err
        == "dotleader: There is nobody to ask, and nothing was changed.\n  Add `--yes` to write what is shown.\n"
    )
    assert _text(here) == SLIPS
    yes = process("lint", "--fix-unsafe", "--yes", "--as", "brief", "a.cards", cwd=here)
    assert yes.code == 0
    assert "+  Fuel pump .... ON\n" in yes.out
    assert _text(here) == ALL


@pytest.mark.skipif(os.name == "nt", reason="there is no pseudo-terminal")
@pytest.mark.parametrize(("answer", "after"), [("yes\n", ALL), ("no\n", SLIPS), ("\n", SLIPS), ("\x04", SLIPS)])
def test_unsafe_asks_on_a_terminal(
    here: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], answer: str, after: str
) -> None:
    import pty  # noqa: PLC0415  # not on every system

    write(here, a=SLIPS)
    main, end = pty.openpty()
    os.write(main, answer.encode())
    with os.fdopen(end, "r") as terminal:
        monkeypatch.setattr(sys, "stdin", terminal)
        monkeypatch.setattr(type(sys.stdout), "isatty", lambda _self: True, raising=False)
        ran = run(capsys, "lint", "--fix-unsafe", "a.cards")
    os.close(main)
    assert "Write this to 1 file? (yes or no)" in ran.out
    assert _text(here) == after
    assert ran.code == (0 if after == ALL else 1)


@pytest.mark.skipif(os.name == "nt", reason="there is no pseudo-terminal")
def test_an_answer_in_another_encoding_is_no(here: Path) -> None:
    import pty  # noqa: PLC0415  # not on every system

    write(here, a=SLIPS)
    main, end = pty.openpty()
    os.write(main, b"\xe9\xff\n")
    done = subprocess.run(
        command("lint", "--fix-unsafe", "a.cards"),
        cwd=here, env=environment(PYTHONIOENCODING="utf-8:strict"), stdin=end, stdout=end, stderr=end, check=False,
    )  # fmt: skip
    os.close(end)
    os.close(main)
    assert done.returncode == 1
    assert _text(here) == SLIPS


def test_one_slip_in_several_places_may_be_in_the_declaration(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    twice = SLIPS.replace("  Boost pump", "  Feul pump")
    write(here, a=twice)
    run(capsys, "lint", "--fix", ".")
    assert _text(here) == twice.replace("\t", "  ").replace("Note:", "note")
    run(capsys, "lint", "--fix-unsafe", "--yes", ".")
    assert "Feul" in _text(here)  # nothing on the cards is written as it is declared: it is said there, and not mended
    used = (
        "normal Cruise\n  when level\n  Fuel pump .... ON\n\nnormal Descent\n  when going down\n  Fuel pump .... OFF\n"
    )
    write(here, a=f"{twice}\n{used}")
    run(capsys, "lint", "--fix", ".")
    assert "Feul" not in _text(here)


def test_programs_get_no_diff(here: Path) -> None:
    write(here, a=SLIPS)
    assert process("lint", "--fix-unsafe", "--as", "json", "a.cards", cwd=here).code == 2
    assert _text(here) == SLIPS
    ran = process("lint", "--fix-unsafe", "--yes", "--as", "json", "a.cards", cwd=here)
    assert (ran.code, ran.out, ran.err) == (0, "[]\n", "")


def test_yes_without_a_question(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=SLIPS)
    ran = run(capsys, "lint", "--yes", "a.cards")
    assert ran.code == 2
    assert "`--yes`" in ran.err


@pytest.mark.parametrize("mark", [b"", codecs.BOM_UTF8])
@pytest.mark.parametrize("line_end", ["\r\n", "\r", "\n"])
def test_line_ends_and_mark_stay(here: Path, capsys: pytest.CaptureFixture[str], mark: bytes, line_end: str) -> None:
    comment = SLIPS + "  Brakes .... HELD  # ask Bob\n"
    (here / "a.cards").write_bytes(mark + comment.replace("\n", line_end).encode())
    assert run(capsys, "lint", "--fix-unsafe", "--yes", "a.cards").code == 0
    wanted = ALL + "  # ask Bob\n  Brakes .... HELD\n"
    assert (here / "a.cards").read_bytes() == mark + wanted.replace("\n", line_end).encode()


def test_what_is_not_utf8_is_left_alone(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    data = SLIPS.replace("cold", "käl").encode("cp1252")
    (here / "a.cards").write_bytes(data)
    assert run(capsys, "lint", "--fix", "a.cards").code == 1
    assert (here / "a.cards").read_bytes() == data


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the administrator may write everything")
def test_a_write_protected_file_is_said(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=SLIPS)
    (here / "a.cards").chmod(0o444)
    ran = run(capsys, "lint", "--fix", "a.cards")
    assert ran.code == 2
    assert "write-protected" in ran.err


def test_a_file_that_cannot_be_written_is_said_and_its_findings_stay(
    here: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    write(here, a=SLIPS, b=SLIPS)
    real = fixing.replace_file

    def refuse(path: str, data: bytes, before: bytes) -> None:
        if path.endswith("a.cards"):
            raise fixing.CannotRun("`a.cards` is write-protected and was left as it is.")
        real(path, data, before)

    monkeypatch.setattr(fixing, "replace_file", refuse)
    ran = run(capsys, "lint", "--fix", "--as", "brief", ".")
    assert ran.code == 2
    assert "write-protected" in ran.err
    assert "a.cards:7:2: warning near-name" in ran.out
    assert "b.cards:7" not in ran.out
    assert (_text(here), _text(here, "b.cards")) == (SLIPS, SAFE)


def test_a_part_is_mended_and_its_handbook_is_left(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book = "handbook Book\n  aircraft .... Ostrel Two\n\ninclude part.cards\n\n" + SLIPS
    part = "normal Cruise\n  when level\n  Fuel pupm .... ON\n"
    write(here, book=book, part=part)
    run(capsys, "lint", "--fix", "part.cards")
    assert _text(here, "book.cards") == book
    assert _text(here, "part.cards") == part.replace("pupm", "pump")
    run(capsys, "lint", "--fix", ".")
    assert "Feul" not in _text(here, "book.cards")


def test_standard_input_comes_out_mended(here: Path) -> None:
    ran = process("lint", "--fix", "-", stdin=SLIPS.replace("\n", "\r\n").encode(), cwd=here)
    assert ran.out == SAFE.replace("\n", "\r\n")
    assert ran.code == 0
    assert ran.err.startswith("dotleader: -:8:3: warning alias-used: ")
    clean = process("lint", "--fix", "-", stdin=CLEAN.encode(), cwd=here)
    assert (clean.code, clean.out, clean.err) == (0, CLEAN, "")
    assert process("lint", "--fix-unsafe", "-", stdin=SLIPS.encode(), cwd=here).code == 2
    assert process("lint", "--fix-unsafe", "--yes", "-", stdin=SLIPS.encode(), cwd=here).out == ALL
    assert process("lint", "--fix", "-", "x.cards", stdin=SLIPS.encode(), cwd=here).code == 2


def test_what_is_allowed_or_accepted_is_not_mended(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = CLEAN + "  Feul pump .... ON  # allow near-name: so it stands on the panel\n"
    write(here, a="equipment\n  Fuel pump .... OFF, ON\n\n" + text)
    run(capsys, "lint", "--fix", "a.cards")
    assert "Feul" in _text(here)


# Planted faults.

PLANTED = (
    "  Feul pump .... ON", "  Boost pump .... ON", "\tMixture .... LEANED", "  Mixtur .... ONN", "  Mixture - RICH",
    "  Airspeed .... VG", "  Airspeed .... {VGG}", "  Note: Look out.", "  Otherwise", "  Trim .... SET  # ask Bob",
    "  go to Taxy", "  phase criuse", "  Brakes: HELD", "  Fuel selector", "      Trim .... SET", "  Trim .... SET",
    "  Trims .... SET", "  Taxi checklist .... COMPLETE", "  Fuel pump .... ON  # allow near-name: because", "  note",
    "  if  the engine stops", "    Fuel pump .... ON", "  memory", "  Fuel pump .... ON then OFF", "Fuel pump .... OFF",
    "  Nav light .... ON", "  Nav  lights .... OFF", " Normal Cruise", "  normal Descent", "normal Taxi", "",
    "speeds", "  VG .... 82 KAIS  from stal tests", "  VR .... 5,5 KIAS", "  VX = 60 KIAS  unverified", "values",
    "sources", "  stall tests .... card 12", "  # allow vage-response: because", "rules", "  near-nam .... off",
    "  open-brace .... off because", "gauge Oil pressure in pis", "  green .... 20 to 50",
)  # fmt: skip
BOOK = """\
sources
  stall tests .... card 12

speeds
  VG .... 82 KIAS  from stall tests

equipment
  Fuel pump .... OFF, ON
    also called .... boost pump
  Mixture .... CUT OFF to RICH
  Nav lights .... OFF, ON

normal Taxi
  when the engine runs smoothly
"""
planted = st.lists(st.sampled_from(PLANTED), max_size=12).map(lambda lines: BOOK + "\n".join(lines) + "\n")


def _rounds(text: str, folder: Path, *, unsafe: bool) -> tuple[str, int]:
    """The text when nothing is left to mend, and how many fixes that took."""
    path = folder / "a.cards"
    path.write_text(text, encoding="utf-8", newline="")
    files = Files()
    mending = Fixing([Task(str(path))], files, unsafe=unsafe, baseline=False)
    mending.mend(mending.look())
    return files.named(str(path)).value.text, mending.count


@given(st.one_of(planted, mutated()), st.booleans())
@settings(max_examples=150, deadline=None)
def test_mending_twice_is_mending_once(tmp_path_factory: pytest.TempPathFactory, text: str, unsafe: bool) -> None:
    folder = tmp_path_factory.getbasetemp()
    text = text.lstrip("\ufeff").replace("\r", "")  # one mark is none of the text
    once, _ = _rounds(text, folder, unsafe=unsafe)
    twice, count = _rounds(once, folder, unsafe=unsafe)
    assert twice == once
    assert count == 0


def _orders(text: str, folder: Path) -> tuple[list[tuple[str, list[str]]], list[str]]:
    """What the pilot is told to do, card by card, and every number that is declared."""
    path = folder / "a.cards"
    path.write_text(text, encoding="utf-8", newline="")
    handbook = lint_handbook(str(path), Files()).handbook
    cards = [
        [step.response.written if step.response else "" for step in every_step(card.steps) if isinstance(step, Item)]
        for card in handbook.cards
    ]
    titles = [card.title for card in handbook.cards]
    return list(zip(titles, cards, strict=True)), [value.shown for value in handbook.values.values()]


@given(st.one_of(planted, mutated()))
@settings(max_examples=100, deadline=None)
def test_what_is_safe_changes_no_response_no_number_and_no_order(
    tmp_path_factory: pytest.TempPathFactory, text: str
) -> None:
    folder = tmp_path_factory.getbasetemp()
    text = text.lstrip("\ufeff").replace("\r", "")
    mended, _ = _rounds(text, folder, unsafe=False)
    assert _orders(mended, folder) == _orders(text, folder)


@given(st.lists(st.tuples(st.integers(0, 30), st.integers(0, 5), st.text("ab\n", max_size=3)), max_size=12), st.data())
def test_fixes_that_are_taken_do_not_touch(places: list[tuple[int, int, str]], data: st.DataObject) -> None:
    source = SourceText("a.cards", data.draw(st.text("xyz\n", min_size=36, max_size=36)))
    fixes = [Fix((Edit(Spot(source, start, start + length), text),), safe=True) for start, length, text in places]
    chosen = [fix.edits[0] for fix in compatible(fixes)]
    spans = sorted((edit.spot.start, edit.spot.end) for edit in chosen)
    assert all(before[1] < after[0] for before, after in pairwise(spans))
    assert not fixes or compatible(fixes)[0] is fixes[0]
    grown = sum(len(edit.text) - len(edit.spot.text) for edit in chosen)
    assert len(edited(source.text, chosen)) >= len(source.text) + grown


def test_ten_rounds_are_the_most() -> None:
    assert ROUNDS == 10
