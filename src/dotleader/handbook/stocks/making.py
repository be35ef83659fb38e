"""From what is written to a stock: where the holes are on the leaf, how large the pouch is."""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.stocks.measures import USUAL_FILM
from dotleader.handbook.stocks.sizes import micrometres
from dotleader.handbook.stocks.stock import Stock
from dotleader.handbook.stocks.written import HoleRow, Written
from dotleader.source.text import Spot


def made(written: Written, name: str, spot: Spot | None) -> Stock:
    """A row of holes stands in the middle of the binding edge; holes are counted from the leaf's edges here."""
    pouch = written.pouch
    if pouch == (0, 0) and written.seal >= 0:
        pouch = (written.leaf[0] + 2 * written.seal, written.leaf[1] + 2 * written.seal)
    along, across = (1, 0) if written.bound_at == "left" else (0, 1)
    film = pouch != (0, 0)
    row, rings = written.holes, written.rings
    return Stock(
        name=name,
        leaf=written.leaf,
        pouch=pouch,
        corner_radius=written.corners,
        holes=_centres(row, written.leaf[along], pouch[along] if film else written.leaf[along]),
        hole_diameter=row.diameter,
        hole_edge=row.edge - ((pouch[across] - written.leaf[across]) // 2 if film else 0) if row.count else 0,
        bound_at=written.bound_at,
        paper=written.paper,
        paper_name=written.paper_name,
        reading_distance=written.read_at,
        spot=spot,
        film=(written.film or USUAL_FILM) if film else 0,
        paper_thickness=written.paper_thickness,
        printable_margin=written.printable_margin,
        rings=(rings.count or row.count) if rings.inside else 0,
        ring_width=rings.inside,
        folded=written.folded,
        cut_lines=written.cut_lines,
        relief=written.relief,
        tabs=written.tabs.kind,
        recess=written.tabs.recess,
        dividers=written.dividers,
    )


def _centres(row: HoleRow, leaf: int, pouch: int) -> tuple[int, ...]:
    if row.at:
        return tuple(at - (pouch - leaf) // 2 for at in row.at)
    first = (leaf - sum(row.gaps, Fraction(0))) / 2
    return tuple(micrometres(first + sum(row.gaps[:n], Fraction(0))) for n in range(row.count))
