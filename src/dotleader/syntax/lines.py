"""One line of a card or of a block of facts: its form, and a fault for each way in which it is not right.

Every function takes the line without its indentation and the offset at which it stands in its block.
"""

from __future__ import annotations

import re
from typing import Any

from dotleader.source.text import Span
from dotleader.syntax import line_faults
from dotleader.syntax.grammar import read
from dotleader.syntax.near_keywords import near_keyword
from dotleader.syntax.plain import plain
from dotleader.syntax.tree import Body, Broken, Fault, Item, Mark, Row, Say, Words
from dotleader.syntax.values import read_value
from dotleader.syntax.words import read_words

LEADER = re.compile(r"\.{2,}|\.(?:\s++\.){2,}|…")
"""Whether a line has a leader at all; its exact form is the grammar's."""

_SPACED_LEADER = re.compile(r"\s(?:\.{2,}|…)\s")
_KEYWORD_FIRST = re.compile(rf"({'|'.join(line_faults.CARD_KEYWORDS)})(?:\s|$)")

MARKS = ("critical", "with", "without")
_UNREAD_MARK = re.compile(r"\[(?:critical|with|without)\b[^\[\]]*$|\(critical\)$", re.IGNORECASE)
"""Marks that would be printed as a part of the response: one that is never closed, one in round brackets."""


def card_line(written: str, start: int, faults: list[Fault]) -> Body:
    """A line that stands in a card."""
    text = plain(written)
    tree = read("card_line", text)
    span = Span(start, start + len(text))
    if isinstance(tree, int):
        faults.append(line_faults.stray_line(text, span))
        return Broken(text)
    if tree.data == "card_line":
        tree = tree.children[0]
    match str(tree.data):
        case "item":
            return _item(tree, text, start, faults)
        case "say_text" | "say_name" | "say_bare":
            return _say(tree, text, start, faults)
        case "no_leader":
            return _no_leader(text, span, faults)
        case "dashed":
            return _dashed(tree, text, start, faults)
        case _:
            return _faulty_item(tree, text, start, faults)


def _left(tree: Any, start: int, faults: list[Fault]) -> tuple[Words, ...]:
    return tuple(read_words(token, start + token.start_pos, faults) for token in tree.children if token.type == "LEFT")


def _right(tree: Any, start: int, faults: list[Fault]) -> tuple[Words | None, tuple[Mark, ...]]:
    words: Words | None = None
    marks: list[Mark] = []
    for part in tree.children:
        if getattr(part, "type", "") == "RIGHT":
            words = read_words(part, start + part.start_pos, faults)
        else:
            marks.append(_mark(part.children[0], start, faults))
    return words, tuple(marks)


def _mark(token: Any, start: int, faults: list[Fault]) -> Mark:
    lead = len(token) - len(token.lstrip())
    at = start + token.start_pos + lead
    span = Span(at, at + len(token.strip()))
    word, _, name = " ".join(token.strip()[1:-1].split()).partition(" ")
    if word not in MARKS or (word == "critical") == bool(name):
        faults.append(line_faults.unknown_mark(token.strip(), span))
    return Mark(word, name, span)


def _item(tree: Any, text: str, start: int, faults: list[Fault]) -> Item:
    parts = [part for part in tree.children if not hasattr(part, "type")]
    challenges = _left(parts[0], start, faults)
    response, marks = _right(parts[1], start, faults)
    keyword = _KEYWORD_FIRST.match(challenges[0].text)
    if keyword:
        shown = text[challenges[0].span.start - start :]
        faults.append(line_faults.item_from_keyword(keyword[1], shown, Span(start, start + len(text))))
    elif unread := _UNREAD_MARK.search(text):
        faults.append(line_faults.unknown_mark(unread[0], Span(start + unread.start(), start + unread.end())))
    if response is None:
        end = start + max(token.start_pos + len(token) for token in tree.children if hasattr(token, "type"))
        faults.append(line_faults.missing_response(challenges[0].text, Span(challenges[0].span.start, end)))
    return Item(challenges, response, marks)


def _faulty_item(tree: Any, text: str, start: int, faults: list[Fault]) -> Body:
    """An item with a leader that is not as it should be; what can be read is read."""
    kind = str(tree.data)
    sides = [part for part in tree.children if not hasattr(part, "type")]
    tokens = [part for part in tree.children if hasattr(part, "type") and part.type != "BULLET"]
    span = Span(start, start + len(text))
    if kind == "no_challenge":
        faults.append(line_faults.missing_challenge(text, span))
        return Broken(text)
    challenges = _left(sides[0], start, faults)
    if kind == "no_response":
        faults.append(line_faults.missing_response(challenges[0].text, Span(challenges[0].span.start, span.end)))
        return Item(challenges, None, ())
    sides = sides[1:]
    response: Words | None = None
    marks: tuple[Mark, ...] = ()
    if sides and str(sides[0].data) == "right":
        response, marks = _right(sides[0], start, faults)
    if kind == "twice":
        second = next(part for part in sides if str(part.data) == "more").children[0]
        faults.append(line_faults.second_leader(text, _trimmed(second, start)))
    else:
        faults.append(line_faults.dots_against_digit(challenges[0].text, response, _trimmed(tokens[0], start)))
    return Item(challenges, response, marks)


