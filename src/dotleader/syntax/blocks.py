"""A file split at its unindented lines, and a block split into lines."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from dotleader.syntax.heads import BLOCK_KEYWORDS, CARD_KINDS, UNNAMED
from dotleader.syntax.lines import LEADER

_FIRST_WORD = re.compile(r"[^\s]+")
_HEADS = (*CARD_KINDS, "handbook ", "include ", "gauge ", "text ", "stock", *UNNAMED)
_HEAD = re.compile(
    rf"(?:{'|'.join(CARD_KINDS)}|handbook|include|text)\s+\S|gauge\s+\S.*\sin\s+\S|stock\s*$"
    rf"|(?:{'|'.join(UNNAMED)})(?:\s+from\s.*)?\s*$"
)
_LEVEL = 2
"""Columns of the first level in canonical form: whatever stands no deeper there is at the first level."""
_BYTE_ORDER_MARK = "\ufeff"
"""Stands at the head of some files, and inside one that was pasted together; it is no part of a line."""


class Chunk(NamedTuple):
    """The text of one block and where it starts in its file."""

    start: int
    text: str


def chunks(text: str) -> Iterator[Chunk]:
    """The blocks of a file, in order and without a gap.

    A block begins at an unindented line, and at an indented one that can only be meant to open a block (a finding
    there). An unindented line with a leader stays with the block above it (a finding there), and so does an unindented
    comment that indented lines follow; other unindented comments are blocks.
    """
    cuts: list[int] = []
    above = _Above()
    comment_at: int | None = None  # start of a run of unindented comments that may still belong to the block above
    offset = 0
    for line in _lines(text):
        shown = line.lstrip(_BYTE_ORDER_MARK)
        if not shown or shown.isspace():
            pass
        elif above.holds(shown):
            comment_at = None
        elif shown[0] == "#":
            if comment_at is None:
                comment_at = offset
        else:
            if comment_at is not None:
                cuts.append(comment_at)
            cuts.append(offset)
            comment_at = None
            above = _Above(shown)
        offset += len(line)
    if comment_at is not None:
        cuts.append(comment_at)
    if not cuts or cuts[0] > 0:
        cuts.insert(0, 0)
    for start, end in zip(cuts, [*cuts[1:], len(text)], strict=True):
        if end > start:
            yield Chunk(start, text[start:end])


class _Above:
    """The block above a line, while a file is split: its head, and how far its first line is indented."""

    def __init__(self, head: str = "") -> None:
        self.opened = bool(head)
        self.prose = head.split(maxsplit=1)[:1] == ["text"]
        self.indent = 0  # 0 where nothing has come yet

    def holds(self, line: str) -> bool:
        """Whether a line that is not blank belongs to it."""
        if not line[0].isspace():
            return self.opened and _stays(line)
        indent = indent_of(line)
        # A head may stand where nothing else is meant; in prose, of which it may be a part, only where that has ended.
        lead = line[: len(line) - len(line.lstrip())]
        level = _LEVEL if lead.count("\t") == 1 else indent  # a tab is one level, whatever stands before it
        ended = indent < self.indent if self.prose else not self.indent or level <= max(self.indent, _LEVEL)
        if ended and is_head(line):
            return False
        if not self.indent and not line.lstrip().startswith("#"):
            self.indent = indent
        return True


def is_head(line: str) -> bool:
    """Whether an indented line has the form of one that opens a block, and of no other."""
    text = line.lstrip()
    return text.startswith(_HEADS) and _HEAD.match(text) is not None and not LEADER.search(text)


def indent_of(line: str) -> int:
    """Columns before the first mark; a tab counts as four."""
    lead = line[: len(line) - len(line.lstrip())]
    return len(lead.expandtabs(4)) if "\t" in lead else len(lead)


def _stays(line: str) -> bool:
    """Whether an unindented line belongs to the block above: it has a leader and opens no block."""
    if line[0] == "#" or not LEADER.search(line):
        return False
    word = _FIRST_WORD.match(line)
    return word is None or word[0] not in BLOCK_KEYWORDS


def _lines(text: str) -> Iterator[str]:
    """Lines ended by a line feed alone or by carriage return and line feed."""
    start = 0
    while start < len(text):
        end = text.find("\n", start)
        end = len(text) if end < 0 else end + 1
        yield text[start:end]
        start = end


class RawLine(NamedTuple):
    """A line of a block: where it starts, how far it is indented and by what, and its text without either end."""

    start: int
    indent: int
    text: str
    lead: str

    @property
    def tabs(self) -> bool:
        return "\t" in self.lead


def raw_lines(chunk: str) -> Iterator[RawLine]:
    """The lines of a block, its head first. `start` is that of the first mark; a tab counts as four columns."""
    offset = 0
    for line in _lines(chunk):
        body = line.rstrip()
        shown = body.lstrip(_BYTE_ORDER_MARK)
        text = shown.lstrip()
        lead = shown[: len(shown) - len(text)]
        yield RawLine(offset + len(body) - len(text), indent_of(shown) if text else len(lead), text, lead)
        offset += len(line)
