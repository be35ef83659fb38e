"""The description of leaf, pouch, holes, paper and binding. Data only; lengths in whole micrometres."""

from __future__ import annotations

from dotleader.source.record import record
from dotleader.source.text import Spot

PRINTABLE_MARGIN = 5_000
"""What a desktop printer may leave unprinted on every side of the paper (common practice, no source); what is taken
where a stock does not say it."""

USUAL_PAPER = 102
"""4 mil, the thickness of 20 lb bond paper: 75 g/m2 (a film maker's table); what is taken likewise."""


@record
class Stock:
    """A leaf stands upright as read; holes along its binding edge.

    `holes` are the centres along the binding edge, measured from the leaf's upper (bound left) or left (bound top)
    corner; `hole_edge` the distance of the centres from that edge of the leaf. `pouch` (0, 0) is no film; else the leaf
    lies in its middle, with `film` on each side. `rings` are the number and `ring_width` the inner width of the rings
    that hold the leaves, 0 where nothing is said of rings. `type_percent` is how large the type of the book is that is
    printed on it, 100 as it usually is.

    A `folded` card is two leaves joined at their binding edge, where it is folded: `leaf` is one of its four faces.
    `relief` is how much wider, all round, holes are cut into the paper than they are punched, so that film seals
    around them.

    With `tabs` that are cut, the leaf's outer edge is cut back by `recess` but at its tab; it is 0 with others.
    `dividers`: whether a leaf stands before each section. `rings_spot` is where the rings are written, None where they
    are not: only with the pile of a book is it known whether they hold it.
    """

    name: str
    leaf: tuple[int, int]  # width, height
    pouch: tuple[int, int]
    corner_radius: int
    holes: tuple[int, ...]
    hole_diameter: int
    hole_edge: int
    bound_at: str  # "left" | "top"
    paper: tuple[int, int]  # width, height, upright
    paper_name: str
    reading_distance: int
    spot: Spot | None  # the block, None where the default is taken
    film: int = 0  # on each side
    paper_thickness: int = USUAL_PAPER
    printable_margin: int = PRINTABLE_MARGIN
    rings: int = 0
    ring_width: int = 0
    type_percent: int = 100
    folded: bool = False
    cut_lines: str = ""  # "shared" | "separate" | "", which is whatever takes more leaves to a sheet
    relief: int = 0
    tabs: str = "printed"  # "printed" | "cut" | "none"
    recess: int = 0
    dividers: bool = False
    rings_spot: Spot | None = None
