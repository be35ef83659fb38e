"""The answer of a lint given again: the same one, only while nothing has changed, and never a damaged one."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from dotleader.tools.caching import cache_folder, world
from tests.tools.running import CLEAN, FAULTY, Ran, command, environment, process, write

BOOK = "handbook A book\n\ninclude part.cards\n\nnormal Taxi\n  when rolling\n  Brakes .... CHECK, HOLD\n"
PART = "normal Climb\n  when climbing\n  Flaps .... UP\n"


@pytest.fixture
def cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder that answers are kept in, not yet there."""
    monkeypatch.delenv("DOTLEADER_NO_CACHE")
    top = tmp_path_factory.mktemp("cache")
    monkeypatch.setenv("XDG_CACHE_HOME", str(top))
    monkeypatch.setenv("LOCALAPPDATA", str(top))
    return top / "dotleader"


def _kept(cache: Path) -> list[str]:
    return sorted(path.name for path in cache.glob("answer-*"))


def _lint(folder: Path, *arguments: str, **more: str) -> Ran:
    return process("lint", "--as", "brief", *(arguments or (".",)), cwd=folder, **more)


def _imported(folder: Path) -> set[str]:
    """The modules that a lint of a folder imports."""
    script = (
        "import sys; from dotleader.__main__ import main; main(['lint', '--as', 'brief', '.'])\n"
        "print(*sys.modules, file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=folder, env=environment(), capture_output=True, text=True, check=True
    )
    return set(done.stderr.splitlines()[-1].split())


@pytest.mark.parametrize("text", [CLEAN, FAULTY])
def test_the_same_answer_is_given_again(cache: Path, tmp_path: Path, text: str) -> None:
    write(tmp_path, a=text)
    first = _lint(tmp_path)
    assert len(_kept(cache)) == 1
    assert _lint(tmp_path) == first
    assert len(_kept(cache)) == 1


def test_an_answer_that_is_kept_costs_no_reading_of_the_language(cache: Path, tmp_path: Path) -> None:
    write(tmp_path, a=CLEAN)
    assert "dotleader.syntax.generated" in _imported(tmp_path)
    again = _imported(tmp_path)
    assert not again & {"dotleader.syntax.generated", "dotleader.handbook.resolve", "argparse", "dataclasses", "lark"}


def _change_a_part(folder: Path) -> None:
    (folder / "part.cards").write_text(PART + "  {VX}\n")


def _take_a_part_away(folder: Path) -> None:
    (folder / "part.cards").unlink()


def _add_a_file(folder: Path) -> None:
    write(folder, more=FAULTY)


def _add_a_folder(folder: Path) -> None:
    write(folder, deeper__more=FAULTY)


def _make_a_link(folder: Path) -> None:
    (folder / "part.cards").rename(folder / "other.cards")
    (folder / "part.cards").symlink_to(folder.parent / "elsewhere.cards")


@pytest.mark.parametrize("change", [_change_a_part, _take_a_part_away, _add_a_file, _add_a_folder, _make_a_link])
def test_what_was_seen_has_to_be_the_same(cache: Path, tmp_path: Path, change: Callable[[Path], None]) -> None:
    write(tmp_path, book=BOOK, part=PART)
    before = _lint(tmp_path)
    change(tmp_path)
    after = _lint(tmp_path)
    assert after != before
    assert _lint(tmp_path, DOTLEADER_NO_CACHE="1") == after


def test_a_file_that_was_missing_and_comes(cache: Path, tmp_path: Path) -> None:
    write(tmp_path, book=BOOK)
    assert "missing-file" in _lint(tmp_path, "book.cards").out
    write(tmp_path, part=PART)
    assert "missing-file" not in _lint(tmp_path, "book.cards").out


@pytest.mark.parametrize(
    "more", [{"NO_COLOR": "1"}, {"FORCE_COLOR": "1"}, {"COLUMNS": "50"}, {"PYTHONIOENCODING": "ascii"}]
)
def test_the_place_that_is_written_to_counts(cache: Path, tmp_path: Path, more: dict[str, str]) -> None:
    write(tmp_path, a="normal Größe\n  when dick\n  Maß .... {VX}\n")
    process("lint", ".", cwd=tmp_path)
    other = process("lint", ".", cwd=tmp_path, **more)
    assert other == process("lint", ".", cwd=tmp_path, DOTLEADER_NO_CACHE="1", **more)


