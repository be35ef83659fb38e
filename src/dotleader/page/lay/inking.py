"""Rows that have been given their places, as drawn things."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from dotleader.page.drawn import Drawn, Line
from dotleader.page.laid import LabelSlot
from dotleader.page.lay.rows import Row
from dotleader.page.lay.signs import arrow, choice_mark, leader_line
from dotleader.page.type.breaking import set_line


class Placed(NamedTuple):
    """A row and the y of its top on the face."""

    row: Row
    top: int

    @property
    def bottom(self) -> int:
        return self.top + self.row.height

    @property
    def middle(self) -> int:
        return self.top + self.row.middle


def ink_row(placed: Placed) -> Iterator[Drawn]:
    """What stands in a row, in reading order."""
    row, top = placed
    base, middle = top + row.base, top + row.middle
    if row.rule:
        y = top + row.rule.width // 2
        yield Line(((row.rule.left, y), (row.rule.right, y)), row.rule.width)
    if row.choice is not None:
        yield choice_mark(row.choice, middle)
    for place, piece in enumerate(row.pieces):
        if row.arrow and place == len(row.pieces) - 1:
            yield from arrow(*row.arrow, middle)
        if row.leader and place == len(row.pieces) - 1:
            yield leader_line(row.leader, base)
        yield from set_line(piece.line, piece.x, base, piece.size)


def slots_of(placed: Sequence[Placed]) -> Iterator[LabelSlot]:
    """Room for the labels, centred on the capitals beside them."""
    for one in placed:
        if one.row.slot:
            x, height, target = one.row.slot
            yield LabelSlot(x, one.middle - height // 2, height, target)
