"""A file split at its unindented lines, and a block split into lines."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from dotleader.syntax.heads import BLOCK_KEYWORDS
from dotleader.syntax.lines import LEADER

_FIRST_WORD = re.compile(r"[^\s]+")
_BYTE_ORDER_MARK = "\ufeff"
"""Stands at the head of some files, and inside one that was pasted together; it is no part of a line."""


class Chunk(NamedTuple):
    """The text of one block and where it starts in its file."""

    start: int
    text: str


def chunks(text: str) -> Iterator[Chunk]:
    """The blocks of a file, in order and without a gap.

    A block begins at an unindented line. An unindented line with a leader stays with the block above it (a finding
    there), and so does an unindented comment that indented lines follow; other unindented comments are blocks.
    """
    cuts: list[int] = []
    opened = False
    comment_at: int | None = None  # start of a run of unindented comments that may still belong to the block above
    offset = 0
    for line in _lines(text):
        shown = line.lstrip(_BYTE_ORDER_MARK)
        if not shown or shown.isspace():
            pass
        elif shown[0].isspace() or (opened and _stays(shown)):
            comment_at = None
        elif shown[0] == "#":
            if comment_at is None:
                comment_at = offset
        else:
            if comment_at is not None:
                cuts.append(comment_at)
            cuts.append(offset)
            comment_at = None
            opened = True
        offset += len(line)
    if comment_at is not None:
        cuts.append(comment_at)
    if not cuts or cuts[0] > 0:
        cuts.insert(0, 0)
    for start, end in zip(cuts, [*cuts[1:], len(text)], strict=True):
        if end > start:
            yield Chunk(start, text[start:end])


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
        indent = len(lead.expandtabs(4)) if "\t" in lead else len(lead)
        yield RawLine(offset + len(body) - len(text), indent, text, lead)
        offset += len(line)
