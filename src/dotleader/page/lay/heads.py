"""What stands above the body: the title and the line under it, and what a further face repeats of them."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.page.drawn import Font
from dotleader.page.laid import Frame
from dotleader.page.lay.measures import BODY_GAP, TITLE, TRIGGER, Setting, grown, smallest_in
from dotleader.page.lay.outline import Hold, Rail
from dotleader.page.lay.rows import Piece, Row, text_row
from dotleader.page.type.breaking import Line, balanced, room_of
from dotleader.page.type.words import Words, followed, plain_words
from dotleader.source.record import record

_CONTINUED = plain_words("continued", Font.BOLD)
_REPEATED = 2
"""Lines that a further face repeats of a title, and of a condition; the first has all of them. And so many
conditions: a card has two levels."""


@record
class Head:
    """`rows` on the first face, `again` on the further ones; the body begins `BODY_GAP` below."""

    rows: tuple[Row, ...]
    again: tuple[Row, ...]


def head_of(title: str, under: Words, says: str, frame: Frame, again: Words = _CONTINUED) -> Head:
    """A title of 20 and the line under it of 13 (`says` is its text); on further faces `again` in its place."""
    least = smallest_in(frame)
    size, small = grown(TITLE, least), grown(TRIGGER, least)
    lines = balanced(plain_words(title, Font.BOLD), room_of(frame.width, size)) or [()]
    rows = _said(_rows(lines, 0, size), title)
    below = _said(_rows(balanced(under, room_of(frame.width, small)), 0, small), says)
    repeated = _said(_rows(_shortened(lines), 0, size), title)
    sign = _said(_rows([again], 0, small), " ".join(word.text for word in again))
    return Head((*rows, *below), (*repeated, *sign))


def carried(rails: Iterable[Rail], setting: Setting) -> list[tuple[Rail, list[Row]]]:
    """Conditions that a further face goes on under, said again, the outer one first."""
    found = []
    for rail in [*rails][-_REPEATED:]:
        words = followed(rail.words, ",") + _CONTINUED
        left = setting.left(rail.level)
        lines = _shortened(balanced(words, setting.room(left, setting.width, setting.small)))
        said = " ".join(word.text for word in rail.words)
        rows = _said(_rows(lines, left, setting.small), f"{'  ' * rail.level}{said}, continued")
        found.append((rail, rows))
    return found


def body_space(rows: Iterable[Row]) -> int:
    """How high rows that stand above the body are, with the white below them."""
    return sum(row.height for row in rows) + BODY_GAP


def _rows(lines: Iterable[Line], left: int, size: int) -> list[Row]:
    return [text_row(-1, Hold.KEEP, size, Piece(left, line, size)) for line in lines]


def _said(rows: list[Row], says: str) -> list[Row]:
    return [rows[0]._replace(says=(says,) if says else ()), *rows[1:]] if rows else rows


def _shortened(lines: list[Line]) -> list[Line]:
    if len(lines) <= _REPEATED:
        return lines
    last = lines[_REPEATED - 1]
    return [*lines[: _REPEATED - 1], last[:-1] + plain_words("…", Font.BOLD)]
