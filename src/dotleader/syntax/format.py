"""The canonical form of a source: same meaning, and stable on the second pass.

It never changes a word, a number, an order or a unit. Each block is read again after it has been written; should it
ever say something else, it is left as its writer wrote it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.source.record import record
from dotleader.source.text import SourceText
from dotleader.syntax.blocks import RawLine, chunks, raw_lines
from dotleader.syntax.meaning import block_meaning
from dotleader.syntax.parse import parse_block
from dotleader.syntax.tree import Blank, Comment, Parsed
from dotleader.syntax.written import single_blanks, unmended, written


@record
class _Laid:
    """A block as it will stand: `alone` is a head with nothing below it, `gap` says that a blank line followed it."""

    lines: list[str]
    comment: bool
    alone: bool
    gap: bool


def format_text(source: SourceText) -> str:
    """The canonical form of `source`; its kind of line end is that of its first line."""
    laid = [block for block in (_laid(chunk.text) for chunk in chunks(source.text)) if block.lines]
    out: list[str] = []
    for n, block in enumerate(laid):
        if n and not _together(laid, n):
            out.append("")
        out += block.lines
    first = source.text.find("\n")
    end = "\r\n" if first > 0 and source.text[first - 1] == "\r" else "\n"
    return "".join(line + end for line in out)


def _laid(text: str) -> _Laid:
    parsed = parse_block(text)
    raw = list(raw_lines(text))
    block = parsed.block
    return _Laid(
        _canonical(parsed, text, single_blanks(list(_as_written(parsed, raw)))),
        comment=not block.head.keyword and all(isinstance(line.body, Blank | Comment) for line in block.lines),
        alone=bool(block.head.keyword) and all(isinstance(line.body, Blank) for line in block.lines),
        gap=not raw[-1].text,
    )


def _as_written(parsed: Parsed, raw: Sequence[RawLine]) -> Iterator[str]:
    """The lines as they are. Only a head is moved to the left edge, so that it stays one whatever stands above it."""
    head = parsed.block.head
    for line in raw:
        is_head = bool(head.keyword) and line.start == head.span.start
        yield line.text if is_head else line.lead + line.text


def _together(laid: list[_Laid], n: int) -> bool:
    """Whether the block at `n` follows the one before it without a blank line: a comment stands on its block, and
    heads with nothing below them (`include`) may stand in a run."""
    before, here = laid[n - 1], laid[n]
    if before.gap:
        return False
    if before.comment:
        return True
    while here.comment and not here.gap and n + 1 < len(laid):
        n += 1
        here = laid[n]
    return before.alone and (here.alone or here.comment)


def _canonical(parsed: Parsed, text: str, as_is: list[str]) -> list[str]:
    """The canonical lines of a block; as they are, if their canonical form would not say the same."""
    lines = written(parsed, text)
    if lines == as_is or _same(parsed, parse_block("".join(line + "\n" for line in lines))):
        return lines
    return as_is


def _same(one: Parsed, other: Parsed) -> bool:
    return block_meaning(one.block) == block_meaning(other.block) and _said(one) == _said(other)


def _said(parsed: Parsed) -> list[tuple[str, str]]:
    return [(fault.rule, fault.message) for fault in unmended(parsed)]
