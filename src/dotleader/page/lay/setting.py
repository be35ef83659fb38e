"""An outline's parts as rows, at one trial of sizes."""

from __future__ import annotations

from typing import assert_never

from dotleader.page.drawn import Font
from dotleader.page.lay.columns import Need, columns
from dotleader.page.lay.item_rows import item_rows, need_of, number_piece
from dotleader.page.lay.leave_rows import gate_rows, leave_rows
from dotleader.page.lay.measures import (
    COMPLETE_RULE,
    HAIRLINE,
    MEMORY_PAD,
    MEMORY_RULE,
    Setting,
)
from dotleader.page.lay.notices import notice_rows
from dotleader.page.lay.outline import (
    Completion,
    Condition,
    Gate,
    Heading,
    Hold,
    ItemLine,
    Leave,
    MemoryEdge,
    NoticeLine,
    Outline,
    Part,
    Sign,
)
from dotleader.page.lay.rows import Piece, Row, Rule, text_row
from dotleader.page.lay.spacing import space_above
from dotleader.page.type.breaking import Line, balanced, broken
from dotleader.page.type.words import plain_words

_MEMORY = plain_words("MEMORY ITEMS", Font.BOLD)


def set_rows(outline: Outline, setting: Setting) -> list[Row]:
    """All rows of the outline, top to bottom."""
    found = columns(_needs(outline, setting), setting.width)
    rows: list[Row] = []
    before: Part | None = None
    for at, part in enumerate(outline.parts):
        first, *others = _rows(part, at, setting, found)
        gap, air = space_above(before, part, setting.size)
        rows.append(first._replace(gap=gap, air=air, hold=part.hold, says=part.says))
        rows.extend(others)
        before = part
    return rows


def right_of(part: Part, setting: Setting) -> int:
    """How far right a part may go: memory items stay clear of their box."""
    return setting.width - MEMORY_PAD if part.boxed else setting.width


def _needs(outline: Outline, setting: Setting) -> list[Need]:
    return [
        need_of(part.what, setting.left(part.level), right_of(part, setting), setting)
        for part in outline.parts
        if isinstance(part.what, ItemLine)
    ]


def _rows(part: Part, at: int, setting: Setting, found: dict[int, int]) -> list[Row]:
    left, right = setting.left(part.level), right_of(part, setting)
    hold = Hold.MEMORY if part.boxed else Hold.KEEP
    match part.what:
        case ItemLine() as item:
            return item_rows(item, at, (left, right), found[item.block], setting, hold)
        case Heading(words, choice):
            lines = balanced(words, setting.room(left, right, setting.heading)) or [()]
            start = left if part.level or part.boxed else 0
            rule = None if choice else Rule(start, right, HAIRLINE)
            rows = _ruled(lines, at, left, setting.heading, rule, hold)
            return _chosen(rows, left, setting) if choice else rows
        case Condition(words, number, choice):
            lines = balanced(words, setting.room(left, right, setting.size)) or [()]
            rows = [text_row(at, hold, setting.size, Piece(left, line, setting.size)) for line in lines]
            if number:
                rows[0] = rows[0]._replace(pieces=(number_piece(number, setting), *rows[0].pieces))
            return _chosen(rows, left, setting) if choice else rows
        case NoticeLine(_, words):
            return notice_rows(words, at, (left, right), setting, hold)
        case Leave() as leave:
            return leave_rows(leave, at, part.level, right, setting, hold)
        case Gate() as gate:
            return gate_rows(gate, at, right, setting, hold)
        case Sign(words):
            lines = broken(words, setting.room(left, right, setting.small))
            return [text_row(at, hold, setting.small, Piece(left, line, setting.small)) for line in lines]
        case Completion(words):
            lines = balanced(words, setting.room(left, right, setting.heading))
            return _ruled(lines, at, left, setting.heading, Rule(0, right, COMPLETE_RULE), hold)
        case MemoryEdge.TOP:
            return [text_row(at, hold, setting.small, Piece(left, _MEMORY, setting.small))]
        case MemoryEdge.FOOT:
            return [Row(at, hold, MEMORY_RULE, 0)]
        case _:
            assert_never(part.what)


def _ruled(lines: list[Line], at: int, left: int, size: int, rule: Rule | None, hold: int) -> list[Row]:
    """Lines under a rule."""
    rows = [text_row(at, hold, size, Piece(left, line, size)) for line in lines]
    if rule:
        rows[0] = text_row(at, hold, size, Piece(left, lines[0], size), pad=rule.width)._replace(rule=rule)
    return rows


def _chosen(rows: list[Row], left: int, setting: Setting) -> list[Row]:
    """The same rows with a mark of choice before the first."""
    return [rows[0]._replace(choice=setting.choice(left)), *rows[1:]]
