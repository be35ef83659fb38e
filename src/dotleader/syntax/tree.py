"""The tree: what is written, before anybody asks what it means.

Every node is frozen data with a `Span` counted from the start of its block, so that an edit above a block changes
nothing in it. The tree keeps comments and blank lines, because the formatter must.
"""

from __future__ import annotations

from typing import TypeAlias

from dotleader.source.record import record
from dotleader.source.text import SourceText, Span


@record
class Ref:
    """`{VG}` or `{VG in mph}`: what stands between the braces, spaces folded."""

    name: str
    span: Span


@record
class Words:
    """Text as written, with its references. Doubled braces have become single ones in the pieces."""

    pieces: tuple[str | Ref, ...]
    span: Span

    @property
    def text(self) -> str:
        """The words with references shown as written, runs of spaces folded."""
        return " ".join("".join(p if isinstance(p, str) else f"{{{p.name}}}" for p in self.pieces).split())

    @property
    def refs(self) -> tuple[Ref, ...]:
        return tuple(p for p in self.pieces if isinstance(p, Ref))


@record
class Mark:
    """`[critical]`, `[with NAME]` or `[without NAME]` after a response."""

    word: str
    name: str
    span: Span


@record
class Item:
    """A challenge and its response; several challenges where one line names two controls."""

    challenges: tuple[Words, ...]
    response: Words | None
    marks: tuple[Mark, ...]


@record
class Row:
    """A fact: left part, right part; in blocks of numbers the right part read as a value."""

    left: Words
    right: Words | None
    value: Value | None = None


@record
class Say:
    """A line that begins with a keyword of its card: `note`, `if`, `memory`, `go to` ..."""

    keyword: str
    words: Words | None
    keyword_span: Span


@record
class Prose:
    """A line of text: a detail below an item, a line of a text block, the continuation of a notice."""

    words: Words


@record
class Comment:
    text: str


@record
class Blank:
    pass


@record
class Broken:
    """A line that was not understood. There is a fault that says so; the text is kept."""

    text: str


Body: TypeAlias = Item | Row | Say | Prose | Comment | Blank | Broken


@record
class Allow:
    """`# allow RULE: reason`."""

    rule: str
    reason: str
    span: Span


@record
class Line:
    """One line with what is indented below it. `span` is the line without indentation, allow mark and line end."""

    span: Span
    body: Body
    children: tuple[Line, ...] = ()
    allow: Allow | None = None


@record
class Head:
    """An unindented line. `unit` and `source` stand in the heads of gauges and of blocks of numbers only."""

    keyword: str
    name: Words | None
    unit: Words | None
    source: Words | None
    span: Span
    allow: Allow | None = None


@record
class Block:
    """A head and what is indented below it. A run of unindented comments is a block whose head keyword is ``""``.

    `size` is the length of the block's text in the file, line ends included.
    """

    head: Head
    lines: tuple[Line, ...]
    size: int


@record
class Mend:
    """`text` in the place of what stands at `span`, which mends a fault; `safe` as that of a fix."""

    span: Span
    text: str
    safe: bool = False


@record
class Fault:
    """A finding of the parser, in a block that does not know where it stands."""

    rule: str
    span: Span
    message: str
    help: str
    mend: Mend | None = None


@record
class Parsed:
    """One block's result; depends on the block's text alone and can be kept for as long as that is the same."""

    block: Block
    faults: tuple[Fault, ...]


@record
class Placed:
    """A block at its place in a file."""

    start: int
    block: Block


@record
class File:
    source: SourceText
    blocks: tuple[Placed, ...]


# Values: the right part of a row in a block of numbers.


@record
class Number:
    """Digits and unit as written; `unit` is empty for a bare number."""

    digits: str
    unit: str
    span: Span
    unit_span: Span


@record
class Negative:
    of: Expression
    span: Span


@record
class Root:
    of: Expression
    span: Span


@record
class Binary:
    """`operator` is one of ``+ - * /``."""

    operator: str
    left: Expression
    right: Expression
    span: Span


@record
class Rounded:
    """`direction` is ``up``, ``down`` or ``nearest``."""

    of: Expression
    direction: str
    step: Number
    span: Span


Expression: TypeAlias = Number | Ref | Negative | Root | Binary | Rounded


@record
class SourceNote:
    """`from NAME, detail` or `unverified` (then `name` is empty)."""

    name: str
    span: Span
    unverified: bool = False


@record
class Value:
    """`shape`: ``exact`` (first), ``range`` (first to second), ``tolerance`` (first +/- second), ``at least``,
    ``at most``, ``below``, ``above`` (first)."""

    shape: str
    first: Expression
    second: Expression | None
    source: SourceNote | None
    span: Span
