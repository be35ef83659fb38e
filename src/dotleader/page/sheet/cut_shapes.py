"""The closed vocabulary of cut files: circle, closed outline, open line, each on a layer. Data only.

Whole micrometres from the upper left corner of the sheet's front, x to the right and y down, as in all of `page`.
"""

from __future__ import annotations

from enum import Enum
from typing import TypeAlias

from dotleader.source.record import record

Point: TypeAlias = tuple[int, int]


class Layer(Enum):
    """`value` is the layer's name in a file. What is cut or scored, then what the eye or the machine finds the sheet
    by."""

    HOLES = "holes"
    FOLDS = "folds"
    OUTLINES = "outlines"
    REGISTRATION = "registration"
    POUCH = "pouch"
    PAPER = "paper"

    @property
    def is_cut(self) -> bool:
        return self in (Layer.HOLES, Layer.OUTLINES)

    @property
    def is_scored(self) -> bool:
        """Whether the paper is creased along it, not cut through."""
        return self is Layer.FOLDS


@record
class Straight:
    """On to a point."""

    x: int
    y: int


@record
class Arc:
    """On to a point by a part of a circle that is less than half of it; `clockwise` as the sheet is looked at."""

    x: int
    y: int
    radius: int
    clockwise: bool = True


Part: TypeAlias = Straight | Arc


@record
class Circle:
    x: int
    y: int
    radius: int


@record
class Outline:
    """A closed path: the last part ends where it starts."""

    start: Point
    parts: tuple[Part, ...]


@record
class Open:
    """A path with two ends."""

    start: Point
    parts: tuple[Part, ...]


Shape: TypeAlias = Circle | Outline | Open


@record
class Cut:
    layer: Layer
    shape: Shape


@record
class Cutting:
    """How the sheets of one arrangement are cut, in the order in which it is done.

    `number` counts from 1; `sheets` are the numbers of the sheets that are cut so.
    """

    number: int
    sheets: tuple[int, ...]
    paper: tuple[int, int]
    cuts: tuple[Cut, ...]

    def on(self, layer: Layer) -> tuple[Shape, ...]:
        return tuple(cut.shape for cut in self.cuts if cut.layer is layer)

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to cut or to score: a leaf as large as its paper, square corners and no holes."""
        return not any(cut.layer.is_cut or cut.layer.is_scored for cut in self.cuts)
