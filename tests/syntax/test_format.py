"""The formatter keeps what a source says, and has nothing to do on a second pass."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings

from dotleader.source.finding import Finding
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText
from dotleader.syntax.blocks import chunks
from dotleader.syntax.format import format_text
from dotleader.syntax.meaning import block_meaning, meaning
from dotleader.syntax.parse import parse, parse_block
from dotleader.syntax.plain import plain
from dotleader.syntax.tree import Fault, File
from dotleader.syntax.written import COLUMNS, written
from tests.syntax.golden import cases
from tests.syntax.strategies import ANY, well_formed

TOP = Path(__file__).parents[2]
FORMATTED = cases("formatted.txt")


def formatted(text: str) -> str:
    return format_text(SourceText("a.cards", text))


def parsed(text: str) -> Outcome[File]:
    return parse(SourceText("a.cards", text))


def said(findings: Sequence[Finding | Fault]) -> list[tuple[str, str]]:
    """Tabs in the indentation and indented heads are mended by formatting; nothing else is."""
    return [
        (finding.rule, finding.message)
        for finding in findings
        if finding.rule != "tab-indentation" and not finding.message.endswith("opens a block, but is indented.")
    ]


@pytest.mark.parametrize(("source", "expected"), [case[1:] for case in FORMATTED], ids=[case[0] for case in FORMATTED])
def test_golden(source: str, expected: str) -> None:
    end = "\r\n" if "\r\n" in source else "\n"
    assert formatted(source).removesuffix(end) == expected.removesuffix("\r")


@pytest.mark.parametrize("source", [case[1] for case in FORMATTED], ids=[case[0] for case in FORMATTED])
def test_golden_is_stable(source: str) -> None:
    assert formatted(formatted(source)) == formatted(source)


@pytest.mark.parametrize("path", sorted((TOP / "examples").rglob("*.cards")), ids=lambda path: path.name)
def test_the_examples_keep_their_meaning(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert meaning(parsed(formatted(text)).value) == meaning(parsed(text).value)
    assert formatted(formatted(text)) == formatted(text)


def test_the_sample_of_the_reference_is_in_canonical_form() -> None:
    page = (TOP / "docs" / "language.md").read_text(encoding="utf-8")
    sample = page.split("```\n")[1]
    assert formatted(sample) == sample


@given(ANY)
@settings(max_examples=400, deadline=None)
def test_the_promise(text: str) -> None:
    """Same meaning, same findings, nothing to do on a second pass, and a form that holds for every file."""
    once = formatted(text)
    before, after = parsed(text), parsed(once)
    assert meaning(after.value) == meaning(before.value)
    assert said(after.findings) == said(before.findings)
    assert formatted(once) == once
    _has_form(text, once)
    _needs_no_net(text)


def _has_form(text: str, once: str) -> None:
    first = text.find("\n")
    end = "\r\n" if first > 0 and text[first - 1] == "\r" else "\n"
    if not once:
        assert not re.sub("[\\s\\ufeff]", "", text)
        return
    lines = once.split(end)
    assert lines[-1] == ""
    assert lines[0]
    assert lines[-2]
    assert all(line == line.rstrip() for line in lines)
    assert not any(not one and not two for one, two in pairwise(lines))
    assert not once.startswith("\ufeff")


def _needs_no_net(text: str) -> None:
    """`format_text` keeps a block that would say something else once written; that it never comes to it shows that
    the net is not what holds the promise."""
    for chunk in chunks(text):
        before = parse_block(chunk.text)
        after = parse_block("".join(line + "\n" for line in written(before, chunk.text)))
        assert block_meaning(after.block) == block_meaning(before.block)
        assert said(after.faults) == said(before.faults)


@given(well_formed())
@settings(max_examples=200, deadline=None)
def test_well_formed_sources(text: str) -> None:
    """Beside spaces, leaders and bullets everything is there, in its order; and right parts stand in columns."""
    once = formatted(text)
    assert _essence(once) == _essence(text)
    if "amplified" in once:  # in which a line that repeats no item keeps its dots
        return
    for line in once.split("\n"):
        leader = re.match(r" +(?:Fuel pump|Flaps|Mixture|A) (\.{4,}) ", line)
        assert leader is None or leader.end() in COLUMNS


def _essence(text: str) -> str:
    lines = (re.sub(r"^\s*(?:(?:\d{1,3}[.)]|[-•])\s+)+", "", line) for line in plain(text).split("\n"))
    return re.sub(r"[\s.…\ufeff]", "", "".join(lines))
