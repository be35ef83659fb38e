"""Rows of cells under column heads, the columns as wide as what stands in them asks for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dotleader.page.breaking import length, line_width, room_of, set_line, without_orphan
from dotleader.page.drawn import Drawn, Font, Line, mm, pt
from dotleader.page.flow import Strip
from dotleader.page.measures import base_in_slot, slot
from dotleader.page.words import Words, plain_words

COLUMN_GAP = mm(3)
WIDEST_SPARE = mm(9)
ROW_AIR = mm(0.7)
"""Above and below the text of a row."""

HEAD_RULE = pt(1)
ROW_RULE = pt(0.4)


@dataclass(frozen=True, slots=True)
class Table:
    """`head` is repeated on every face. A row with an empty first cell belongs to the row above it."""

    head: Strip
    rows: tuple[Strip, ...]


def table(heads: Sequence[str], rows: Sequence[Sequence[Words]], width: int, size: int) -> Table:
    """A table as wide as the frame; a cell wraps in its column."""
    titles = [plain_words(head, Font.BOLD) for head in heads]
    columns = _columns([titles, *rows], width, size)
    head = _row(titles, columns, size, (Line(((0, 0), (width, 0)), HEAD_RULE),), at_foot=True)
    drawn = []
    for number, cells in enumerate(rows):
        ruled = number > 0 and bool(cells[0])
        rule = (Line(((0, 0), (width, 0)), ROW_RULE),) if ruled else ()
        follows = number + 1 < len(rows) and not rows[number + 1][0]
        drawn.append(_row(cells, columns, size, rule, keep=follows))
    return Table(head, tuple(drawn))


def _columns(rows: Sequence[Sequence[Words]], width: int, size: int) -> list[tuple[int, int]]:
    """Left edge and width of each column.

    Each has what it asks for while there is room; then the widest give way, but none below its longest word
    as long as that is possible at all.
    """
    count = len(rows[0])
    asked = [max(length(line_width(row[at]), size) for row in rows) for at in range(count)]
    least = [
        max((length(word.width, size) for row in rows for word in row[at]), default=0) + 1 for at in range(count)
    ]
    room = width - (count - 1) * COLUMN_GAP
    widths = _shared(asked, least, room)
    # What is left over stands between the columns, but never so much that the eye loses its line.
    spare = max(0, room - sum(widths)) // max(1, count - 1)
    gap = COLUMN_GAP + min(spare, WIDEST_SPARE)
    lefts, left = [], 0
    for one in widths:
        lefts.append((left, one))
        left += one + gap
    return lefts


def _shared(asked: Sequence[int], least: Sequence[int], room: int) -> list[int]:
    widths = list(asked)
    over = sum(widths) - room
    while over > 0:
        free = [at for at, one in enumerate(widths) if one > least[at]]
        if not free:
            break
        widest = max(free, key=lambda at: widths[at])
        others = sorted((widths[at] for at in free if widths[at] < widths[widest]), reverse=True)
        down_to = max(least[widest], others[0] if others else 0, widths[widest] - over)
        step = max(1, widths[widest] - down_to) if down_to < widths[widest] else 1
        widths[widest] -= step
        over -= step
    if over > 0:  # not even the longest words fit beside each other: all give way alike
        widths = [max(1, one * room // sum(widths)) for one in widths]
    return widths


def _row(
    cells: Sequence[Words],
    columns: Sequence[tuple[int, int]],
    size: int,
    rules: tuple[Drawn, ...],
    keep: bool = False,
    at_foot: bool = False,
) -> Strip:
    broken_cells = [
        without_orphan(cell, room_of(wide, size) + 1) for cell, (_, wide) in zip(cells, columns, strict=True)
    ]
    lines = max(1, *(len(one) for one in broken_cells))
    height = lines * slot(size) + 2 * ROW_AIR
    items = tuple(
        drawn
        for cell, (left, _) in zip(broken_cells, columns, strict=True)
        for number, line in enumerate(cell)
        for drawn in set_line(line, left, ROW_AIR + number * slot(size) + base_in_slot(size), size)
    )
    said = "  ".join(" ".join(word.text for word in cell) for cell in cells if cell)
    ruled = tuple(_at(rule, height) for rule in rules) if at_foot else rules
    return Strip(height, (*ruled, *items), (said,) if said else (), keep=keep)


def _at(rule: Drawn, y: int) -> Drawn:
    assert isinstance(rule, Line)
    return Line(tuple((x, y) for x, _ in rule.points), rule.width)


def cells(*texts: str, symbols: frozenset[str] = frozenset(), bold: Sequence[int] = ()) -> tuple[Words, ...]:
    """Texts as the cells of a row; those at the places `bold` are bold."""
    return tuple(
        plain_words(text, Font.BOLD if at in bold else Font.REGULAR, symbols) for at, text in enumerate(texts)
    )


def row_strips(made: Table) -> Iterator[Strip]:
    """The table within running text: its head once."""
    yield Strip(made.head.height, made.head.items, made.head.says, keep=True)
    yield from made.rows
