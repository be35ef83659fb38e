"""Rows of cells under column heads, the columns as wide as what stands in them asks for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.drawn import Drawn, Font, Line, mm, pt
from dotleader.page.lay.flow import Strip
from dotleader.page.lay.measures import base_in_slot, slot
from dotleader.page.type.breaking import length, line_width, room_of, set_line, without_orphan
from dotleader.page.type.words import Words, plain_words
from dotleader.source.record import record

COLUMN_GAP = mm(3.5)
WIDEST_SPARE = mm(9)
_STEP = mm(1)
_MOST_LINES = 10
ROW_AIR = mm(0.7)
"""Above and below the text of a row."""

HEAD_RULE = pt(1)
ROW_RULE = pt(0.4)


@record
class Table:
    """`head` is repeated on every face. A row with an empty first cell belongs to the row above it."""

    head: Strip
    rows: tuple[Strip, ...]


def table(heads: Sequence[str], rows: Sequence[Sequence[Words]], width: int, size: int, air: int = ROW_AIR) -> Table:
    """A table as wide as the frame; a cell wraps in its column. `air` is left above and below the text of a row."""
    return next(tables(heads, rows, width, size, (air,)))


def tables(
    heads: Sequence[str], rows: Sequence[Sequence[Words]], width: int, size: int, airs: Sequence[int]
) -> Iterator[Table]:
    """The same table with one air after another, for whoever looks for the one that fits."""
    titles = [plain_words(head, Font.BOLD) for head in heads]
    columns = _columns([titles, *rows], width, size)
    lines = [_broken(row, columns, size) for row in rows]
    for above, (below, following) in zip(lines, zip(lines[1:], rows[1:], strict=True), strict=False):
        if not following[0]:  # a long name goes on beside the rows that belong to it
            height = max(1, *(len(cell) for cell in above[1:]))
            below[0], above[0] = above[0][height:], above[0][:height]
    for air in airs:
        head = _row(_broken(titles, columns, size), titles, columns, size, air, (0, width))
        drawn: list[Strip] = []
        for number, (some, cells) in enumerate(zip(lines, rows, strict=True)):
            follows = number + 1 < len(rows) and not rows[number + 1][0]
            ruled = width if number and cells[0] else 0
            drawn.extend(_parts(some, cells, columns, size, air, ruled, follows))
        yield Table(head, tuple(drawn))


def _broken(cells: Sequence[Words], columns: Sequence[tuple[int, int]], size: int) -> list[list[Words]]:
    """Each cell's lines in its column."""
    return [without_orphan(cell, room_of(wide, size) + 1) for cell, (_, wide) in zip(cells, columns, strict=True)]


def crowded(heads: Sequence[str], rows: Sequence[Sequence[Words]], width: int, size: int) -> bool:
    """Whether the longest words of the columns do not find room beside each other."""
    least = _least([[plain_words(head, Font.BOLD) for head in heads], *rows], size)
    return sum(least) + (len(heads) - 1) * COLUMN_GAP > width


def _least(rows: Sequence[Sequence[Words]], size: int) -> list[int]:
    """The longest word of each column, and a little more."""
    columns = range(len(rows[0]))
    return [max((length(word.width, size) for row in rows for word in row[at]), default=0) + 1 for at in columns]


def _columns(rows: Sequence[Sequence[Words]], width: int, size: int) -> list[tuple[int, int]]:
    """Left edge and width of each column.

    Each has what it asks for while there is room, and none less than its longest word as long as that is possible.
    """
    count = len(rows[0])
    asked = [[length(line_width(cell), size) for cell in row] for row in rows]
    least = _least(rows, size)
    room = width - (count - 1) * COLUMN_GAP
    widths = _shared([max(row[at] for row in asked) for at in range(count)], least, asked, room)
    # What is left over stands between the columns, but never so much that the eye loses its line.
    spare = max(0, room - sum(widths)) // max(1, count - 1)
    gap = COLUMN_GAP + min(spare, WIDEST_SPARE)
    lefts, left = [], 0
    for one in widths:
        lefts.append((left, one))
        left += one + gap
    return lefts


def _shared(widths: list[int], least: Sequence[int], rows: Sequence[Sequence[int]], room: int) -> list[int]:
    """Column widths within a room. `rows` are the widths of the cells.

    Step by step, the column gives way that costs the fewest lines; of several, the widest.
    """
    while sum(widths) > room:
        step = min(_STEP, sum(widths) - room)
        free = [at for at, one in enumerate(widths) if one > least[at]]
        if not free:  # not even the longest words fit beside each other: all give way alike
            whole = sum(widths)
            return [max(1, one * room // whole) for one in widths]
        tried = [[*widths[:at], max(least[at], widths[at] - step), *widths[at + 1 :]] for at in free]
        widths = min(tried, key=lambda some: (_lines(some, rows), max(some)))
    return widths


def _lines(widths: Sequence[int], rows: Sequence[Sequence[int]]) -> int:
    """About how many lines the rows take."""
    return sum(max(-(-cell // wide) for cell, wide in zip(row, widths, strict=True)) for row in rows)


def _parts(
    lines: Sequence[Sequence[Words]],
    cells: Sequence[Words],
    columns: Sequence[tuple[int, int]],
    size: int,
    air: int,
    ruled: int,
    follows: bool,
) -> Iterator[Strip]:
    """A row; a very high one in parts, so that none is higher than a face. The first says all its texts."""
    high = max(1, *(len(cell) for cell in lines))
    for start in range(0, high, _MOST_LINES):
        part = [cell[start : start + _MOST_LINES] for cell in lines]
        said = cells if start == 0 else ()
        yield _row(part, said, columns, size, air, (0 if start else ruled, 0), follows)


def _row(
    lines: Sequence[Sequence[Words]],
    cells: Sequence[Words],
    columns: Sequence[tuple[int, int]],
    size: int,
    air: int,
    rules: tuple[int, int],
    keep: bool = False,
) -> Strip:
    """A row; `rules` are the lengths of those at its top and at its bottom, 0 for none."""
    above, below = rules
    height = max(1, *(len(cell) for cell in lines)) * slot(size) + 2 * air
    items: list[Drawn] = []
    if above:
        items.append(Line(((0, 0), (above, 0)), ROW_RULE))
    if below:
        items.append(Line(((0, height), (below, height)), HEAD_RULE))
    for cell, (left, _) in zip(lines, columns, strict=True):
        for number, line in enumerate(cell):
            items.extend(set_line(line, left, air + number * slot(size) + base_in_slot(size), size))
    said = "  ".join(" ".join(word.text for word in cell) for cell in cells if cell)
    return Strip(height, tuple(items), (said,) if said else (), keep=keep)


def cells(*texts: str, symbols: frozenset[str] = frozenset(), bold: Sequence[int] = ()) -> tuple[Words, ...]:
    """Texts as the cells of a row; those at the places `bold` are bold."""
    return tuple(plain_words(text, Font.BOLD if at in bold else Font.REGULAR, symbols) for at, text in enumerate(texts))


def row_strips(made: Table) -> Iterator[Strip]:
    """The table within running text: its head once."""
    yield Strip(made.head.height, made.head.items, made.head.says, keep=True)
    yield from made.rows
