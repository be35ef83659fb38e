"""Findings that only follow from another: one fault is one finding.

A finding follows from another on the same line, in its neighbourhood (where a slip of indentation has put lines
below the wrong one), in the same block, or in a block that was not understood. One that says that a name is declared
nowhere, or used nowhere, follows from a line or a file that could not be read and may well hold it.
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence

from dotleader.rules.consequences import (
    IN_ONE_BLOCK,
    MISREADING,
    MISSPELT,
    NEAR_BY,
    NOT_READ,
    NOWHERE_DECLARED,
    NOWHERE_USED,
    OF_THE_RUN,
    OF_WHOLE_CARDS,
    ON_ONE_LINE,
    UNREAD,
    WRITTEN_OTHERWISE,
)
from dotleader.rules.rule import Rule
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import SourceText, Spot
from dotleader.syntax.line_faults import one_apart
from dotleader.syntax.lines import LEADER
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Blank, Comment, File, Placed

_BRACED = re.compile(r"\{([^{}]+)\}")
_STANDS = re.compile(r"`([^`]+)` (?:is|stays|stands|does|goes)\b")


def without_follow_ups(findings: Iterable[Finding], files: Sequence[File], rules: Mapping[str, Rule]) -> list[Finding]:
    """The findings that stand by themselves, in the same order."""
    found = list(findings)
    if len(found) < 2:
        return found
    seen = _Seen(found, files, rules)
    return [finding for finding in found if not seen.follows(finding)]


class _Seen:
    """What was found where."""

    def __init__(self, found: list[Finding], files: Sequence[File], rules: Mapping[str, Rule]) -> None:
        self.found, self.rules = found, rules
        self.blocks = {file.source.name: file.blocks for file in files}
        self.starts = {name: [placed.start for placed in blocks] for name, blocks in self.blocks.items()}
        self.firsts = {file.source.name: list(_first_level(file)) for file in files}
        self.on_line: defaultdict[tuple[str, int], set[str]] = defaultdict(set)
        self.near_by: defaultdict[tuple[str, int], set[str]] = defaultdict(set)
        self.in_block: defaultdict[tuple[str, int], set[str]] = defaultdict(set)
        for finding in found:
            spot = finding.spot
            self.on_line[_line(spot)].add(finding.rule)
            self.in_block[_among(self.starts, spot)].add(finding.rule)
            name, number = _among(self.firsts, spot)
            for near in range(number - 1, number + 2):
                self.near_by[name, near].add(finding.rule)
        self.otherwise: defaultdict[tuple[str, int], list[Spot]] = defaultdict(list)
        for finding in found:
            if finding.rule in WRITTEN_OTHERWISE:
                self.otherwise[_line(finding.spot)].append(finding.spot)
        self.unread = not UNREAD.isdisjoint(finding.rule for finding in found)
        self.misspelt = {related.spot for f in found if f.rule in MISSPELT for related in f.related}
        misspelt = [f for f in found if f.rule in MISSPELT or f.rule == "uneven-wording"]
        self.misspelt_names = {folded(s.text) for f in misspelt for s in (f.spot, *(r.spot for r in f.related))}
        self.unasked = {_answer(f.spot.text) for f in found if f.rule == "missing-challenge"} - {""}
        self.sought = {name for f in found if f.rule in NOWHERE_DECLARED for name in _sought(f)}
        errors = (finding for finding in found if rules[finding.rule].severity is Severity.ERROR)
        amiss = [finding for finding in errors if finding.rule not in NOWHERE_DECLARED]
        self.amiss_lines = {_line(f.spot): f.spot.source for f in amiss}
        self.not_read: defaultdict[tuple[str, int], list[str]] = defaultdict(list)
        for finding in found:
            if finding.rule in NOT_READ:
                text = finding.spot.source.line(_line(finding.spot)[1])
                self.not_read[_among(self.firsts, finding.spot)].append(folded(text))
        self.amiss_blocks = {_among(self.starts, f.spot) for f in amiss}
        lost = [folded(_text(file, placed)) for file in files for placed in file.blocks if _is_lost(placed)]
        amiss_texts = [
            folded(text) for line, source in self.amiss_lines.items() for text in _with_below(source, line[1])
        ]
        self.lost_text, self.amiss_text = "\n".join(lost), "\n".join(amiss_texts)  # no name has a line end in it
        readings = {line: _left(line) for text in amiss_texts for line in _readings(text)}
        self.lefts = set(filter(None, readings.values()))
        self.lines = sorted(f"{line} " for line, left in readings.items() if left)

    def follows(self, finding: Finding) -> bool:
        rule, spot = finding.rule, finding.spot
        causes = (
            (ON_ONE_LINE, self.on_line[_line(spot)]),
            (NEAR_BY, self.near_by[_among(self.firsts, spot)]),
            (IN_ONE_BLOCK, self.in_block[_among(self.starts, spot)]),
        )
        if any(rule in effects.get(cause, ()) for effects, seen in causes for cause in seen):
            return True
        if self._in_lost_block(spot) or (rule in OF_WHOLE_CARDS and self._is_cut_off(spot)):
            return True
        if rule == "near-name" and any(self._is_misread(related.spot) for related in finding.related):
            return True
        if rule == "unknown-word":
            return self.unread or self._is_spoken_of(spot)
        if rule in NOWHERE_USED:
            return self.unread or self._may_be_used(spot)
        if rule in NOWHERE_DECLARED:
            return self.unread or self._may_be_declared(finding)
        if rule in OF_THE_RUN:
            return self.unread or self._may_stand_elsewhere(finding)
        return self.unread and self.rules[rule].family == "coverage"

    def _in_lost_block(self, spot: Spot) -> bool:
        """Whether a place is below the head of a block whose keyword is not known."""
        name, number = _among(self.starts, spot)
        if number < 0:
            return False
        placed = self.blocks[name][number]
        return _is_lost(placed) and spot.start > placed.start + placed.block.head.span.start

    def _is_cut_off(self, spot: Spot) -> bool:
        """Whether the block of a place is followed by one that is not known: often its own line, not indented."""
        name, number = _among(self.starts, spot)
        following = self.blocks.get(name, ())[number + 1 : number + 2]
        return any(map(_is_lost, following))

    def _is_misread(self, spot: Spot) -> bool:
        """Whether what stands at a place may be read as something that it is not."""
        return not MISREADING.isdisjoint(self.near_by[_among(self.firsts, spot)])

    def _is_spoken_of(self, spot: Spot) -> bool:
        """Whether a finding says how a word should be written, or a line that could not be read may declare it."""
        word = folded(spot.text)
        if word in self.amiss_text or word in self.lost_text:
            return True
        return any(each.start <= spot.start and spot.end <= each.end for each in self.otherwise[_line(spot)])

    def _may_be_used(self, spot: Spot) -> bool:
        """Whether a declared name stands, perhaps misspelt, where nobody could read it."""
        name = folded(spot.text)
        if spot in self.misspelt or name in self.amiss_text or name in self.lost_text:
            return True
        declared = folded(spot.source.line(_line(spot)[1]))
        if any(answer in declared for answer in self.unasked):
            return True
        count = len(name.split())
        firsts = {" ".join(sought.split()[:count]) for sought in self.sought}
        return name in firsts or any(one_apart(first, name, 2) for first in firsts)

    def _may_stand_elsewhere(self, finding: Finding) -> bool:
        """Whether a control of which is said where it stands is named, perhaps misspelt, where nobody could read it."""
        names = set(map(folded, _STANDS.findall(finding.message)))
        if not self.misspelt_names.isdisjoint(names) or any(self._is_half_declared(r.spot) for r in finding.related):
            return True
        return any(name in self.amiss_text or name in self.lost_text for name in names)

    def _is_half_declared(self, spot: Spot) -> bool:
        """Whether a place belongs to a control of whose properties one could not be read."""
        name, number = _among(self.starts, spot)
        if number < 0 or self.blocks[name][number].block.head.keyword != "equipment":
            return False
        return _among(self.firsts, spot) in self.not_read

    def _may_be_declared(self, finding: Finding) -> bool:
        """Whether a name that is declared nowhere is declared, or what it lacks is, where nobody could read it."""
        for related in finding.related:
            block = _among(self.starts, related.spot)
            gauge = block[1] >= 0 and self.blocks[block[0]][block[1]].block.head.keyword == "gauge"
            if _line(related.spot) in self.amiss_lines or (gauge and block in self.amiss_blocks):
                return True
            lost = self.not_read.get(_among(self.firsts, related.spot), ())
            if any(sought in text for text in lost for sought in _sought(finding)):
                return True
        if finding.rule == "unknown-position" and any(map(self._is_control_amiss, _sought(finding))):
            return True
        return any(sought in self.lost_text or self._is_declared_amiss(sought) for sought in _sought(finding))

    def _is_control_amiss(self, sought: str) -> bool:
        """Whether the control of which a position is sought may be declared amiss, or is told to be misspelt."""
        words = sought.split(" ")
        names = {" ".join(words[:-cut]) for cut in (1, 2)} - {""}
        if not self.misspelt_names.isdisjoint(names):
            return True
        return any(line.startswith(f"{name} ") for name in names for line in self.lines)

    def _is_declared_amiss(self, sought: str) -> bool:
        """Whether a line that could not be read may declare a name: its left part is the name, or the name begins
        with it, or it with the name."""
        words = sought.split(" ")
        if any(" ".join(words[:count]) in self.lefts for count in range(1, len(words) + 1)):
            return True
        at = bisect_left(self.lines, f"{sought} ")
        return at < len(self.lines) and self.lines[at].startswith(f"{sought} ")


def _sought(finding: Finding) -> list[str]:
    """The names that a finding may miss, folded: what stands in braces, or all of it; of a source no detail."""
    text = finding.spot.text
    if finding.rule == "unknown-source":
        text = text.partition(",")[0]
    return [folded(name) for name in _BRACED.findall(text) or [text]]


def _with_below(source: SourceText, number: int) -> Iterator[str]:
    """A line and those that are indented below it."""
    line = source.line(number)
    yield line
    depth = len(line) - len(line.lstrip(" "))
    for below in range(number + 1, len(source.line_starts) + 1):
        line = source.line(below)
        if not line.strip() or len(line) - len(line.lstrip(" ")) <= depth or not depth:
            return
        yield line


def _readings(text: str) -> Iterator[str]:
    """What a line that could not be read may declare: the line, and what follows the keyword of a head."""
    yield text
    yield text.partition(" ")[2].partition(" in ")[0]


def _left(text: str) -> str:
    return LEADER.split(text, maxsplit=1)[0].strip()


def _answer(text: str) -> str:
    """What stands behind the leader of a line without a challenge, without its marks."""
    return folded(LEADER.split(f" {text}", maxsplit=1)[-1].partition("[")[0])


def _line(spot: Spot) -> tuple[str, int]:
    return spot.source.name, spot.source.line_and_column(spot.start)[0]


def _among(starts: Mapping[str, Sequence[int]], spot: Spot) -> tuple[str, int]:
    """File and number of what begins at or before a place; -1 where nothing does."""
    return spot.source.name, bisect_right(starts.get(spot.source.name, ()), spot.start) - 1


def _first_level(file: File) -> Iterator[int]:
    """Where heads and lines of the first level begin, without comments and blank lines."""
    for placed in file.blocks:
        yield placed.start
        for line in placed.block.lines:
            if not isinstance(line.body, Blank | Comment):
                yield placed.start + line.span.start


def _text(file: File, placed: Placed) -> str:
    return file.source.text[placed.start : placed.start + placed.block.size]


def _is_lost(placed: Placed) -> bool:
    return placed.block.head.keyword == "?"
