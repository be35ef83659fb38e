"""The parser: every construct of the language, every finding of form, and that nothing makes it fail."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given, settings

from dotleader.source.text import SourceText, Span
from dotleader.syntax.blocks import chunks
from dotleader.syntax.parse import parse, parse_block
from dotleader.syntax.tree import Blank, Item, Line, Prose, Row, Say, Words
from tests.syntax.golden import cases
from tests.syntax.outline import outline
from tests.syntax.strategies import ANY, JUNK, well_formed

TOP = Path(__file__).parents[2]
PARSED = cases("parsed.txt")


@pytest.mark.parametrize(("source", "expected"), [case[1:] for case in PARSED], ids=[case[0] for case in PARSED])
def test_golden(source: str, expected: str) -> None:
    assert outline(source) == expected


@pytest.mark.parametrize("path", sorted((TOP / "examples").rglob("*.cards")), ids=lambda path: path.name)
def test_the_examples_are_well_formed(path: Path) -> None:
    findings = parse(SourceText(path.name, path.read_text(encoding="utf-8"))).findings
    slips = ["dash-for-leader"] if path.name == "with-mistakes.cards" else []
    assert [finding.rule for finding in findings] == slips


def test_the_samples_of_the_reference_are_well_formed() -> None:
    samples = re.findall(r"^```\n(.*?)^```", (TOP / "docs" / "language.md").read_text(encoding="utf-8"), re.S | re.M)
    assert len(samples) >= 5
    for sample in samples:
        assert not parse(SourceText("sample", sample)).findings


@given(well_formed())
@settings(max_examples=200, deadline=None)
def test_well_formed_sources_have_no_finding(text: str) -> None:
    assert not parse(SourceText("a.cards", text)).findings


@given(ANY)
@settings(max_examples=300, deadline=None)
def test_nothing_makes_it_fail_and_every_place_is_real(text: str) -> None:
    source = SourceText("a.cards", text)
    outcome = parse(source)
    for finding in outcome.findings:
        assert 0 <= finding.spot.start <= finding.spot.end <= len(text)
        assert finding.message
        assert finding.help
    assert "".join(chunk.text for chunk in chunks(text)) == text
    at = 0
    for placed in outcome.value.blocks:
        assert placed.start == at
        at += placed.block.size
        assert parse_block(text[placed.start : at]).block == placed.block
        _inside(placed.block.head.span, placed.block.size)
        for line in placed.block.lines:
            _line_inside(line, placed.block.size)


BEFORE = "normal Before\n  A .... B\n    detail\n\n"
AFTER = "values\n  a .... 5,5 kt\n"


@given(JUNK)
@settings(max_examples=200, deadline=None)
def test_a_broken_block_touches_no_other(junk: str) -> None:
    text = f"{BEFORE}normal Broken\n{junk}\n{AFTER}"
    blocks = parse(SourceText("a.cards", text)).value.blocks
    assert blocks[0].block == parse_block(BEFORE).block
    assert blocks[-1].block == parse_block(AFTER).block


BEGINNINGS = (
    *("", "normal ", "gauge x", "normal x\n  ", "normal x\n  A .... ", "normal x\n  1. "),
    *("values\n  ", "values\n  V .... "),
)
UNITS = (
    *(".", " ", "[", "[a] ", "]", " - ", " in in from", " from x", ". ", "…", "1", "1.", " + ", "{", "{}", "-", "("),
    *("1+", "1*", "root of (", " to ", ",", "        ", "a   ", "] [", "\t", "a . ", "#  ", "kt/", "x.. "),
)


# No time is measured here; where a line is read in more than proportional time these do not come to an end.
@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("before", BEGINNINGS)
def test_a_long_line_is_read_in_proportional_time(before: str, unit: str) -> None:
    text = before + unit * (20_000 // len(unit)) + "x"
    assert parse(SourceText("a.cards", text)).value.blocks


def test_a_long_block_of_strange_lines_is_read() -> None:
    text = "normal x\n" + "".join(f"{' ' * (n % 29)}}} {n} – .. [ {{\n" for n in range(5_000))
    assert len(parse(SourceText("a.cards", text)).findings) >= 5_000


def test_deep_arithmetic_is_a_finding() -> None:
    text = "values\n  a .... " + "(" * 5_000 + "1" + ")" * 5_000
    assert [finding.rule for finding in parse(SourceText("a.cards", text)).findings] == ["unreadable-value"]


def _inside(span: Span, size: int) -> None:
    assert 0 <= span.start <= span.end <= size


def _line_inside(line: Line, size: int) -> None:
    _inside(line.span, size)
    for words in _all_words(line):
        assert line.span.start <= words.span.start <= words.span.end <= line.span.end or isinstance(line.body, Blank)
        for ref in words.refs:
            assert words.span.start <= ref.span.start < ref.span.end <= words.span.end
    for child in line.children:
        _line_inside(child, size)


def _all_words(line: Line) -> list[Words]:
    match line.body:
        case Item(challenges, response):
            return [*challenges, *([response] if response is not None else [])]
        case Row(left, right):
            return [left, *([right] if right is not None else [])]
        case Say(_, words):
            return [words] if words is not None else []
        case Prose(words):
            return [words]
        case _:
            return []


def _heads(text: str) -> list[str]:
    file = parse(SourceText("a.cards", text)).value
    return [text[p.start + p.block.head.span.start : p.start + p.block.head.span.end] for p in file.blocks]


@pytest.mark.parametrize(
    ("text", "heads"),
    [
        ("normal A\n  B ... C\n\n  normal D\n  when x\n  E ... F\n", ["normal A", "normal D"]),
        ("normal A\n  B ... C\n\n normal D\n   when x\n   E ... F\n", ["normal A", "normal D"]),
        ("normal A\n    B ... C\n\n    normal D\n        E ... F\n", ["normal A", "normal D"]),
        ("  normal A\n    B ... C\n\n  normal D\n    E ... F\n", ["normal A", "normal D"]),
        ("speeds\n  VX ... 1 kt\n equipment\n  A ... B, C\n", ["speeds", "equipment"]),
        ("equipment\n  A ... B, C\n gauge D in psi from kit\n  red ... 1\n", ["equipment", "gauge D in psi from kit"]),
        # What may be something else stays where it is: deeper lines, prose, items, and a line with nothing behind it.
        ("normal A\n  note Speak\n    normal voice\n  B ... C\n", ["normal A"]),
        ("text A\n  Prose\n  normal as can be\n", ["text A"]),
        ("text A\n  Prose\n normal B\n  C ... D\n", ["text A", "normal B"]),
        ("normal A\n  B ... C\n  normal law .... ON\n", ["normal A"]),
        ("normal A\n  B ... C\n  stock of water\n  text\n", ["normal A"]),
    ],
)
def test_an_indented_line_that_can_only_be_a_head_opens_a_block(text: str, heads: list[str]) -> None:
    """A slip of one space would else take a whole block away, or make every line of it a finding."""
    assert _heads(text) == heads
    indented = [head for head in heads if not re.search(f"^{head}", text, re.MULTILINE)]
    found = parse(SourceText("a.cards", text)).findings
    said = [f.spot.text for f in found if f.message.endswith("opens a block, but is indented.")]
    assert said == indented
