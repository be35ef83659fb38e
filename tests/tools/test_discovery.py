"""What is linted when files and folders are named."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from dotleader.source.decode import decode
from dotleader.syntax.parse import parse
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import Task, find, handbook_at, included_by, is_handbook, sources_in
from dotleader.tools.files import Files
from tests.tools.running import CLEAN as CARD
from tests.tools.running import write


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def found(*paths: str) -> list[Task]:
    tasks, troubles = find(paths, Files())
    assert not troubles
    return tasks


def book(*includes: str) -> str:
    return "handbook A book\n\n" + "".join(f"include {name}\n" for name in includes)


def test_a_folder_gives_its_handbooks_and_what_none_of_them_includes(here: Path) -> None:
    write(here, one__book=book("cards.cards", "more/deep.cards"), one__cards=CARD, one__more__deep=CARD, loose=CARD)
    write(here, two__other=book(), two__extra=CARD)
    assert found(".") == [
        Task("./one/book.cards"),
        Task("./two/other.cards"),
        Task("./loose.cards"),
        Task("./two/extra.cards"),
    ]


def test_includes_of_includes_and_of_loose_files_are_read_there(here: Path) -> None:
    write(here, book=book("a.cards"), a="include b.cards\n" + CARD, b=CARD)
    write(here, c="include sub/d.cards\n" + CARD, sub__d="include e.cards\n", sub__e=CARD)
    assert found(".") == [Task("./book.cards"), Task("./c.cards")]


def test_loose_files_that_include_each_other_are_not_lost(here: Path) -> None:
    write(here, a="include b.cards\n", b="include a.cards\n")
    assert found(".") == [Task("./a.cards"), Task("./b.cards")]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no named pipes here")
def test_a_pipe_in_a_folder_is_not_waited_for(here: Path) -> None:
    write(here, a=CARD)
    os.mkfifo(here / "pipe.cards")
    (here / "lost.cards").symlink_to("nowhere.cards")
    assert sources_in(".") == ["./a.cards", "./lost.cards"]


def test_hidden_and_printed_folders_are_left_out(here: Path) -> None:
    write(here, a=CARD, printed__b=CARD)
    write(here / ".venv", c=CARD)
    (here / ".hidden.cards").write_text(CARD)
    (here / "notes.txt").write_text("x")
    assert sources_in(".") == ["./a.cards"]
    assert sources_in("printed") == ["printed/b.cards"]


def test_links_that_lead_round_end(here: Path) -> None:
    write(here, sub__a=CARD)
    (here / "sub" / "up").symlink_to(here, target_is_directory=True)
    assert sources_in(".") == ["./sub/a.cards"]


def test_the_ending_counts_in_any_case(here: Path) -> None:
    (here / "OLD.CARDS").write_text(CARD)
    assert found(".") == [Task("./OLD.CARDS")]


def test_a_folder_without_sources_is_said(here: Path) -> None:
    tasks, troubles = find(["."], Files())
    assert not tasks
    assert [trouble.message for trouble in troubles] == ["There is no .cards file in `.`."]


def test_what_cannot_be_read_is_said_and_the_rest_is_found(here: Path) -> None:
    write(here, a=CARD)
    (here / "broken.cards").symlink_to("nowhere")
    tasks, troubles = find([".", "missing.cards"], Files())
    assert tasks == [Task("./a.cards")]
    assert [trouble.message for trouble in troubles] == [
        "`broken.cards` cannot be read: there is no such file.",
        "`missing.cards` cannot be read: there is no such file.",
    ]


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="the administrator may read everything")
def test_a_folder_that_may_not_be_read(here: Path) -> None:
    write(here, closed__a=CARD)
    (here / "closed").chmod(0)
    _, troubles = find(["closed"], Files())
    (here / "closed").chmod(0o700)
    assert [trouble.message for trouble in troubles] == ["`closed` cannot be read: permission denied."]


def test_an_included_file_is_read_as_a_part_of_its_handbook(here: Path) -> None:
    write(here, book=book("parts/a.cards"), parts__a=CARD, parts__b=CARD)
    assert found("parts/a.cards") == [Task(str(here / "book.cards"), frozenset({"parts/a.cards"}))]
    assert found("parts/b.cards") == [Task("parts/b.cards")]
    assert found("book.cards") == [Task("book.cards")]


def test_a_handbook_and_a_part_of_it_are_one_task(here: Path) -> None:
    write(here, book=book("a.cards", "b.cards"), a=CARD, b=CARD)
    assert found("a.cards", "book.cards") == [Task(str(here / "book.cards"))]
    assert found("book.cards", "a.cards") == [Task("book.cards")]
    assert found("a.cards", "b.cards") == [Task(str(here / "book.cards"), frozenset({"a.cards", "b.cards"}))]
    assert found("a.cards", "a.cards", ".") == [Task(str(here / "book.cards"))]


def test_the_search_for_a_handbook_ends_at_the_repository(here: Path) -> None:
    write(here, book=book("repo/a.cards"), repo__a=CARD)
    assert found("repo/a.cards")[0].only
    (here / "repo" / ".git").mkdir()
    assert found("repo/a.cards") == [Task("repo/a.cards")]


def test_the_search_for_a_handbook_ends_three_folders_up(here: Path) -> None:
    write(here, book=book("1/2/3/a.cards", "1/2/3/4/b.cards"))
    write(here, **{"1__2__3__a": CARD, "1__2__3__4__b": CARD})
    assert found("1/2/3/a.cards")[0].only
    assert found("1/2/3/4/b.cards") == [Task("1/2/3/4/b.cards")]


def test_one_handbook_of_a_path(here: Path) -> None:
    write(here, one__book=book("a.cards"), one__a=CARD, two__other=book())
    assert handbook_at("one", Files()) == Task("one/book.cards")
    assert handbook_at("one/a.cards", Files()).main == str(here / "one" / "book.cards")
    with pytest.raises(CannotRun) as trouble:
        handbook_at(".", Files())
    assert trouble.value.message == "There is more than one handbook in `.`."
    assert trouble.value.advice == "Name one of them: `one/book.cards`, `two/other.cards`."


@pytest.mark.parametrize(
    "line",
    [
        "include a.cards",
        "include   a.cards   ",
        "include\ta.cards",
        "include\u00a0a.cards",
        "include sub/../a.cards",
        "include ./a.cards\r",
        "include .\\a.cards",
        "include a.cards  # allow missing-file: it comes later",
        " include a.cards",
        "\tinclude a.cards",
        "# include a.cards",
        "include",
        "include ../a.cards",
    ],
)
def test_the_quick_look_at_includes_agrees_with_the_parser(here: Path, line: str) -> None:
    write(here, main=line + "\n", a=CARD)
    (placed,) = parse(decode("main.cards", (line + "\n").encode()).value).value.blocks
    head = placed.block.head
    named = head.keyword == "include" and head.name is not None
    outside = "../a" in line and "sub" not in line
    assert bool(included_by("main.cards", Files())) is (named and not outside)


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("handbook A book\n", True),
        ("# x\n\nhandbook\n", True),
        ("handbooks\n", False),
        (" handbook A\n", True),
        ("text A\n  The\n  handbook of A\n", False),
        (CARD, False),
    ],
)
def test_what_a_handbook_is(text: str, answer: bool) -> None:
    assert is_handbook(text) is answer
