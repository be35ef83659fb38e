"""Parsed blocks as plain tuples and back, for whoever keeps them between two runs.

A record becomes a tuple that begins with its number in `RECORDS`, a span one that begins with -1, any other tuple one
that begins with -2; texts, numbers and None stay. A block knows nothing of where it stands, so that what was made of
its text once is right wherever the text stands again.
"""

from __future__ import annotations

from typing import Any

from dotleader.source.text import Span
from dotleader.syntax import tree

RECORDS: tuple[type, ...] = (
    tree.Ref, tree.Words, tree.Mark, tree.Item, tree.Row, tree.Say, tree.Prose, tree.Comment, tree.Blank, tree.Broken,
    tree.Allow, tree.Line, tree.Head, tree.Block, tree.Mend, tree.Fault, tree.Parsed, tree.Number, tree.Negative,
    tree.Root, tree.Binary, tree.Rounded, tree.SourceNote, tree.Value,
)  # fmt: skip
_NUMBERS = {kind: number for number, kind in enumerate(RECORDS)}
_SPAN, _TUPLE = -1, -2


def packed(parsed: tree.Parsed) -> tuple[Any, ...]:
    """A parsed block as tuples, texts, whole numbers and None."""
    made: tuple[Any, ...] = _pack(parsed)
    return made


def unpacked(plain: Any) -> tree.Parsed | None:
    """The parsed block that was packed; None where this is none."""
    try:
        made = _unpack(plain)
    except (TypeError, IndexError, ValueError):
        return None
    return made if isinstance(made, tree.Parsed) else None


def _pack(node: Any) -> Any:
    number = _NUMBERS.get(type(node))
    if number is not None:
        return (number, *[_pack(getattr(node, name)) for name in node.__match_args__])
    if type(node) is Span:
        return (_SPAN, node.start, node.end)
    if type(node) is tuple:
        return (_TUPLE, *map(_pack, node))
    return node


def _unpack(plain: Any) -> Any:
    if type(plain) is not tuple:
        return plain
    number = plain[0]
    if number == _SPAN:
        return Span(plain[1], plain[2])
    if number == _TUPLE:
        return tuple(map(_unpack, plain[1:]))
    return RECORDS[number](*map(_unpack, plain[1:]))
