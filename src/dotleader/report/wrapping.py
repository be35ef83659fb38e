"""Long texts in lines of a given width."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.report.glyphs import escaped, width_of
from dotleader.report.terminal import Terminal

_WORD = re.compile(r"(?:`[^`\n]*`|\S)+")  # what stands in backquotes is kept together


def wrapped(text: str, width: int, terminal: Terminal) -> Iterator[str]:
    """The text in lines of at most `width` columns; a line break in it stays one, with the indentation after it."""
    for paragraph in text.split("\n"):
        lead = paragraph[: len(paragraph) - len(paragraph.lstrip(" "))][: width // 2]
        line = ""
        for word in _WORD.findall(paragraph):
            for part in _fitting(escaped(word, terminal), width - len(lead), terminal):
                longer = f"{line} {part}" if line else lead + part
                if line and width_of(longer, terminal) > width:
                    yield line
                    longer = lead + part
                line = longer
        yield line


def _fitting(word: str, width: int, terminal: Terminal) -> Iterator[str]:
    """The word, or pieces of it where it is longer than a line: cut between its words first, else anywhere."""
    if width_of(word, terminal) <= width:
        yield word
        return
    for part in word.split():
        piece, used = "", 0
        for character in part:
            wide = width_of(character, terminal)
            if used + wide > width:
                yield piece
                piece, used = "", 0
            piece += character
            used += wide
        yield piece
