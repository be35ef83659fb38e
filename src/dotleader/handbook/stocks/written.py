"""A stock as it is written, before it is known whether it can be. Data only; lengths in micrometres."""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.stocks.measures import LEAST_SEAL
from dotleader.handbook.stocks.stock import PRINTABLE_MARGIN, USUAL_PAPER
from dotleader.source.record import record


@record
class HoleRow:
    """Holes as they are written: `edge` is counted from the edge of the pouch, or of the leaf without one.

    `gaps` are the distances from each centre to the next, exact, and the row stands in the middle of the edge. Where
    `at` is not empty, it has the centres instead, counted from the upper (bound left) or left (bound top) end of the
    pouch, or of the leaf without one.
    """

    count: int
    gaps: tuple[Fraction, ...]
    diameter: int
    edge: int
    at: tuple[int, ...] = ()


@record
class Rings:
    """`count` 0 is one for each hole; `inside` is their inner width, 0 where nothing is said of rings."""

    count: int
    inside: int


@record
class Tabs:
    """`kind` is ``printed``, ``cut`` or ``none``; `recess` how far the edge is cut back beside those that are cut."""

    kind: str
    recess: int = 0


@record
class Written:
    """A stock as it is written. `seal` -1 is none written: what the pouch leaves. `pouch` (0, 0) is no film."""

    leaf: tuple[int, int]
    holes: HoleRow
    paper: tuple[int, int]
    paper_name: str
    pouch: tuple[int, int] = (0, 0)
    seal: int = -1
    film: int = 0
    corners: int = LEAST_SEAL  # 1/8 in, the nominal corner of ISO/IEC 7810 and of the small hand corner rounder
    bound_at: str = "left"
    paper_thickness: int = USUAL_PAPER
    printable_margin: int = PRINTABLE_MARGIN
    read_at: int = 600_000
    rings: Rings = Rings(0, 0)
    tabs: Tabs = Tabs("printed")
    dividers: bool = False
    folded: bool = False
    cut_lines: str = ""
    relief: int = 0
