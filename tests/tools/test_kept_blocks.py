"""Blocks kept between two lints: of a changed handbook only what was changed is parsed, and the answer is the same."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from dotleader.syntax.parse import parse_block
from dotleader.tools.caching import kept_blocks
from tests.tools.running import environment, process, write

CARD = "normal {title}\n  when {title} comes\n  Brakes .... {response}\n"
SCRIPT = """
import sys
from dotleader.syntax import parse
parsed = []
before = parse._parsed
parse._parsed = lambda text: (parsed.append(text), before(text))[1]
from dotleader.__main__ import main
main(["lint", "--as", "brief", "."])
print(len(parsed), "dotleader.syntax.generated" in sys.modules, file=sys.stderr)
"""


@pytest.fixture
def book(tmp_path: Path, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a handbook of a few cards; blocks are kept in a folder of the test's own."""
    monkeypatch.delenv("DOTLEADER_NO_CACHE")
    top = str(tmp_path_factory.mktemp("cache"))
    monkeypatch.setenv("XDG_CACHE_HOME", top)
    monkeypatch.setenv("LOCALAPPDATA", top)
    cards = "\n".join(CARD.format(title=title, response="CHECK, HOLD") for title in ("Taxi", "Climb", "Cruise"))
    write(tmp_path, book=f"handbook A book\n\nstock A5\n\n{cards}")
    return tmp_path


def _parsed(folder: Path) -> tuple[int, bool]:
    """How many blocks a lint parses, and whether it needs the parser."""
    done = subprocess.run(
        [sys.executable, "-c", SCRIPT], cwd=folder, env=environment(), capture_output=True, text=True, check=True
    )
    count, needed = done.stderr.splitlines()[-1].split()
    return int(count), needed == "True"


def _change(folder: Path, old: str, new: str) -> None:
    path = folder / "book.cards"
    path.write_text(path.read_text().replace(old, new))


def test_only_the_changed_card_is_parsed(book: Path) -> None:
    first, needed = _parsed(book)
    assert first >= 5
    assert needed
    _change(book, "when Climb comes", "when climbing")
    assert _parsed(book) == (1, True)


def test_where_nothing_has_to_be_parsed_the_parser_is_not_imported(book: Path) -> None:
    _parsed(book)
    (book / "notes.txt").write_text("a file that changes the folder")
    assert _parsed(book) == (0, False)


@pytest.mark.parametrize("damage", [b"", b"x" * 200, None])
def test_blocks_that_are_damaged_are_parsed_again(book: Path, tmp_path: Path, damage: bytes | None) -> None:
    _parsed(book)
    folder = Path(os.environ["XDG_CACHE_HOME"]) / "dotleader"
    (kept,) = folder.glob("blocks-*")
    whole = kept.read_bytes()
    kept.write_bytes(whole[:40] + bytes([whole[40] ^ 1]) + whole[41:] if damage is None else damage)
    _change(book, "when Climb comes", "when climbing")
    assert _parsed(book)[0] >= 5


def test_the_answer_is_that_of_a_lint_that_knows_nothing(book: Path) -> None:
    process("lint", ".", cwd=book)
    for old, new in (
        ("CHECK, HOLD", "CHECKED"),
        ("normal Climb", "\n\n# a comment\nnormal Climb"),
        ("Brakes", "Brkes"),
    ):
        _change(book, old, new)
        assert process("lint", ".", cwd=book) == process("lint", ".", cwd=book, DOTLEADER_NO_CACHE="1")


@pytest.mark.parametrize(("cards", "held"), [(2, 2), (3, 0)])
def test_a_book_that_is_too_long_is_neither_kept_nor_held(
    book: Path, monkeypatch: pytest.MonkeyPatch, cards: int, held: int
) -> None:
    texts = [CARD.format(title=title, response="HOLD") for title in ("Taxi", "Roll", "Turn")[:cards]]
    monkeypatch.setattr(kept_blocks, "_MOST_TEXT", 2 * len(texts[0]))
    kept = kept_blocks.KeptBlocks(str(book / "book.cards"))
    for text in texts:
        assert kept.known(text) is None
        kept.learn(text, parse_block(text))
    assert len(kept._now) == held
    kept.keep()
    again = kept_blocks.KeptBlocks(str(book / "book.cards"))
    assert [again.known(text) for text in texts] == [parse_block(text) if held else None for text in texts]
