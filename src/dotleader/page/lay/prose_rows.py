"""Paragraphs as rows: a page is turned neither after the first line of one nor before its last."""

from __future__ import annotations

from dotleader.page.lay.measures import Setting
from dotleader.page.lay.outline import Hold
from dotleader.page.lay.rows import Piece, Row, text_row
from dotleader.page.type.breaking import length, without_orphan
from dotleader.page.type.words import Words

_LINE_AIR = 230
"""Between lines, in thousandths of the air that the pitch leaves: lines of prose stand 1.29 to 1.33 apart."""

_PARAGRAPH = 450
"""Between paragraphs, in thousandths of the size."""


def paragraph(
    words: Words, left: int, setting: Setting, hold: int = Hold.STEP, says: tuple[str, ...] = ()
) -> list[Row]:
    """The rows of a paragraph; none where there are no words."""
    size = setting.size
    lines = without_orphan(words, setting.room(left, setting.width, size))
    rows = [text_row(-1, Hold.STEP, size, Piece(left, line, size))._replace(air=_LINE_AIR) for line in lines]
    for at in {1, len(rows) - 1}:
        if 0 < at < len(rows):
            rows[at] = rows[at]._replace(hold=Hold.KEEP)
    if rows:
        rows[0] = rows[0]._replace(gap=length(_PARAGRAPH, size), hold=hold, says=says)
    return rows
