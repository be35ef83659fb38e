"""Suppressions as written, and what each of them covers."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.source.record import record
from dotleader.source.text import SourceText, Span, Spot
from dotleader.syntax.tree import Allow, Blank, Comment, File, Line, Prose

_MEANT = re.compile(r"#\s*[aA]llow\s*(?:$|\S*\s*:|\S*-\S*|\S+$)")
"""A comment that is meant as a suppression: `# allow two minutes for it` is none."""


@record
class Allowance:
    """`# allow RULE: reason` at `spot`; it covers the findings that begin between `start` and `end` of its file."""

    rule: str
    reason: str
    spot: Spot
    start: int
    end: int

    def covers(self, spot: Spot) -> bool:
        return self.start <= spot.start < self.end


def allowances(file: File) -> Iterator[Allowance]:
    """The suppressions of a file, in order.

    One at the end of a line covers that line, one on a line of its own the next line that is neither a comment nor
    blank; either covers the text indented below that line too, but no further item.
    """
    waiting: list[tuple[Allow, int]] = []
    for start, span, end, comment, allow in _lines(file):
        if comment:
            if allow is not None:
                waiting.append((allow, start))
            continue
        for above, its_start in waiting:
            yield _at(file.source, above, its_start, start + span.start, start + end)
        waiting.clear()
        if allow is not None:
            yield _at(file.source, allow, start, start + span.start, start + end)
    for above, its_start in waiting:
        yield _at(file.source, above, its_start, 0, 0)


def meant(allow: Allowance) -> bool:
    """Whether somebody meant a suppression; at the end of a line it is one, for it is not printed with the line."""
    source, at, end = allow.spot
    alone = not source.text[source.text.rfind("\n", 0, at) + 1 : at].strip()
    return not alone or _MEANT.match(source.text[at:end]) is not None


def _at(source: SourceText, allow: Allow, start: int, cover_start: int, cover_end: int) -> Allowance:
    spot = Spot(source, start + allow.span.start, start + allow.span.end)
    return Allowance(allow.rule, allow.reason, spot, cover_start, cover_end)


def _lines(file: File) -> Iterator[tuple[int, Span, int, bool, Allow | None]]:
    """Every line that is not blank: its block's start, its span, the end of what it covers, whether it is a comment."""
    for placed in file.blocks:
        head = placed.block.head
        if head.keyword:
            yield placed.start, head.span, head.span.end, False, head.allow
        for line in _flat(placed.block.lines):
            comment = isinstance(line.body, Comment)
            yield placed.start, line.span, _covered(line), comment, line.allow


def _flat(lines: tuple[Line, ...]) -> Iterator[Line]:
    for line in lines:
        if not isinstance(line.body, Blank):
            yield line
        yield from _flat(line.children)


def _covered(line: Line) -> int:
    """Where the text indented below a line ends."""
    end = line.span.end
    for child in line.children:
        if not isinstance(child.body, Prose | Blank | Comment):
            break
        end = max(end, _covered(child))
    return end
