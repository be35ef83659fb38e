"""Findings that only follow from another: one fault is one finding.

A finding follows from another on the same line (`ON_ONE_LINE`) or in the same block (`IN_ONE_BLOCK`), or from a
block that was not understood. One that says that something is nowhere follows from a line or a file that could not
be read and may well hold it, and from a misspelling of it.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from dotleader.rules.rule import Rule
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import File, Placed

ON_ONE_LINE: dict[str, frozenset[str]] = {
    "tab-indentation": frozenset({"uneven-indentation"}),
    "open-brace": frozenset({"unknown-value"}),
}
"""By rule: what follows from its findings on the same line."""

_HEAD_LINES = frozenset({"no-phase", "no-trigger", "no-ending"})

IN_ONE_BLOCK: dict[str, frozenset[str]] = {
    "unknown-keyword": _HEAD_LINES,
    "missing-response": frozenset({"no-trigger"}),
    "unknown-phase": frozenset({"no-phase"}),
    "unnamed-block": frozenset({"no-phase"}),
}
"""By rule: what follows from its findings in the same block, because a line of it could not be read."""

UNREAD = frozenset({"missing-file", "include-outside", "include-circle", "not-text"})
"""After these a part of the handbook is not at hand."""

NOWHERE = frozenset({"value-never-used", "control-on-no-card", "gauge-on-no-card"})
"""These mark a name that is declared and stands nowhere else."""


def without_follow_ups(findings: Iterable[Finding], files: Sequence[File], rules: Mapping[str, Rule]) -> list[Finding]:
    """The findings that stand by themselves, in the same order."""
    seen = _Seen(list(findings), files, rules)
    return [finding for finding in seen.found if not seen.follows(finding)]


class _Seen:
    """What was found where."""

    def __init__(self, found: list[Finding], files: Sequence[File], rules: Mapping[str, Rule]) -> None:
        self.found, self.rules = found, rules
        self.blocks = {file.source.name: file.blocks for file in files}
        self.starts = {name: [placed.start for placed in blocks] for name, blocks in self.blocks.items()}
        self.on_line: defaultdict[tuple[str, int], set[str]] = defaultdict(set)
        self.in_block: defaultdict[tuple[str, int], set[str]] = defaultdict(set)
        for finding in found:
            self.on_line[_line(finding)].add(finding.rule)
            self.in_block[self._block(finding)].add(finding.rule)
        self.unread = not UNREAD.isdisjoint(finding.rule for finding in found)
        self.misspelt = {related.spot for f in found if f.rule == "near-name" for related in f.related}
        self.broken = self._broken(files)

    def follows(self, finding: Finding) -> bool:
        rule, spot = finding.rule, finding.spot
        if self._in_lost_block(finding):
            return True
        if any(rule in ON_ONE_LINE.get(cause, ()) for cause in self.on_line[_line(finding)]):
            return True
        if any(rule in IN_ONE_BLOCK.get(cause, ()) for cause in self.in_block[self._block(finding)]):
            return True
        if rule in NOWHERE:
            return self.unread or spot in self.misspelt or any(folded(spot.text) in text for text in self.broken)
        return self.unread and self.rules[rule].family == "coverage"

    def _block(self, finding: Finding) -> tuple[str, int]:
        """The file and the number of the block that a finding stands in."""
        name = finding.spot.source.name
        return name, bisect_right(self.starts.get(name, ()), finding.spot.start) - 1

    def _in_lost_block(self, finding: Finding) -> bool:
        """Whether a finding stands below the head of a block whose keyword is not known."""
        name, number = self._block(finding)
        if number < 0:
            return False
        placed = self.blocks[name][number]
        return _is_lost(placed) and finding.spot.start > placed.start + placed.block.head.span.start

    def _broken(self, files: Sequence[File]) -> list[str]:
        """What stands, folded, on lines with an error and in blocks that were not understood."""
        lines = {_line(f): f.spot.source for f in self.found if self.rules[f.rule].severity is Severity.ERROR}
        texts = [source.line(number) for (_, number), source in lines.items()]
        texts += [
            file.source.text[placed.start : placed.start + placed.block.size]
            for file in files
            for placed in file.blocks
            if _is_lost(placed)
        ]
        return [folded(text) for text in texts]


def _line(finding: Finding) -> tuple[str, int]:
    source = finding.spot.source
    return source.name, source.line_and_column(finding.spot.start)[0]


def _is_lost(placed: Placed) -> bool:
    return placed.block.head.keyword == "?"
