"""Parsed blocks packed and unpacked: the same block, and nothing where it was no block."""

from __future__ import annotations

import marshal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.source.text import SourceText
from dotleader.syntax import tree
from dotleader.syntax.blocks import chunks
from dotleader.syntax.parse import knowing, parse, parse_block
from dotleader.syntax.stored import RECORDS, packed, unpacked
from dotleader.syntax.tree import Parsed
from tests.syntax.strategies import mutated

TOP = Path(__file__).parents[2]
SOURCES = [*sorted((TOP / "examples").rglob("*.cards")), *sorted((TOP / "tests" / "bad").rglob("*.cards"))]


def _text(path: Path) -> str:
    return path.read_bytes().decode("utf-8", "replace")


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.name)
def test_every_block_comes_back_as_it_was(path: Path) -> None:
    for chunk in chunks(_text(path)):
        parsed = parse_block(chunk.text)
        assert unpacked(marshal.loads(marshal.dumps(packed(parsed)))) == parsed


@given(mutated())
def test_whatever_is_written_comes_back_as_it_was(text: str) -> None:
    for chunk in chunks(text):
        parsed = parse_block(chunk.text)
        assert unpacked(packed(parsed)) == parsed


def test_every_record_of_the_tree_can_be_stored() -> None:
    records = {
        kind
        for kind in vars(tree).values()
        if isinstance(kind, type) and kind.__module__ == tree.__name__ and hasattr(kind, "__match_args__")
    }
    assert records - {tree.Placed, tree.File} == set(RECORDS)  # those two say where a block stands


@given(st.recursive(st.none() | st.integers() | st.text(), lambda inner: st.lists(inner).map(tuple)))
def test_what_is_no_block_gives_none(plain: object) -> None:
    assert unpacked(plain) is None


class _Kept:
    def __init__(self) -> None:
        self.blocks: dict[str, Parsed] = {}
        self.asked: list[str] = []
        self.learnt: list[str] = []

    def known(self, text: str) -> Parsed | None:
        self.asked.append(text)
        return self.blocks.get(text)

    def learn(self, text: str, parsed: Parsed) -> None:
        self.learnt.append(text)
        self.blocks[text] = parsed


def test_only_the_block_that_was_changed_is_parsed_again() -> None:
    one, two = "normal Taxi\n  Brakes .... HELD\n", "normal Climb\n  Flaps .... UP\n"
    kept = _Kept()
    with knowing(kept):
        first = parse(SourceText("a.cards", one + two))
        assert kept.learnt == [one, two]
        second = parse(SourceText("a.cards", one + two.replace("UP", "10 deg")))
        assert kept.learnt == [one, two, two.replace("UP", "10 deg")]
    assert second.value.blocks[0] == first.value.blocks[0]
    parse(SourceText("a.cards", one))
    assert len(kept.asked) == 4  # outside, nobody is asked
