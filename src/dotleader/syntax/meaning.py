"""What a tree says, whatever it looks like.

Two sources with the same meaning print the same and give the same findings. It is the tree without places, with the
spaces in everything but prose folded; comments and suppressions are part of it, and so is a blank line between two
lines, which makes a paragraph. The formatter's promise is stated in these terms.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias, assert_never

from dotleader.syntax.places import PROSE_PROPERTIES
from dotleader.syntax.tree import (
    Allow,
    Binary,
    Blank,
    Block,
    Body,
    Broken,
    Comment,
    Expression,
    File,
    Head,
    Item,
    Line,
    Negative,
    Number,
    Prose,
    Ref,
    Root,
    Rounded,
    Row,
    Say,
    SourceNote,
    Value,
    Words,
)

Meaning: TypeAlias = tuple[object, ...]


def meaning(file: File) -> Meaning:
    """Equal for two files that say the same."""
    blocks = (block_meaning(placed.block) for placed in file.blocks)
    return tuple(block for block in blocks if block != _NOTHING)


def block_meaning(block: Block) -> Meaning:
    """Equal for two blocks that say the same; the empty lines at its end are not part of it."""
    return _head(block.head), _lines(block.lines)


def _lines(lines: Sequence[Line]) -> Meaning:
    """Runs of blank lines count as one, and those at the end as none."""
    out: list[object] = []
    for line in lines:
        if not isinstance(line.body, Blank):
            out.append((_body(line.body), _allow(line.allow), _lines(line.children)))
        elif out and out[-1] != "blank":
            out.append("blank")
    return tuple(out[:-1] if out and out[-1] == "blank" else out)


def _head(head: Head) -> Meaning:
    name = _raw(head.name) if head.keyword == "include" else _folded(head.name)
    return head.keyword, name, _folded(head.unit), _folded(head.source), _allow(head.allow)


_NOTHING: Meaning = (("", None, None, None, None), ())


def _allow(allow: Allow | None) -> Meaning | None:
    return None if allow is None else (allow.rule, allow.reason)


def _folded(words: Words | None) -> Meaning | None:
    if words is None:
        return None
    return tuple(("{}", p.name) if isinstance(p, Ref) else " ".join(f"|{p}|".split()) for p in words.pieces)


def _raw(words: Words | None) -> Meaning | None:
    if words is None:
        return None
    return tuple(("{}", piece.name) if isinstance(piece, Ref) else piece for piece in words.pieces)


def _body(body: Body) -> Meaning:
    match body:
        case Item():
            marks = tuple((mark.word, mark.name) for mark in body.marks)
            return "item", tuple(map(_folded, body.challenges)), _folded(body.response), marks
        case Row():
            right = _raw(body.right) if body.left.text in PROSE_PROPERTIES else _folded(body.right)
            return "row", _folded(body.left), right, _value(body.value)
        case Say():
            return "say", body.keyword, _folded(body.words)
        case Prose():
            return "prose", _raw(body.words)
        case Comment():
            return "comment", body.text
        case Broken():
            return "broken", body.text
        case Blank():
            return ()
        case _:
            assert_never(body)


def _value(value: Value | None) -> Meaning | None:
    if value is None:
        return None
    second = None if value.second is None else _expression(value.second)
    return value.shape, _expression(value.first), second, _source(value.source)


def _source(source: SourceNote | None) -> Meaning | None:
    return None if source is None else (source.name, source.unverified)


def _expression(of: Expression) -> Meaning:
    match of:
        case Number():
            return "number", of.digits, of.unit
        case Ref():
            return "ref", of.name
        case Negative():
            return "negative", _expression(of.of)
        case Root():
            return "root", _expression(of.of)
        case Binary():
            return of.operator, _expression(of.left), _expression(of.right)
        case Rounded():
            return "rounded", _expression(of.of), of.direction, _expression(of.step)
        case _:
            assert_never(of)