def test_the_options_and_the_folder_count(cache: Path, tmp_path: Path) -> None:
    warned = "normal Taxi\n  Brakes .... CHECK, HOLD\n"
    write(tmp_path, one__a=warned, two__a=warned)
    assert process("lint", "a.cards", cwd=tmp_path / "one").code == 0
    assert process("lint", "--strict", "a.cards", cwd=tmp_path / "one").code == 1
    assert "one" not in process("lint", "a.cards", cwd=tmp_path / "two").out


def test_standard_input_is_never_kept(cache: Path, tmp_path: Path) -> None:
    assert process("lint", "-", stdin=CLEAN.encode(), cwd=tmp_path).code == 0
    assert process("lint", "-", stdin=FAULTY.encode(), cwd=tmp_path).code == 1
    assert not _kept(cache)


def test_what_could_not_be_read_is_not_kept(cache: Path, tmp_path: Path) -> None:
    ran = _lint(tmp_path, "nothing.cards")
    assert (ran.code, _kept(cache)) == (2, [])
    write(tmp_path, nothing=CLEAN)
    assert _lint(tmp_path, "nothing.cards").code == 0


@pytest.mark.parametrize("damage", [b"", b"\0" * 50, None])
def test_a_damaged_answer_is_as_good_as_none(cache: Path, tmp_path: Path, damage: bytes | None) -> None:
    write(tmp_path, a=FAULTY)
    first = _lint(tmp_path)
    (kept,) = cache.glob("answer-*")
    whole = kept.read_bytes()
    kept.write_bytes(whole.replace(b"unknown", b"unknawn") if damage is None else damage)
    assert _lint(tmp_path) == first
    assert kept.read_bytes() == whole


def test_a_cache_that_cannot_be_written_is_not_spoken_of(
    cache: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write(tmp_path, a=FAULTY)
    expected = _lint(tmp_path, DOTLEADER_NO_CACHE="1")
    cache.write_text("a file where the folder should be")
    assert _lint(tmp_path) == expected
    assert _lint(tmp_path, XDG_CACHE_HOME="/proc/nowhere", LOCALAPPDATA="/proc/nowhere") == expected


def test_two_runs_at_once_leave_one_whole_answer(cache: Path, tmp_path: Path) -> None:
    write(tmp_path, a=FAULTY)
    runs = [
        subprocess.Popen(command("lint", "."), cwd=tmp_path, env=environment(), stdout=subprocess.PIPE)
        for _ in range(4)
    ]
    assert len({one.communicate()[0] for one in runs}) == 1
    assert len(_kept(cache)) == 1


def test_the_cache_stays_small(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cache_folder, "MOST_BYTES", 10_000)
    for number in range(30):
        cache_folder.keep("answer", f"{number:032}", b"x" * 1000)
        os.utime(cache / f"answer-{number:032}", (number, number))
    left = _kept(cache)
    assert sum((cache / name).stat().st_size for name in left) <= 10_000
    assert left[-1] == f"answer-{29:032}"
    assert cache_folder.kept("answer", f"{29:032}") == b"x" * 1000
    assert cache_folder.kept("answer", f"{0:032}") is None


def test_what_is_too_large_is_not_kept(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cache_folder, "LARGEST_FILE", 100)
    cache_folder.keep("answer", "a", b"x" * 100)
    assert not _kept(cache)


def test_every_look_can_be_taken_again(tmp_path: Path) -> None:
    write(tmp_path, a=CLEAN)
    world.keep_watch()
    path = str(tmp_path / "a.cards")
    world.read_named(path)
    world.read_plain(str(tmp_path / "absent.cards"))
    world.real(path)
    world.is_folder(path)
    world.is_file(path)
    world.exists(path)
    world.names_in(str(tmp_path))
    world.may_be_read(path)
    with pytest.raises(OSError, match="absent"):
        world.names_in(str(tmp_path / "absent"))
    looks = world.watched()
    assert looks is not None
    assert len(looks) == 9
    assert all(world.same(kind, seen, before) for (kind, seen), before in looks.items())
    (tmp_path / "a.cards").unlink()
    (tmp_path / "absent").mkdir()
    assert sum(world.same(kind, seen, before) for (kind, seen), before in looks.items()) == 3  # absent, real, no folder


def test_what_changes_between_two_looks_is_not_kept(tmp_path: Path) -> None:
    write(tmp_path, a=CLEAN)
    path = str(tmp_path / "a.cards")
    world.keep_watch()
    world.read_named(path)
    world.read_named(path)
    assert world.watched()
    write(tmp_path, a=FAULTY)
    world.read_named(path)
    assert world.watched() is None
