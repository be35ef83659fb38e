"""What of an old book has been accepted: findings known by their content, and the text that they are kept as.

An entry is one finding: the card (or the block) that it is in, its rule, and the lines that it marks as they are
written, spaces and leaders folded. So an entry outlives lines that move, files that are renamed and `dotleader
format`, and ends when the line, its card or the rule's opinion changes. What a book lacks has no line of its own: it
is known by what is said of it. Several findings that are alike are as many entries.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from dotleader.rules.catalogue import BY_NAME
from dotleader.rules.suppressions import baseline_unused
from dotleader.source.finding import Finding, Severity
from dotleader.source.suppression import Held, Suppressed
from dotleader.source.text import SourceText, Spot
from dotleader.syntax.heads import CARD_KINDS
from dotleader.syntax.lines import LEADER
from dotleader.syntax.tree import Block, File

NAME = "baseline.txt"
"""The file beside the handbook."""
HEAD = """\
# Findings that `dotleader baseline` has accepted; `dotleader lint` shows them no more.
# Below the card (on) or the block (in): the rule, and the line as it is written. Errors are never accepted.
# Take out what has been mended, or run `dotleader baseline` again.
"""
_BY = f"accepted in {NAME}"
_WHERE = re.compile(r"(?:on|in) \S.*")
_ENTRY = re.compile(r"\s+(?P<entry>(?P<rule>[a-z][a-z0-9-]*):\s+(?P<text>\S.*?))\s*")
_CONFLICT = re.compile(r"<{7}|\|{7}|={7}|>{7}")


class Key(NamedTuple):
    where: str
    rule: str
    text: str


class Entry(NamedTuple):
    """One line of the file; `spot` is its place there."""

    key: Key
    spot: Spot


def keys_of(findings: Iterable[Finding], files: Sequence[File]) -> Iterator[tuple[Finding, Key]]:
    """Each finding with what it is known by. `files` are the trees of its handbook."""
    blocks = {file.source.name: file.blocks for file in files}
    starts = {name: [placed.start for placed in placed_blocks] for name, placed_blocks in blocks.items()}
    for finding in findings:
        name, start = finding.spot.source.name, finding.spot.start
        number = bisect_right(starts.get(name, ()), start) - 1
        where = _where(blocks[name][number].block) if number >= 0 else "in the file"
        lacking = finding.rank > 0
        yield finding, Key(where, finding.rule, _one_line(finding.message) if lacking else _lines(finding.spot))


def with_ordinals(keyed: Iterable[tuple[Finding, Key]]) -> Iterator[tuple[Finding, Key, int]]:
    """The same, those that are alike numbered from 1."""
    seen: Counter[Key] = Counter()
    for finding, key in keyed:
        seen[key] += 1
        yield finding, key, seen[key]


def _where(block: Block) -> str:
    head = block.head
    name = _one_line(head.name.text) if head.name is not None else ""
    if head.keyword in CARD_KINDS and name:
        return f"on {name}"
    if not head.keyword or head.keyword == "?":
        return "in the file"
    return f"in {head.keyword}" if not name or head.keyword == "handbook" else f"in {head.keyword} {name}"


def _lines(spot: Spot) -> str:
    """The whole lines of a place in one; the file's name where it is empty."""
    text = spot.source.text
    start = text.rfind("\n", 0, spot.start) + 1
    end = text.find("\n", max(spot.end - 1, spot.start))
    lines = (text[start:] if end < 0 else text[start:end]).split("\n")
    return " / ".join(filter(None, map(_one_line, lines))) or "(empty)"


def _one_line(text: str) -> str:
    return " ".join(LEADER.sub(" .... ", text).split())


def accepted(keys: Iterable[Key]) -> str:
    """The text of the file: sorted, an entry to a line."""
    out = [HEAD]
    above = ""
    for key in sorted(keys):
        if key.where != above:
            out.append(f"\n{key.where}\n")
            above = key.where
        out.append(f"  {key.rule}: {key.text}\n")
    return "".join(out)


def entries_of(source: SourceText) -> list[Entry] | str:
    """The entries of a file, or in words why it is none."""
    entries: list[Entry] = []
    where = ""
    for number, start in enumerate(source.line_starts, 1):
        line = source.line(number)
        found = _ENTRY.fullmatch(line)
        if not line.strip() or line.startswith("#"):
            continue
        if found and where:
            place = Spot(source, start + found.start("entry"), start + found.end("entry"))
            entries.append(Entry(Key(where, found["rule"], _one_line(found["text"])), place))
        elif _WHERE.fullmatch(line.rstrip()):
            where = line.rstrip()
        elif _CONFLICT.match(line):
            return f"line {number} is a mark of a merge; take these out, and let the entries of both sides stay"
        else:
            return f"line {number} is neither `on` a card, `in` a block, nor an indented `rule: line`"
    return entries


class Baseline:
    """The entries of one file while the handbooks beside it are linted; each accepts one finding."""

    def __init__(self, entries: Sequence[Entry]) -> None:
        self.entries = entries
        self.left = Counter(entry.key for entry in entries)

    def take(self, findings: Sequence[Finding], files: Sequence[File]) -> list[Suppressed]:
        """Those of the findings that were accepted."""
        taken: list[Suppressed] = []
        for finding, key in keys_of(findings, files):
            if self.left[key] > 0 and BY_NAME[finding.rule].severity is not Severity.ERROR:
                self.left[key] -= 1
                taken.append(Suppressed(finding, Held.BASELINE, _BY))
        return taken

    def unused(self) -> Iterator[Finding]:
        """What no longer applies, when all handbooks beside the file have been linted; of those alike the last."""
        left = Counter(self.left)
        for entry in reversed(self.entries):
            if left[entry.key] > 0:
                left[entry.key] -= 1
                rule = BY_NAME.get(entry.key.rule)
                is_error = rule is not None and rule.severity is Severity.ERROR
                yield baseline_unused.finding(entry.spot, entry.key.rule, is_error=is_error)
