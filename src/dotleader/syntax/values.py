"""The right part of a row of numbers: `1.3 * {VS0} rounded up to 1 KIAS  from stall tests`."""

from __future__ import annotations

import re
from typing import Any

from dotleader.source.record import replace
from dotleader.source.text import Span
from dotleader.syntax.grammar import read
from dotleader.syntax.line_faults import short
from dotleader.syntax.mended import value_hint
from dotleader.syntax.near_keywords import near_source_word
from dotleader.syntax.tree import (
    Binary,
    Expression,
    Fault,
    Mend,
    Negative,
    Number,
    Ref,
    Root,
    Rounded,
    SourceNote,
    Value,
)

_COMMAS = re.compile(r"(?<![\d.])\d++(?:\.\d++)*+,[\d,]*")
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+")
_LONG_NUMBER = re.compile(r"\d[\d,.]{30}")
_SHAPES = {"exact", "range", "tolerance", "at_least", "at_most", "below", "above"}
_FORMS = (
    "Right forms are `82 KIAS`, `55 to 95 psi`, `62 +/- 2 mm`, `at least 5 US qt`, "
    "a declared value in braces, `{VS0}`, or arithmetic such as `1.3 * {VS0} rounded up to 1 KIAS`."
)
_DIGIT = re.compile(r"\d")
MOST_OPERATORS = 60
"""Longer arithmetic is not read: nobody needs it, and reading is recursive."""


def read_value(text: str, start: int, faults: list[Fault]) -> Value | None:
    """A value from `text`, which stands at `start`; None and a fault where it is none."""
    lead = len(text) - len(text.lstrip())
    text = text.strip()
    start += lead
    span = Span(start, start + len(text))
    number_part = text.split(" from ", 1)[0]
    for comma in _COMMAS.finditer(number_part):
        if not _THOUSANDS.fullmatch(comma[0]):
            faults.append(_decimal_comma(comma[0], start + comma.start()))
            text = text[: comma.start()] + comma[0].replace(",", ".") + text[comma.end() :]
    if sum(map(number_part.count, "+-*×/(")) > MOST_OPERATORS:
        faults.append(Fault("unreadable-value", span, "This arithmetic is too long to be read.", _FORMS))
        return None
    if _LONG_NUMBER.search(number_part):
        faults.append(Fault("unreadable-value", span, f"`{short(text)}` has a number of too many digits.", _FORMS))
        return None
    tree = read("value", text)
    if isinstance(tree, int):
        if not any(fault.rule == "decimal-comma" and fault.span.start >= start for fault in faults[-3:]):
            faults.append(_unreadable(text, start, tree))
        return None
    value = _value(tree, start, span, faults)
    if value is not None and value.shape == "exact" and (fault := _range_or_difference(value.first, text, start)):
        faults.append(fault)
        return None
    return value


def _decimal_comma(written: str, start: int) -> Fault:
    one = written.count(",") == 1 and not written.endswith(",")
    mended = written.replace(".", "").replace(",", "." if one else "")
    return Fault(
        "decimal-comma",
        Span(start, start + len(written)),
        f"`{short(written)}` has a comma where it does not separate thousands.",
        f"Write a point before decimals, and no other mark: `{short(mended)}`. "
        "A comma stands before exactly three digits: `1,250`.",
        Mend(Span(start, start + len(written)), mended) if one else None,
    )


def _unreadable(text: str, start: int, at: int) -> Fault:
    rest = text[at:].strip()
    if at and rest:
        message = (
            f"`{short(text)}` can be read as a value up to `{short(text[:at].strip())}`; "
            f"what follows, `{short(rest)}`, cannot."
        )
        span = Span(start + at + len(text[at:]) - len(text[at:].lstrip()), start + len(text))
    elif rest:
        message = f"`{short(text)}` is no number and no arithmetic."
        span = Span(start, start + len(text))
    else:
        message = f"`{short(text)}` stops before the value is complete."
        span = Span(start, start + len(text))
    help_, right = _source_hint(text)
    if not help_:
        help_, right = value_hint(text, at)
    mend = Mend(Span(start, start + len(text)), right) if right else None
    return Fault("unreadable-value", span, message, help_ or _FORMS, mend)