def _trimmed(token: Any, start: int) -> Span:
    """The place of a token without the spaces around it."""
    at = start + token.start_pos + len(token) - len(token.lstrip())
    return Span(at, at + len(token.strip()))


def _say(tree: Any, text: str, start: int, faults: list[Fault]) -> Say:
    key = tree.children[0]
    keyword = " ".join(key.split())
    at = Span(start, start + len(key.rstrip()))
    tail = tree.children[1] if len(tree.children) > 1 else None
    words = read_words(tail, start + tail.start_pos, faults) if tail is not None else None
    span = Span(start, start + len(text))
    if tree.data == "say_bare":
        if words is not None:
            faults.append(line_faults.surplus(keyword, words))
    elif words is None:
        faults.append(line_faults.keyword_alone(keyword, at))
    elif _SPACED_LEADER.search(text):
        faults.append(line_faults.keyword_before_leader(keyword, text, span))
    return Say(keyword, words, at)


def _no_leader(text: str, span: Span, faults: list[Fault]) -> Body:
    near, length = near_keyword(text)
    if near:
        # Read as if the keyword stood there, so that nothing more is said of what follows from the slip.
        rest = text[length:].lstrip(": \t")
        faults.append(line_faults.unknown_keyword(text, near, rest, span))
        at = Span(span.start, span.start + length)
        return Say(near, read_words(rest, span.end - len(rest), faults) if rest else None, at)
    if line_faults.looks_like_prose(text):
        faults.append(line_faults.stray_line(text, span))
        return Broken(text)
    faults.append(line_faults.missing_item_leader(text.rstrip("- ") or text, span))
    return Item((read_words(text, span.start, faults),), None, ())


def _dashed(tree: Any, text: str, start: int, faults: list[Fault]) -> Body:
    span = Span(start, start + len(text))
    left, dash = tree.children[0], tree.children[1]
    challenge = read_words(left, start + left.start_pos, faults)
    if len(tree.children) < 3:
        faults.append(line_faults.missing_response(challenge.text, span))
        return Item((challenge,), None, ())
    response, marks = _right(tree.children[2], start, faults)
    at = start + dash.start_pos
    right = text[dash.start_pos + len(dash) :].strip()
    faults.append(line_faults.dash_for_leader(challenge.text, right, Span(at, at + len(dash)), tab="\t" in dash))
    return Item((challenge,), response, marks)


def fact_line(written: str, start: int, numbers: bool, faults: list[Fault]) -> Body:
    """A line that stands in a block of facts; with `numbers` its right part is read as a value."""
    text = plain(written)
    tree = read("row", text)
    span = Span(start, start + len(text))
    if isinstance(tree, int):
        faults.append(line_faults.missing_leader(text, span))
        return Broken(text)
    kind = str(tree.data)
    parts = tree.children
    if kind == "row_no_left":
        faults.append(line_faults.missing_name(text, span))
        return Broken(text)
    left = read_words(parts[0], start, faults)
    if kind == "row_no_leader":
        faults.append(line_faults.missing_leader(text, span))
        return Row(left, None)
    right = parts[2] if len(parts) > 2 and parts[2].type in ("FACT_RIGHT", "PROSE") else None
    if kind not in ("row", "row_prose"):
        _faulty_row(kind, parts, text, start, faults)
    elif right is None:
        faults.append(line_faults.missing_fact(left.text, span))
    if right is None:
        return Row(left, None)
    begin = start + right.start_pos
    value = read_value(right, begin, faults) if numbers and kind == "row" else None
    shown = written[right.start_pos :] if kind == "row_prose" else right
    return Row(left, read_words(shown, begin, faults), value)


def _faulty_row(kind: str, parts: Any, text: str, start: int, faults: list[Fault]) -> None:
    left, joint = parts[0].strip(), parts[1]
    right = parts[2].strip() if len(parts) > 2 else ""
    if kind == "row_dashed":
        at = Span(start + joint.start_pos, start + joint.end_pos)
        faults.append(line_faults.dash_for_leader(left, right, at, tab="\t" in joint))
    elif kind == "row_twice":
        second = next(part for part in parts if part.type == "LEADER" and part is not joint)
        faults.append(line_faults.second_leader(text, _trimmed(second, start)))
    else:
        faults.append(line_faults.dots_against_digit(left, right, _trimmed(joint, start)))
