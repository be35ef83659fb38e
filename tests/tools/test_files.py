"""Sources read from files."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from dotleader.source.outcome import Outcome
from dotleader.tools.caching import world
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.files import Files, shown_name
from tests.tools.running import process, write


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "work").mkdir()
    monkeypatch.chdir(tmp_path / "work")
    return tmp_path / "work"


def trouble(path: str) -> str:
    with pytest.raises(CannotRun) as stopped:
        Files().named(path)
    return stopped.value.message


def text(result: Outcome[object] | str) -> str:
    return result if isinstance(result, str) else getattr(result.value, "text", "")


def test_names_are_relative_with_forward_slashes(here: Path) -> None:
    write(here.parent, other__b="x")
    write(here, sub__a="x")
    assert shown_name("./sub//a.cards") == "sub/a.cards"
    assert shown_name(str(here / "sub" / "a.cards")) == "sub/a.cards"
    assert shown_name("../other/b.cards") == "../other/b.cards"
    assert shown_name("-") == "-"
    assert Files().named(str(here / "sub" / "a.cards")).value.name == "sub/a.cards"


def test_a_file_is_read_once(here: Path) -> None:
    write(here, a="x")
    files = Files()
    first = files.named("a.cards").value
    (here / "a.cards").write_text("y")
    assert files.named(str(here / "a.cards")).value is first
    assert text(files.reader("")("a.cards")) == "x"


def test_why_a_file_cannot_be_read(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(here, Normal="x")
    (here / "folder.cards").mkdir()
    assert trouble("a.cards") == "`a.cards` cannot be read: there is no such file."
    assert trouble("Normal.cards/a") == "`Normal.cards/a` cannot be read: there is no such file."
    assert trouble("folder.cards") == "`folder.cards` cannot be read: it is a folder."
    assert trouble("a\0b") == "`a\0b` cannot be read: no file can have this name."
    monkeypatch.setattr(world, "LARGEST", 0)
    assert trouble("Normal.cards") == "`Normal.cards` cannot be read: it is larger than 0 MB, which is not read."


@pytest.mark.skipif(Path("/NORMAL").exists() or os.name == "nt", reason="names differ in case only here")
def test_a_name_that_is_nearly_there_is_offered(here: Path) -> None:
    write(here, Normal="x")
    if (here / "normal.cards").exists():
        pytest.skip("this file system does not tell the cases apart")
    assert trouble("normal.cards") == (
        "`normal.cards` cannot be read: there is no such file, but there is `Normal.cards`."
    )
    assert trouble("NORMAL").endswith("but there is `Normal.cards`.")


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="the administrator may read everything")
def test_a_file_that_may_not_be_read(here: Path) -> None:
    write(here, a="x")
    (here / "a.cards").chmod(0)
    assert trouble("a.cards") == "`a.cards` cannot be read: permission denied."


def test_what_is_included(here: Path) -> None:
    write(here, book__a="A", book__sub__b="B")
    write(here.parent, outside="O")
    read = Files().reader("book")
    assert text(read("a.cards")) == "A"
    assert text(read("sub/b.cards")) == "B"
    assert read("c.cards") == "there is no such file"
    assert read("a\0.cards") == "no file can have this name"
    (here / "book" / "out.cards").symlink_to(here.parent / "outside.cards")
    (here / "book" / "in.cards").symlink_to("a.cards")
    assert read("out.cards") == "it is a link that leads out of the handbook's folder"
    assert text(read("in.cards")) == "A"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no named pipes here")
def test_a_pipe_may_be_named_but_not_included(here: Path) -> None:
    os.mkfifo(here / "pipe.cards")
    assert Files().reader("")("pipe.cards") == "it is not a plain file"


def test_a_handbook_may_lie_behind_a_linked_folder(here: Path) -> None:
    write(here, real__book="handbook A\n\ninclude a.cards\n", real__a="normal Taxi\n  Brakes .... HELD\n")
    (here / "link").symlink_to("real", target_is_directory=True)
    assert text(Files().reader("link")("a.cards")).startswith("normal")


def test_a_name_that_is_not_text_is_escaped(here: Path) -> None:
    name = b"caf\xe9.cards"
    try:
        with open(name, "wb") as file:  # noqa: PTH123  # pathlib takes no bytes
            file.write(b"normal Taxi\n  Brakes .... {VX}\n")
    except OSError:
        pytest.skip("this file system takes no such names")
    ran = process("lint", "--as", "brief", ".", cwd=here)
    assert ran.code == 1
    assert "caf\\udce9.cards:2:" in ran.out
    assert process("lint", "--as", "json", ".", cwd=here).out.isascii()