def _source_hint(text: str) -> tuple[str, str]:
    """What to do where the source of the number begins with a slip, `100 KIAS form kit manual, page 3`, and the right
    text; empty where it does not."""
    number = _DIGIT.search(text)
    rest = text[number.end() :] if number else ""
    start, end, right = near_source_word(rest)
    if not right:
        return "", ""
    return f"Did you mean `{short(right + rest[end:])}`?", text[: len(text) - len(rest) + start] + right + rest[end:]


def _range_or_difference(whole: Expression, written: str, start: int) -> Fault | None:
    """`600 - 750 rpm`: a range to whoever wrote it, and less than nothing to arithmetic."""
    match whole:
        case Binary("-", Number(low), Number(high, unit)):
            pass
        case _:
            return None
    shown = written[whole.span.start - start : whole.span.end - start]
    return Fault(
        "unreadable-value",
        whole.span,
        f"`{short(shown)}` may be a range or a difference.",
        f"A range is written with `to`: `{low} to {f'{high} {unit}'.strip()}`. "
        "A difference of two numbers is written as the number that it comes to.",
    )


def _value(tree: Any, start: int, span: Span, faults: list[Fault]) -> Value | None:
    parts = tree.children
    if tree.data == "only_source":
        faults.append(Fault("unreadable-value", span, "There is a source here but no value before it.", _FORMS))
        return None
    measure = parts[0]
    shape = str(measure.data)
    source = _source(parts[1], start) if len(parts) > 1 else None
    if shape not in _SHAPES:  # a bare expression, which lark has lifted
        return Value("exact", _expression(measure, start), None, source, span)
    expressions = [
        _expression(part, start) for part in measure.children if hasattr(part, "data") or part.type in ("REF", "NUMBER")
    ]
    second = expressions[1] if len(expressions) > 1 else None
    return Value(shape.replace("_", " "), expressions[0], second, source, span)


def _source(tree: Any, start: int) -> SourceNote:
    token = tree.children[0]
    lead = len(token) - len(token.lstrip())
    span = Span(start + token.start_pos + lead, start + token.start_pos + len(token))
    if token.type == "UNVERIFIED":
        return SourceNote("", span, unverified=True)
    name = token.strip()[len("from") :]
    begin = span.end - len(name.lstrip())
    return SourceNote(" ".join(name.split()), Span(begin, span.end))


def _expression(tree: Any, start: int) -> Expression:
    parts = tree.children
    match str(tree.data):
        case "number":
            return _number(parts, start)
        case "value_ref":
            token = parts[0]
            at = start + token.start_pos
            return Ref(" ".join(token[1:-1].split()), Span(at, at + len(token)))
        case "negative":
            of = _expression(parts[1], start)
            return Negative(of, Span(start + parts[0].start_pos, of.span.end))
        case "root":
            of = _expression(parts[1], start)
            return Root(of, Span(start + parts[0].start_pos, start + parts[2].start_pos + len(parts[2])))
        case "grouped":
            brackets = Span(start + parts[0].start_pos, start + parts[2].start_pos + len(parts[2]))
            return replace(_expression(parts[1], start), span=brackets)
        case "rounded":
            return _rounded(parts, start)
        case _:
            left, right = _expression(parts[0], start), _expression(parts[2], start)
            operator = parts[1].strip().replace("×", "*")
            return Binary(operator, left, right, Span(left.span.start, right.span.end))


def _rounded(parts: Any, start: int) -> Rounded:
    of, step = _expression(parts[0], start), _number(parts[2].children, start)
    words = parts[1].split()
    direction = words[1] if words[1] in ("up", "down") else "nearest"
    return Rounded(of, direction, step, Span(of.span.start, step.span.end))


def _number(parts: Any, start: int) -> Number:
    digits = parts[0]
    at = start + digits.start_pos
    end = at + len(digits)
    if len(parts) == 1:
        return Number(str(digits), "", Span(at, end), Span(end, end))
    unit = parts[1]
    begin = start + unit.start_pos + len(unit) - len(unit.lstrip())
    finish = begin + len(unit.strip())
    return Number(str(digits), " ".join(unit.split()), Span(at, finish), Span(begin, finish))
