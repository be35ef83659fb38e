"""Rows that lead to another card: an arrow, its title, and room for the label of the face where it stands."""

from __future__ import annotations

from dotleader.page.lay.measures import ARROW, ARROW_GAP, DETAIL, LEADER_GAP, LEVEL, TAB_GAP, Setting
from dotleader.page.lay.outline import Gate, Leave
from dotleader.page.lay.rows import Piece, Row, Slot, text_row
from dotleader.page.type.breaking import balanced, ending_before, length, line_width
from dotleader.page.type.words import Words


def leave_rows(leave: Leave, at: int, level: int, right: int, setting: Setting, hold: int) -> list[Row]:
    """Inside a branch the arrow starts at its rail, elsewhere where the text begins."""
    if leave.inside and level:
        start, tip = setting.rail(level - 1), setting.left(level) + DETAIL * setting.step // LEVEL
    else:
        start, tip = setting.left(level), setting.left(level) + ARROW
    rows = _target_rows(leave.words, leave.target, at, (start, tip), right, setting, hold)
    if leave.choice:
        rows[0] = rows[0]._replace(choice=setting.choice(setting.left(level)))
    return rows


def gate_rows(gate: Gate, at: int, right: int, setting: Setting, hold: int) -> list[Row]:
    """On one line where it fits: condition, arrow, title, label; else the arrow and the rest below the condition."""
    size = setting.size
    start = length(line_width(gate.condition), size) + LEADER_GAP
    tip = start + ARROW
    end = tip + ARROW_GAP + length(line_width(gate.words), size) + TAB_GAP + setting.label
    if end <= right:
        (row,) = _target_rows(gate.words, gate.target, at, (start, tip), right, setting, hold)
        return [row._replace(pieces=(Piece(0, gate.condition, size), *row.pieces))]
    rows = [
        text_row(at, hold, size, Piece(0, line, size))
        for line in balanced(gate.condition, setting.room(0, right, size))
    ]
    arrow = (setting.left(0), setting.left(0) + ARROW)
    return rows + _target_rows(gate.words, gate.target, at, arrow, right, setting, hold)


def _target_rows(
    words: Words, target: str, at: int, arrow: tuple[int, int], right: int, setting: Setting, hold: int
) -> list[Row]:
    size = setting.size
    left = arrow[1] + ARROW_GAP
    last = max(0, right - left - TAB_GAP - setting.label)
    lines = ending_before(words, setting.room(left, right, size), setting.room(0, last, size) if last else 0)
    rows = [text_row(at, hold, size, Piece(left, line, size)) for line in lines or [()]]
    rows[0] = rows[0]._replace(arrow=arrow)
    slot_x = rows[-1].end + TAB_GAP if lines and lines[-1] else left
    slot = Slot(min(slot_x, right - setting.label), setting.tab, target)
    return [*rows[:-1], _tall(rows[-1]._replace(slot=slot), setting.tab)]


def _tall(row: Row, tab: int) -> Row:
    """As high as the tab that it holds, and a little more."""
    more = max(0, tab + DETAIL // 10 - row.height)
    return row._replace(height=row.height + more, base=row.base + more // 2, middle=row.middle + more // 2)
