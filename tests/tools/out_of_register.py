"""A printer that is out of register, and the eye that reads the calibration sheet; both simulated on what a PDF has.

The ink of every back is stretched about the middle of the paper, turned a little, and shifted, as seen from the front
through the paper: what is at (x, y) of a back is seen at (W - x, y) where the sheet is turned about its long edge, at
(x, H - y) about its short edge. The eye looks for the line of the front that a line of the back goes on in, and reads
the figures that are printed there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pdfplumber

MM = 72 / 25.4
Line = tuple[float, float, float, float]
"""Left, top, right, bottom in millimetres, y down."""


@dataclass(frozen=True)
class Machine:
    """What a printer does to backs, as seen from the front: millimetres, parts of one, radians."""

    right: float = 0.0
    down: float = 0.0
    wider: float = 0.0
    longer: float = 0.0
    askew: float = 0.0

    def lands(self, x: float, y: float, width: float, height: float, edge: str = "long-edge") -> tuple[float, float]:
        """Where a point of the back's page is seen from the front.

        The paper goes the same way for both edges, and a machine does the same to it.
        """
        x, y = (width - x, y) if edge == "long-edge" else (x, height - y)
        x, y = (x - width / 2) * (1 + self.wider), (y - height / 2) * (1 + self.longer)
        cos, sin = math.cos(self.askew), math.sin(self.askew)
        return width / 2 + x * cos - y * sin + self.right, height / 2 + x * sin + y * cos + self.down

    def lines(self, page: Any, edge: str = "long-edge") -> list[Line]:
        size = page.width / MM, page.height / MM
        ends = [(self.lands(x, y, *size, edge), self.lands(p, q, *size, edge)) for x, y, p, q in lines(page)]
        return [(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])) for a, b in ends]


def lines(page: Any) -> list[Line]:
    """`Any` at the border to pdfplumber."""
    return [(line["x0"] / MM, line["top"] / MM, line["x1"] / MM, line["bottom"] / MM) for line in page.lines]


@dataclass(frozen=True)
class Seen:
    """The calibration sheet held against the light: lines of both sides, words of the front."""

    width: float
    height: float
    front: list[Line]
    back: list[Line]
    words: list[tuple[str, float, float]]


def held_up(path: Path, machine: Machine, edge: str = "long-edge") -> Seen:
    with pdfplumber.open(path) as pdf:
        front, back = pdf.pages
        words = [
            (w["text"], (w["x0"] + w["x1"]) / 2 / MM, (w["top"] + w["bottom"]) / 2 / MM)
            for w in front.extract_words(x_tolerance=1)
        ]
        return Seen(front.width / MM, front.height / MM, lines(front), machine.lines(back, edge), words)


def middle(seen: Seen, down: bool) -> float:
    """What the thick cross shows in the middle: where its long line crosses the millimetres, to half of one."""
    along = 1 if down else 0
    crossing = [
        line
        for line in seen.back
        if abs((line[2] - line[0] if down else line[3] - line[1]) - 20) < 0.5
        and math.dist(((line[0] + line[2]) / 2, (line[1] + line[3]) / 2), (seen.width / 2, seen.height / 2)) < 10
    ]
    (line,) = crossing
    off = (line[along] + line[along + 2]) / 2 - (seen.height if down else seen.width) / 2
    return round(2 * off) / 2


def zero(seen: Seen, side: list[Line], centre: float, down: bool) -> float:
    """Where the longest line of a side stands near the middle of a scale."""
    along, across = (1, 0) if down else (0, 1)
    near = [
        (line[across + 2] - line[across], line[along])
        for line in side
        if abs(line[along] - centre) < 8
        and abs((line[across] + line[across + 2] - (seen.width if down else seen.height)) / 2) < 8
        and line[along + 2] - line[along] < 0.1
    ]
    return max(near)[1]


def reading(seen: Seen, letter: str) -> float:
    """A scale read by eye: near where the line with a wedge stands, the line that goes on in one of the other side."""
    down = letter in "CD"
    ((x, y),) = [(x, y) for text, x, y in seen.words if text == letter and _is_letter(seen, x, y)]
    along, across = (1, 0) if down else (0, 1)
    centre = (x, y)[along]
    axis = (seen.width if down else seen.height) / 2

    def of(side: list[Line], front: bool) -> list[float]:
        """Places along the arm, of lines that stand across it on that side."""
        found = []
        for line in side:
            long = line[across + 2] - line[across]
            place = (line[along] + line[along + 2]) / 2
            meets = abs(line[across + 2] - axis) < 0.1 if front else line[across] < axis < line[across + 2]
            if 5.5 < long < 12 and meets and abs(place - centre) < 45 and line[along + 2] - line[along] < 0.1:
                found.append(place)
        return sorted(found)

    figures = {}
    for text, at_x, at_y in seen.words:
        at, off = ((at_x, at_y)[along] - centre, (at_x, at_y)[across] - axis)
        if -14 < off < -7 and abs(at) < 45 and text.lstrip("−").replace(".", "").isdigit():
            figures[round(at + centre)] = float(text.replace("−", "-"))
    fronts, backs = of(seen.front, front=True), of(seen.back, front=False)
    values = [_value(place, figures) for place in fronts]
    shown = round(2 * (zero(seen, seen.back, centre, down) - zero(seen, seen.front, centre, down))) / 2
    best = min(
        (min(abs(place - back) for back in backs), abs(value), value)
        for place, value in zip(fronts, values, strict=True)
        if abs(value - shown) < 0.95
    )
    return best[2]


def _is_letter(seen: Seen, x: float, y: float) -> bool:
    """Whether it names a scale: those stand near the middle lines of the sheet, fields to write into do not."""
    return abs(x - seen.width / 2) < 25 or abs(y - seen.height / 2) < 25


def _value(place: float, figures: dict[int, float]) -> float:
    """The figure of a line: its own, or counted from the two nearest that have one."""
    near = sorted(figures, key=lambda at: abs(at - place))[:2]
    (a, b) = sorted(near)
    return round(figures[a] + (figures[b] - figures[a]) * (place - a) / (b - a), 1)


def out_of_register(path: Path, machine: Machine, edge: str = "long-edge") -> list[float]:
    """For each crop mark and cross of a hole, how far its back lands from its front, in millimetres."""
    off = []
    with pdfplumber.open(path) as pdf:
        for front, back in zip(pdf.pages[::2], pdf.pages[1::2], strict=True):
            marks, behind = [_marks(side) for side in (lines(front), machine.lines(back, edge))]
            assert len(marks) == len(behind)
            for mark in marks:
                off.append(min(max(math.dist(mark[:2], b[:2]), math.dist(mark[2:], b[2:])) for b in behind))
    assert len(off) >= 8  # the crosses of two holes on each of two leaves; a setting-up sheet has none
    return off


def _marks(side: list[Line]) -> list[Line]:
    """Crop marks are 5 mm long, the crosses of holes 3.6 mm."""
    long = [(line, math.dist(line[:2], line[2:])) for line in side]
    return [line for line, length in long if any(abs(length - wanted) < 0.06 for wanted in (5, 3.6))]
