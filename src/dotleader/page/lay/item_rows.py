"""An item's rows: number, challenge, leader, response in its column, and the detail below."""

from __future__ import annotations

import sys

from dotleader.page.drawn import Font
from dotleader.page.lay.columns import Need, challenge_end, column_for, leader, usual_column
from dotleader.page.lay.measures import DETAIL, DOT_PITCH, LEADER_GAP, NARROW, NUMBER_GAP, Setting
from dotleader.page.lay.outline import ItemLine
from dotleader.page.lay.rows import Leader, Piece, Row, text_row
from dotleader.page.type.breaking import (
    Line,
    balanced,
    broken,
    ending_before,
    in_two,
    length,
    line_width,
    without_orphan,
)
from dotleader.page.type.words import plain_words


def item_rows(item: ItemLine, at: int, edges: tuple[int, int], column: int, setting: Setting, hold: int) -> list[Row]:
    """Rows of item number `at` of the outline, between the left and right edge, its response in the column."""
    left, right = edges
    size, small = setting.size, setting.small
    rows = [
        text_row(at, hold, small, Piece(left, line, small))
        for line in broken(item.fitted, setting.room(left, right, small))
    ]
    challenge = _challenge_lines(item, left, right, column, setting)
    response = _response_lines(item, column, right, setting)
    last = len(challenge) - 1
    for place in range(max(len(challenge), last + len(response))):
        pieces = []
        if place <= last and challenge[place]:
            pieces.append(Piece(left, challenge[place], size))
        if place >= last and place - last < len(response):
            pieces.append(Piece(column, response[place - last], size))
        row = text_row(at, hold, size, *pieces)
        if place == 0:
            number = (number_piece(item.number, setting),) if item.number else ()
            mark = setting.choice(left) if item.choice else None
            row = row._replace(pieces=(*number, *pieces), choice=mark)
        if place == last and response:
            ends = left + length(line_width(challenge[last]), size) if challenge[last] else left - LEADER_GAP
            dots = leader(ends, column)
            row = row._replace(leader=Leader(*dots, item.critical) if dots else None)
        rows.append(row)
    start = left + DETAIL
    for words in item.details:
        for line in without_orphan(words, setting.room(start, right, small)):
            rows.append(text_row(at, hold, small, Piece(start, line, small)))
    return rows


def number_piece(number: str, setting: Setting) -> Piece:
    """A number in the gutter, its right edge where all numbers have it."""
    line = plain_words(number, Font.REGULAR)
    return Piece(setting.gutter - NUMBER_GAP - length(line_width(line), setting.small), line, setting.small)


def need_of(item: ItemLine, left: int, right: int, setting: Setting) -> Need:
    """What the item asks of its block's column."""
    size = setting.size
    more = _more_leader(item, setting)
    end = parted_end = left + length(line_width(item.challenge), size) + more
    if column_for(end, setting.width) > usual_column(setting.width):
        above, below = in_two(item.challenge, sys.maxsize, sys.maxsize) or ((), item.challenge)
        first, last = (left + length(line_width(line), size) + more for line in (above, below))
        parted_end = max(challenge_end(first + LEADER_GAP, setting.width), last)
    return Need(item.block, left, end, parted_end, right - length(line_width(item.response), size))


def _challenge_lines(item: ItemLine, left: int, right: int, column: int, setting: Setting) -> list[Line]:
    """As few lines as there can be, all left of the column if that gives two at most; the last leaves room for dots."""
    size = setting.size
    if not item.response:
        return balanced(item.challenge, setting.room(left, right, size)) or [()]
    ends = challenge_end(column, setting.width) - _more_leader(item, setting)
    last = setting.room(left, ends, size) if ends > left else 0
    if line_width(item.challenge) <= last:
        return [item.challenge]
    if column - LEADER_GAP > left:
        lines = in_two(item.challenge, setting.room(left, column - LEADER_GAP, size), last)
        if lines:
            return list(lines)
    return ending_before(item.challenge, setting.room(left, right, size), last) or [()]


def _more_leader(item: ItemLine, setting: Setting) -> int:
    """What a critical item's leader is longer at least where leaders are short: a line of two dots is a hyphen."""
    return DOT_PITCH if item.critical and setting.width < NARROW else 0


def _response_lines(item: ItemLine, column: int, right: int, setting: Setting) -> list[Line]:
    return balanced(item.response, setting.room(column, right, setting.size))
