"""One block in canonical form: two spaces a level, and one column for all that stands behind a leader.

What is prose keeps its words and spaces, what is not understood keeps everything but its indentation, and where the
indentation itself is in doubt that is kept too: which line belongs to which is for the writer to say.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from dotleader.source.record import record
from dotleader.syntax.places import PROSE_PLACES, PROSE_PROPERTIES, RAW_PLACES, Place, place_below, place_of_block
from dotleader.syntax.plain import folded, plain
from dotleader.syntax.tree import (
    Allow,
    Blank,
    Block,
    Broken,
    Comment,
    Fault,
    Head,
    Item,
    Line,
    Parsed,
    Prose,
    Row,
    Say,
    Words,
)

STEP = 2
"""Spaces for each level of indentation."""
COLUMNS = (26, 30, 34)
"""Where the right parts of a block may begin: the first that leaves every left part four dots. In steps, so that one
longer line does not move a whole block; a left part too long for the last keeps four dots and a column of its own."""
DOTS = 4
SOURCE_AFTER = 33
"""Columns from the right parts to the sources behind them."""

_IN_DOUBT = frozenset({"uneven-indentation", "notice-below-item", "nested-too-deep"})


@record
class _Shown:
    """A line to be written: `right` stands behind a leader, `source` in a column of its own, `tail` at the end."""

    indent: str
    left: str
    right: str = ""
    source: str = ""
    tail: str = ""


def written(parsed: Parsed, text: str) -> list[str]:
    """The lines of a block, its head first, without line ends; runs of blank lines are one, at the end none."""
    writer = _Writer(parsed, text)
    head = parsed.block.head
    shown = [] if not head.keyword else [writer.head(head)]
    place = place_of_block(head.keyword)
    shown += writer.lines(parsed.block.lines, place, 1, "" if place in RAW_PLACES else None)
    column = _column(shown)
    return single_blanks([_line(each, column) for each in shown])


def unmended(parsed: Parsed) -> list[Fault]:
    """What writing the block anew does not mend, as it mends a tab in the indentation and the indentation of a head."""
    head = parsed.block.head.span.start
    return [
        fault
        for fault in parsed.faults
        if fault.rule != "tab-indentation" and (fault.rule != "uneven-indentation" or fault.span.start != head)
    ]


def single_blanks(lines: Sequence[str]) -> list[str]:
    """Without empty lines at either end, and with one at most in turn."""
    out: list[str] = []
    for line in lines:
        if line or (out and out[-1]):
            out.append(line)
    return out[:-1] if out and not out[-1] else out


def _column(shown: Sequence[_Shown]) -> int:
    needed = [len(each.indent) + len(each.left) + DOTS + 2 for each in shown if each.right]
    widest = max((width for width in needed if width <= COLUMNS[-1]), default=0)
    return next(column for column in COLUMNS if column >= widest)


def _line(each: _Shown, column: int) -> str:
    line = each.indent + each.left
    if each.right:
        line += " " + "." * max(DOTS, column - len(line) - 2) + " " + each.right
    if each.source:
        line = line.ljust(column + SOURCE_AFTER - 1) if len(line) < column + SOURCE_AFTER else line + " "
        line += " " + each.source
    return line + each.tail


class _Writer:
    """What is known of the block while its lines are written."""

    def __init__(self, parsed: Parsed, text: str) -> None:
        self.text = text
        faults = unmended(parsed)
        self.faulty = {self.line_start(fault.span.start) for fault in faults}
        head = parsed.block.head
        self.in_doubt = (
            head.keyword in ("", "?")
            or any(fault.rule in _IN_DOUBT for fault in faults)
            or not self.even(parsed.block.lines, place_of_block(head.keyword), 0)
        )
        self.challenges = _challenges(parsed.block)

    def line_start(self, at: int) -> int:
        return self.text.rfind("\n", 0, at) + 1

    def lead(self, line: Line) -> str:
        return self.text[self.line_start(line.span.start) : line.span.start].lstrip("\ufeff")

    def even(self, lines: Sequence[Line], place: Place, above: int) -> bool:
        """Whether the tree is what the indentation says: deeper than the line `above`, and as deep as the lines
        beside it, but for prose. A tab is one level, so that there is no doubt about it."""
        level: int | None = None
        for line in lines:
            if isinstance(line.body, Blank | Comment):
                continue
            lead = self.lead(line)
            if "\t" not in lead:
                if len(lead) <= above or (level is not None and level != len(lead) and place not in PROSE_PLACES):
                    return False
                level = len(lead)
            if line.children and not self.even(line.children, place_below(place, line.body), level or 0):
                return False
        return True

    def whole(self, at: int) -> str:
        """The line as written, from `at` to its end."""
        end = self.text.find("\n", at)
        return self.text[at : end if end >= 0 else len(self.text)].rstrip()

    def said(self, words: Words) -> str:
        """Words that are not prose: runs of spaces are one, and what a word processor left is plain."""
        return " ".join(plain(self.text[words.span.start : words.span.end]).split())

    def raw(self, words: Words) -> str:
        return self.text[words.span.start : words.span.end]

    def head(self, head: Head) -> _Shown:
        if self.line_start(head.span.start) in self.faulty or head.keyword == "?":
            return _Shown("", self.whole(head.span.start))
        parts = [head.keyword]
        if head.name is not None:
            parts.append(self.raw(head.name) if head.keyword == "include" else self.said(head.name))
        if head.unit is not None:
            parts.append(f"in {self.said(head.unit)}")
        if head.source is not None:
            parts.append(f"from {self.said(head.source)}")
        return _Shown("", " ".join(parts), tail=self.tail(head.allow))

    def lines(self, lines: Sequence[Line], place: Place, level: int, prose: str | None) -> list[_Shown]:
        """The lines that stand at `place`; `prose` is the indentation of the line that opened the prose around
        them. Deeper than that `#` is text, so that comments among prose stand as deep as what opened it."""
        out: list[_Shown] = []
        for line in lines:
            indent = self.indent(line, level)
            if isinstance(line.body, Comment) and prose is not None and not self.in_doubt:
                indent = prose
            out.append(self.line(line, indent, place))
            if line.children:
                below = place_below(place, line.body)
                around = indent if prose is None and below in RAW_PLACES else prose
                out += self.lines(line.children, below, level + 1, around)
        return out

    def indent(self, line: Line, level: int) -> str:
        if isinstance(line.body, Blank):
            return ""
        if self.in_doubt:
            return self.lead(line)
        return " " * (STEP * level)

    def line(self, line: Line, indent: str, place: Place) -> _Shown:
        body = line.body
        if self.line_start(line.span.start) in self.faulty:
            return _Shown(indent, self.whole(line.span.start))
        tail = self.tail(line.allow)
        match body:
            case Item() if place is not Place.AMPLIFIED or self.on_card(body):
                left = " + ".join(map(self.said, body.challenges))
                right = self.said(body.response) if body.response is not None else ""
                marks = "".join(f" [{' '.join((mark.word, mark.name)).strip()}]" for mark in body.marks)
                return _Shown(indent, left, right + marks, tail=tail)
            case Row():
                right, source = self.right(body)
                return _Shown(indent, self.said(body.left), right, source, tail)
            case Say():
                words = f" {self.said(body.words)}" if body.words is not None else ""
                return _Shown(indent, body.keyword + words, tail=tail)
            case Item() | Prose():
                return _Shown(indent, self.text[line.span.start : line.span.end], tail=tail)
            case Comment() | Broken():
                return _Shown(indent, self.whole(line.span.start))
            case Blank():
                return _Shown("", "")
            case _:
                assert_never(body)

    def right(self, row: Row) -> tuple[str, str]:
        if row.right is None:
            return "", ""
        if row.left.text in PROSE_PROPERTIES:
            return self.raw(row.right), ""
        right = self.said(row.right)
        note = None if row.value is None else row.value.source
        if note is None:
            return right, ""
        name = " ".join(plain(self.text[note.span.start : row.right.span.end]).split())
        source = name if note.unverified else f"from {name}"
        return right.removesuffix(source).rstrip(), source

    def on_card(self, item: Item) -> bool:
        """Whether a line of amplified text repeats an item; if not it is prose that has dots in it."""
        return all(folded(words.text) in self.challenges for words in item.challenges)

    def tail(self, allow: Allow | None) -> str:
        if allow is None:
            return ""
        if allow.rule and allow.reason:
            return f"  # allow {allow.rule}: {allow.reason}"
        return f"  {self.text[allow.span.start : allow.span.end].rstrip()}"


def _challenges(block: Block) -> set[str]:
    """The challenges of a card, but for those in its amplified text."""
    found: set[str] = set()
    waiting = list(block.lines)
    while waiting:
        line = waiting.pop()
        if isinstance(line.body, Item):
            found.update(folded(words.text) for words in line.body.challenges)
        if not (isinstance(line.body, Say) and line.body.keyword == "amplified"):
            waiting.extend(line.children)
    return found
