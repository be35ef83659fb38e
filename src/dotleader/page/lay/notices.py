"""Notices in three looks that differ in black and white: a black label, a double rule, two hairlines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.drawn import Box, Drawn, Font, Ink, Line, mm, pt
from dotleader.page.lay.inking import Placed
from dotleader.page.lay.measures import HAIRLINE, Setting, base_in_slot, slot
from dotleader.page.lay.rows import Piece, Row, text_row
from dotleader.page.type.breaking import length, line_width, set_line, without_orphan
from dotleader.page.type.metrics import width
from dotleader.page.type.words import Words, plain_words
from dotleader.source.record import replace

_WARNING_RULE = pt(2.2)
_CAUTION_RULE = pt(1)
_DOUBLE = mm(1)  # between the rules of a double rule

_PAD = mm(1.2)  # above and below the text
_BESIDE_LABEL = mm(2.3)
_AFTER_LABEL = mm(3)
_ABOVE_LABEL = mm(0.8)
_BELOW_LABEL = mm(0.4)
_RIGHT = mm(2.4)

_NARROW = mm(40)  # with less room for the text, the label stands above it


def notice_rows(words: Words, at: int, edges: tuple[int, int], setting: Setting, hold: int) -> list[Row]:
    """The text's rows, with room for the box round them."""
    left, right = edges
    above = _stacked(edges, setting.small)
    start = left + (_RIGHT if above else _label_width(setting.small) + _AFTER_LABEL)
    size = setting.notice
    lines = without_orphan(words, setting.room(start, right - _RIGHT, size)) or [()]
    top = _zone(setting.small) + _BELOW_LABEL if above else _PAD
    rows = [
        text_row(at, hold, size, Piece(start, line, size), pad=0 if place else top) for place, line in enumerate(lines)
    ]
    rows[-1] = rows[-1]._replace(height=rows[-1].height + _PAD)
    return rows


def notice_box(
    word: str, rows: Sequence[Placed], edges: tuple[int, int], small: int, whole: tuple[bool, bool]
) -> Iterator[Drawn]:
    """What stands round the rows, and the label; `whole` is whether they begin and end on this face."""
    left, right = edges
    top = rows[0].top - (0 if whole[0] else _WARNING_RULE)
    bottom = rows[-1].bottom + (0 if whole[1] else _WARNING_RULE)
    above = _stacked(edges, small)
    zone = Box(left, top, right - left, _zone(small)) if above else Box(left, top, _label_width(small), bottom - top)
    labelled = whole[0] or not above
    match word:
        case "warning":
            if labelled:
                yield replace(zone, fill=Ink.BLACK)
            yield _edge(left, top, right, bottom, _WARNING_RULE)
        case "caution":
            yield _edge(left, top, right, bottom, _CAUTION_RULE)
            if labelled:
                yield from _double(zone, above)
        case _:
            for y in (top + HAIRLINE // 2, bottom - HAIRLINE // 2):
                yield Line(((left, y), (right, y)), HAIRLINE)
    if whole[0]:
        yield from _label(word, zone, rows[0], above, small)


def _label(word: str, zone: Box, first: Placed, above: bool, small: int) -> Iterator[Drawn]:
    """In the middle of a box; a note's at the left, on the line of its text."""
    label = plain_words(word.capitalize() if word == "note" else word.upper(), Font.BOLD)
    x = zone.x if word == "note" else zone.x + (zone.w - length(line_width(label), small)) // 2
    if above:
        base, x = zone.y + _ABOVE_LABEL + base_in_slot(small), zone.x + (0 if word == "note" else _RIGHT)
    elif word == "note":
        base = first.top + first.row.base
    else:
        base = zone.y + (zone.h - slot(small)) // 2 + base_in_slot(small)
    yield from set_line(label, x, base, small, Ink.WHITE if word == "warning" else Ink.BLACK)


def _double(zone: Box, above: bool) -> Iterator[Line]:
    right, bottom = zone.x + zone.w, zone.y + zone.h
    for back in (_DOUBLE, 0):
        if above:
            yield Line(((zone.x, bottom - back), (right, bottom - back)), _CAUTION_RULE)
        else:
            yield Line(((right - back, zone.y), (right - back, bottom)), _CAUTION_RULE)


def _edge(left: int, top: int, right: int, bottom: int, stroke: int) -> Box:
    """A box whose rule stands inside."""
    half = -(-stroke // 2)
    return Box(left + half, top + half, right - left - half * 2, bottom - top - half * 2, stroke=stroke)


def _stacked(edges: tuple[int, int], small: int) -> bool:
    return edges[1] - edges[0] - _label_width(small) - _AFTER_LABEL < _NARROW


def _label_width(small: int) -> int:
    """Of every label, so that texts stand under one another."""
    return width("WARNING", Font.BOLD, small) + 2 * _BESIDE_LABEL


def _zone(small: int) -> int:
    """How high the label's part is where it stands above the text."""
    return _ABOVE_LABEL + slot(small) + _BELOW_LABEL + _DOUBLE
