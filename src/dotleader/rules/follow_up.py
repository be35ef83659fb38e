"""Findings that only follow from another: one fault is one finding.

A finding follows from another on the same line (`ON_ONE_LINE`) or from a block that was not understood. One that
says that something is nowhere follows from a line or a file that could not be read and may well hold it, and from
a misspelling of it.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from dotleader.rules.rule import Rule
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import File

ON_ONE_LINE: dict[str, frozenset[str]] = {
    "tab-indentation": frozenset({"uneven-indentation"}),
    "open-brace": frozenset({"unknown-value"}),
}
"""By rule: what follows from its findings on the same line."""

UNREAD = frozenset({"missing-file", "include-outside", "include-circle", "not-utf8"})
"""After these a part of the handbook is not at hand."""

NOWHERE = frozenset({"value-never-used", "control-on-no-card", "gauge-on-no-card"})
"""These mark a name that is declared and stands nowhere else."""


def without_follow_ups(findings: Iterable[Finding], files: Sequence[File], rules: Mapping[str, Rule]) -> list[Finding]:
    """The findings that stand by themselves, in the same order."""
    found = list(findings)
    on_line: dict[tuple[str, int], set[str]] = defaultdict(set)
    for finding in found:
        on_line[_line(finding)].add(finding.rule)
    lost = _lost_blocks(files)
    unread = any(finding.rule in UNREAD for finding in found)
    broken = _broken_texts(found, files, lost, rules)
    misspelt = {related.spot for finding in found if finding.rule == "near-name" for related in finding.related}

    def follows(finding: Finding) -> bool:
        spot = finding.spot
        if any(start < spot.start < end for start, end in lost.get(spot.source.name, ())):
            return True
        if any(finding.rule in ON_ONE_LINE.get(cause, ()) for cause in on_line[_line(finding)]):
            return True
        if finding.rule in NOWHERE:
            return unread or spot in misspelt or any(folded(spot.text) in text for text in broken)
        return unread and rules[finding.rule].family == "coverage"

    return [finding for finding in found if not follows(finding)]


def _line(finding: Finding) -> tuple[str, int]:
    source = finding.spot.source
    return source.name, source.line_and_column(finding.spot.start)[0]


def _lost_blocks(files: Sequence[File]) -> dict[str, list[tuple[int, int]]]:
    """By file: where blocks begin and end whose keyword is not known, and of which nothing more is said."""
    lost: dict[str, list[tuple[int, int]]] = {}
    for file in files:
        for placed in file.blocks:
            if placed.block.head.keyword == "?":
                start = placed.start + placed.block.head.span.start
                lost.setdefault(file.source.name, []).append((start, placed.start + placed.block.size))
    return lost


def _broken_texts(
    found: list[Finding],
    files: Sequence[File],
    lost: dict[str, list[tuple[int, int]]],
    rules: Mapping[str, Rule],
) -> list[str]:
    """What stands, folded, on lines with an error and in blocks that were not understood."""
    lines = {_line(f): f.spot.source for f in found if rules[f.rule].severity is Severity.ERROR}
    texts = [folded(source.line(number)) for (_, number), source in lines.items()]
    for file in files:
        texts += [folded(file.source.text[start:end]) for start, end in lost.get(file.source.name, ())]
    return texts
