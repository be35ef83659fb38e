"""The closed vocabulary between layout and outputs: text, line, box, picture, link, group.

All lengths are whole micrometres (1 mm = 1000), x to the right and y *down* from the upper left corner of whatever
holds the thing (a face, a sheet, a group). Type sizes are in thousandths of a point, as type is measured in points.
A new output is one walker over these.
"""

from __future__ import annotations

from enum import Enum
from typing import TypeAlias

from dotleader.source.record import record

MM = 1000


def mm(value: float) -> int:
    """Whole micrometres of a length in millimetres."""
    return round(value * MM)


def pt(value: float) -> int:
    """Whole micrometres of a length (a stroke, a pitch) in points."""
    return round(value * 25400 / 72)


class Font(Enum):
    REGULAR = "regular"
    BOLD = "bold"


class Ink(Enum):
    """The few inks there are; the memory ground is the only colour (NASA CR-177605 no. 15: white or yellow)."""

    BLACK = "black"
    WHITE = "white"
    MEMORY = "memory"  # pale yellow ground of memory items; white when printing black only
    NONE = "none"


@record
class Text:
    """One run on one baseline, left edge at x. `turn` in degrees counter-clockwise about (x, y): 0, 90, 180, 270.

    `hollow` > 0 draws the outlines of the letters with a stroke of that width, and nothing inside them.
    """

    x: int
    y: int
    string: str
    size: int  # thousandths of a point
    font: Font = Font.REGULAR
    ink: Ink = Ink.BLACK
    turn: int = 0
    hollow: int = 0


@record
class Line:
    """A path of straight parts through `points`; `dots` > 0 draws round dots of `width` at that pitch instead.

    `closed` joins the last point to the first; `fill` fills what is enclosed. A width of 0 strokes nothing.
    """

    points: tuple[tuple[int, int], ...]
    width: int
    closed: bool = False
    fill: Ink = Ink.NONE
    ink: Ink = Ink.BLACK
    dots: int = 0


@record
class Box:
    """A rectangle from its upper left corner, stroked centred on its edge; with radius = w / 2 = h / 2 a circle."""

    x: int
    y: int
    w: int
    h: int
    fill: Ink = Ink.NONE
    stroke: int = 0
    radius: int = 0


@record
class Picture:
    """A raster picture by the name under which the caller hands its bytes to the output."""

    x: int
    y: int
    w: int
    h: int
    name: str


@record
class Link:
    """An active area that leads to the face of that label within the same document."""

    x: int
    y: int
    w: int
    h: int
    label: str


@record
class Group:
    """Things drawn together, shifted by (x, y) and turned by `turn` degrees counter-clockwise about that point.

    `role` names what the group is on a face ("head", "body", "foot", "label", "bar", "draft" ...): digests leave out
    the roles that may change without the face having changed.
    """

    x: int
    y: int
    items: tuple[Drawn, ...]
    turn: int = 0
    role: str = ""


Drawn: TypeAlias = Text | Line | Box | Picture | Link | Group
