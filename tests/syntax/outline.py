"""A tree and its findings as text, for golden tests."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.source.text import SourceText
from dotleader.syntax.parse import parse
from dotleader.syntax.tree import (
    Allow,
    Binary,
    Body,
    Broken,
    Comment,
    Expression,
    Item,
    Line,
    Negative,
    Number,
    Prose,
    Ref,
    Root,
    Row,
    Say,
    Value,
    Words,
)


def outline(text: str) -> str:
    """One line for each line of the tree, then one for each finding with the text that it marks."""
    outcome = parse(SourceText("a.cards", text))
    out: list[str] = []
    for placed in outcome.value.blocks:
        head = placed.block.head
        parts = [head.keyword or "(no head)"]
        for label, words in (("", head.name), ("in ", head.unit), ("from ", head.source)):
            if words is not None:
                parts.append(label + _words(words))
        out.append(" ".join(parts) + _allow(head.allow))
        out.extend(_lines(placed.block.lines, 1))
    for finding in outcome.findings:
        line, column = finding.spot.source.line_and_column(finding.spot.start)
        out.append(f"! {line}:{column} {finding.rule} `{finding.spot.text}`")
        out.append(f"!   {finding.message}")
        out.append(f"!   {finding.help}")
    return "\n".join(out)


def _lines(lines: Sequence[Line], level: int) -> Iterator[str]:
    for line in lines:
        yield "  " * level + _body(line.body) + _allow(line.allow)
        yield from _lines(line.children, level + 1)


def _allow(allow: Allow | None) -> str:
    return f"  (allow `{allow.rule}` because `{allow.reason}`)" if allow is not None else ""


def _words(words: Words) -> str:
    return "<" + "".join(p if isinstance(p, str) else f"<{p.name}>" for p in words.pieces) + ">"


def _body(body: Body) -> str:
    match body:
        case Item():
            marks = "".join(f" [{mark.word}:{mark.name}]" for mark in body.marks)
            response = "nothing" if body.response is None else _words(body.response)
            return "item " + " and ".join(map(_words, body.challenges)) + " = " + response + marks
        case Row():
            right = "nothing" if body.right is None else _words(body.right)
            return f"row {_words(body.left)} = {right if body.value is None else _value(body.value)}"
        case Say():
            return f"say {body.keyword}" + (f" {_words(body.words)}" if body.words is not None else "")
        case Prose():
            return f"prose {_words(body.words)}"
        case Comment() | Broken():
            return f"{type(body).__name__.lower()} {body.text}"
        case _:
            return "blank"


def _value(value: Value) -> str:
    second = "" if value.second is None else f", {_expression(value.second)}"
    source = ""
    if value.source is not None:
        source = " unverified" if value.source.unverified else f" from <{value.source.name}>"
    return f"{value.shape} {_expression(value.first)}{second}{source}"


def _expression(of: Expression) -> str:
    match of:
        case Number():
            return f"{of.digits} `{of.unit}`" if of.unit else of.digits
        case Ref():
            return f"<{of.name}>"
        case Negative():
            return f"-({_expression(of.of)})"
        case Root():
            return f"root({_expression(of.of)})"
        case Binary():
            return f"({_expression(of.left)} {of.operator} {_expression(of.right)})"
        case _:
            return f"rounded {of.direction} to {_expression(of.step)} ({_expression(of.of)})"
