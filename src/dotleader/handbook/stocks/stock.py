"""The description of leaf, pouch, holes, paper and binding. Data only; lengths in whole micrometres."""

from __future__ import annotations

from dotleader.source.record import record
from dotleader.source.text import Spot


@record
class Stock:
    """A leaf stands upright as read; holes along its binding edge.

    `holes` are the centres along the binding edge, measured from the leaf's upper (bound left) or left (bound top)
    corner; `hole_edge` the distance of the centres from that edge of the leaf. `pouch` (0, 0) is no film.
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
