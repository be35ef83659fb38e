"""The box of memory items and the three looks of notices; they differ in black and white."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.breaking import length, line_width, set_line
from dotleader.page.drawn import Box, Drawn, Font, Ink, Line, mm
from dotleader.page.inking import Placed
from dotleader.page.measures import (
    CAUTION_RULE,
    HAIRLINE,
    MEMORY_RULE,
    NOTICE_LABEL,
    NOTICE_PAD,
    WARNING_RULE,
    slot,
)
from dotleader.page.metrics import cap_height
from dotleader.page.words import plain_words

_BREAK = mm(1.6)  # between the rule of the box and the words that break it
_DOUBLE = mm(1)


def memory_box(rows: Sequence[Placed], left: int, width: int, opened: bool) -> Iterator[Drawn]:
    """The ground, and the rule round it; where `opened`, the first row's words break its top.

    Where the page is turned inside it, for it is longer than a face, the rule stands outside the rows.
    """
    half = MEMORY_RULE // 2
    top = rows[0].middle if opened else rows[0].top - half
    bottom = rows[-1].bottom + (half if rows[-1].row.pieces else -half)
    x, right = left + half, width - half
    yield Box(x, top, right - x, bottom - top, fill=Ink.MEMORY)
    corners = ((x, top), (x, bottom), (right, bottom), (right, top))
    if not opened:
        yield Line(corners, MEMORY_RULE, closed=True)
        return
    words = rows[0].row.pieces[0]
    begin, end = max(x, words.x - _BREAK), min(right, rows[0].row.end + _BREAK)
    yield Line(((begin, top), *corners, (end, top)), MEMORY_RULE)


def notice_box(word: str, rows: Sequence[Placed], left: int, right: int, stacked: bool, small: int) -> Iterator[Drawn]:
    """The box, or the hairlines of a note, and its label: beside the text, or above it where `stacked`."""
    top = rows[0].top - (WARNING_RULE if rows[0].row.pieces else 0)  # the page may be turned inside it
    bottom = rows[-1].bottom + (WARNING_RULE if rows[-1].row.pieces else 0)
    label_bottom = min(bottom, top + slot(small) + NOTICE_PAD) if stacked else bottom
    label_right = right if stacked else left + NOTICE_LABEL
    middle = (top + label_bottom) // 2
    label = plain_words(word.capitalize() if word == "note" else word.upper(), Font.BOLD)
    wide = length(line_width(label), small)
    base = middle + cap_height(Font.BOLD, small) // 2
    centred = left + (NOTICE_LABEL - wide) // 2
    match word:
        case "warning":
            half = WARNING_RULE // 2
            yield Box(left, top, label_right - left, label_bottom - top, fill=Ink.BLACK)
            yield Box(left + half, top + half, right - left - half * 2, bottom - top - half * 2, stroke=WARNING_RULE)
            yield from set_line(label, centred, base, small, Ink.WHITE)
        case "caution":
            half = -(-CAUTION_RULE // 2)
            yield Box(left + half, top + half, right - left - half * 2, bottom - top - half * 2, stroke=CAUTION_RULE)
            for x in (label_right - _DOUBLE, label_right) if not stacked else ():
                yield Line(((x, top), (x, bottom)), CAUTION_RULE)
            for y in (label_bottom - _DOUBLE, label_bottom) if stacked else ():
                yield Line(((left, y), (right, y)), CAUTION_RULE)
            yield from set_line(label, centred, base, small)
        case _:
            for y in (top + HAIRLINE // 2, bottom - HAIRLINE // 2):
                yield Line(((left, y), (right, y)), HAIRLINE)
            if not stacked:  # on the line of the text
                text = next((one for one in rows if one.row.pieces), rows[0])
                base = text.top + text.row.base
            yield from set_line(label, left, base, small)
