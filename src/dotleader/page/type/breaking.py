"""Words to lines, and a line to drawn text.

Rooms and widths are in thousandths of the em, so that a text is broken in the same way however it is measured.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeAlias

from dotleader.page.drawn import Font, Ink, Text
from dotleader.page.type.words import LOWERED, Word, Words, parted, width_of

Line: TypeAlias = Words

DROP = 160
"""How far a subscript stands below the baseline, in thousandths of the em."""

_BALANCED_LINES = 4  # a longer text is prose: its last line may be short

_NEAR = 300  # how near evenness is looked for, in thousandths of the em: about a space

# What a break is worth besides even lines, in thousandths of the em: after a plus it parts two things, after a comma
# two thoughts; a line should not end in a word that leans on the next. Our own figures.
_AFTER_PLUS = 20_000
_AFTER_STOP = 4_000
_LEANING = 2_500
# fmt: off
_LEANS = frozenset((
    "a", "above", "an", "and", "are", "as", "at", "be", "below", "by", "for", "from", "if", "in", "is", "no", "not",
    "of", "on", "or", "than", "the", "then", "to", "until", "with",
))
# fmt: on


def length(thousandths: int, size: int) -> int:
    """Micrometres of thousandths of the em at a size in thousandths of a point; halves go up."""
    return (thousandths * size * 127 + 180_000) // 360_000


def room_of(micrometres: int, size: int) -> int:
    """How many thousandths of the em fit into a length; at least one, so that every text can be broken."""
    return max(1, micrometres * 360_000 // (size * 127))


def line_width(line: Sequence[Word]) -> int:
    """In thousandths of the em, spaces included."""
    width = -line[0].space if line else 0
    for word in line:
        width += word.space + word.width
    return width


def broken(words: Words, room: int) -> list[Line]:
    """Lines filled from the first; no line at all for no words. A word longer than the room is parted."""
    lines: list[Line] = []
    line: list[Word] = []
    width = 0
    for word in _fitting(words, room):
        step = word.width + (word.space if line else 0)
        if line and width + step > room:
            lines.append(tuple(line))
            line, step, width = [], word.width, 0
        line.append(word)
        width += step
    if line:
        lines.append(tuple(line))
    return lines


def balanced(words: Words, room: int) -> list[Line]:
    """As few lines as `broken` gives, broken by sense and as even as can be: for titles, conditions, responses."""
    lines = broken(words, room)
    if len(lines) == 2:
        return list(in_two(words, room, room) or lines)
    if not 2 < len(lines) <= _BALANCED_LINES or any(word.width > room for word in words):
        return lines
    low, high = max(word.width for word in words), room
    while high - low > _NEAR:
        middle = (low + high) // 2
        if len(broken(words, middle)) > len(lines):
            low = middle + 1
        else:
            high = middle
    return broken(words, high)


def in_two(words: Words, room: int, last: int) -> tuple[Line, Line] | None:
    """The best two lines, the first at most `room` wide and the second `last`; none where there are none."""
    best: tuple[int, int] | None = None
    for cut in range(1, len(words)):
        above, below = line_width(words[:cut]), line_width(words[cut:])
        if above <= room and below <= last:
            cost = max(above, below) + _cost(words[cut - 1])
            best = min(best or (cost, cut), (cost, cut))
    return (words[: best[1]], words[best[1] :]) if best else None


def _cost(before: Word) -> int:
    """Of a break after this word."""
    text = before.text
    if text == "+":
        return -_AFTER_PLUS
    if text.endswith((",", ";", ":", ".")):
        return -_AFTER_STOP
    return _LEANING if text.casefold() in _LEANS else 0


def without_orphan(words: Words, room: int) -> list[Line]:
    """Lines filled from the first, but never a single word on the last when the one above can spare its own."""
    lines = broken(words, room)
    if len(lines) > 1 and len(lines[-1]) == 1 and len(lines[-2]) > 2:
        *kept, moved = lines[-2]
        tail = (moved, *lines[-1])
        if line_width(tail) <= room:
            lines[-2:] = [tuple(kept), tail]
    return lines


def ending_before(words: Words, room: int, last: int) -> list[Line]:
    """Lines of which the last is at most `last` wide: something follows it.

    Where its last word alone is wider, an empty line follows.
    """
    lines = broken(words, room)
    if not lines or line_width(lines[-1]) <= last:
        return lines
    tail = lines.pop()
    return [*lines, *(in_two(tail, room, last) or (tail, ()))]


def set_line(line: Line, x: int, base: int, size: int, ink: Ink = Ink.BLACK) -> Iterator[Text]:
    """The line's texts, left edge at x, on a baseline: one for each run of a font, subscripts apart."""
    for at, string, font, lowered in _runs(line):
        left = x + length(at, size)
        if lowered:
            yield Text(left, base + length(DROP, size), string, size * LOWERED // 1000, font, ink)
        else:
            yield Text(left, base, string, size, font, ink)


def _runs(line: Line) -> list[tuple[int, str, Font, bool]]:
    runs: list[tuple[int, str, Font, bool]] = []
    at = 0
    for place, word in enumerate(line):
        space = " " if place else ""
        at += word.space if place else 0
        for string, lowered in word.pieces:
            if runs and not lowered and not runs[-1][3] and runs[-1][2] is word.font:
                start, before, font, _ = runs[-1]
                runs[-1] = (start, before + space + string, font, False)
            else:
                runs.append((at, string, word.font, lowered))
            at += width_of(string, lowered, word.font)
            space = ""
    return runs


def _fitting(words: Words, room: int) -> Iterator[Word]:
    for word in words:
        if word.width <= room:
            yield word
        else:
            yield from parted(word, room)
