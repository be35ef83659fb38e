"""What keeps a stock from being made, each with the millimetres by which it fails."""

from __future__ import annotations

from collections.abc import Iterator
from math import isqrt
from typing import NamedTuple

from dotleader.handbook.stocks.measures import (
    LEAST_LEAF_HEIGHT,
    LEAST_TEXT_WIDTH,
    OUTER_MARGIN,
    binding_margin,
    fills,
    hole_strip,
    sides_around,
    text_width,
)
from dotleader.handbook.stocks.stock import Stock

NEAREST_READ, FARTHEST_READ = 250_000, 1_500_000
LONGEST_LEAF = 500_000


class Amiss(NamedTuple):
    """`of` is the property that is at fault, or the one that is most likely to be."""

    of: str
    message: str
    help: str


def millimetres(length: int, up: bool = False) -> str:
    """A length for a message: `3.2 mm`. Rounded to a tenth, upwards where it is the least that is missing."""
    tenths = -(-length // 100) if up else (length + 50) // 100
    return f"{tenths // 10}.{tenths % 10} mm".replace(".0 mm", " mm")


def amiss(stock: Stock) -> Iterator[Amiss]:
    """Everything that keeps a stock from being made; nothing where it can be."""
    if max(stock.leaf) > LONGEST_LEAF:
        yield Amiss(
            "leaf",
            f"A leaf of {millimetres(max(stock.leaf))} is larger than any that is bound.",
            "A leaf is 500 mm long at most; check the number and its unit.",
        )
        return
    papers = list(_paper(stock))
    yield from papers
    yield from _pouch(stock)
    if not papers:  # the room for text on a leaf that is far too large or small says nothing more
        yield from _text(stock)
    corner = list(_corners(stock))
    yield from corner or _holes(stock)
    yield from _reading(stock)


def _paper(stock: Stock) -> Iterator[Amiss]:
    """The leaf has to fit the paper with its crop marks, or fill it so that none are needed."""
    leaf, paper = stock.leaf, stock.paper
    around = 2 * sides_around()
    for width, height in (leaf, leaf[::-1]):
        if fills(width, paper[0]) and fills(height, paper[1]):
            return
        if width + around <= paper[0] and height + around <= paper[1]:
            return
    over = (min(leaf) - min(paper), max(leaf) - max(paper))
    name = stock.paper_name
    if max(over) > 0:
        yield Amiss(
            "leaf",
            f"The leaf is {millimetres(max(over), up=True)} larger than the paper ({name}).",
            "Take a smaller leaf or a larger paper.",
        )
        return
    missing = max(over) + around
    yield Amiss(
        "leaf",
        f"Beside the leaf, {millimetres(missing, up=True)} of paper ({name}) are missing for the crop marks.",
        f"Leave {millimetres(sides_around())} of paper on every side of a leaf, or fill the paper with it exactly.",
    )


def _pouch(stock: Stock) -> Iterator[Amiss]:
    if stock.pouch == (0, 0):
        return
    short = max(stock.leaf[0] - stock.pouch[0], stock.leaf[1] - stock.pouch[1])
    if short > 0:
        yield Amiss(
            "pouch",
            f"The pouch is {millimetres(short, up=True)} smaller than the leaf.",
            "A pouch is larger than its leaf by the seal on both sides, 1/4 in as a rule.",
        )
    elif short == 0:
        yield Amiss(
            "pouch",
            "The pouch is no larger than the leaf, and nothing is left to seal it.",
            "A pouch is larger than its leaf by the seal on both sides, 1/4 in as a rule.",
        )


def _text(stock: Stock) -> Iterator[Amiss]:
    narrow = LEAST_TEXT_WIDTH - text_width(stock)
    if narrow > 0:
        inner = binding_margin(stock) if stock.bound_at == "left" else OUTER_MARGIN
        yield Amiss(
            "leaf",
            f"The leaf is {millimetres(narrow, up=True)} too narrow: beside margins of {millimetres(inner)} and "
            f"{millimetres(OUTER_MARGIN)} it leaves less than {millimetres(LEAST_TEXT_WIDTH)} for text.",
            "Take a wider leaf, or put the holes nearer to the edge.",
        )
    least = LEAST_LEAF_HEIGHT
    if stock.bound_at == "top":
        least += hole_strip(stock)
    if stock.leaf[1] < least:
        yield Amiss(
            "leaf",
            f"The leaf is {millimetres(least - stock.leaf[1], up=True)} too low for head, foot and a few items.",
            f"Take a leaf of {millimetres(least)} or more.",
        )


def _corners(stock: Stock) -> Iterator[Amiss]:
    over = 2 * stock.corner_radius - min(stock.leaf)
    if over > 0:
        yield Amiss(
            "corners",
            f"Two corners of {millimetres(stock.corner_radius)} are {millimetres(over, up=True)} wider than the leaf.",
            "A corner's radius is some millimetres, such as `6 mm`.",
        )


def _holes(stock: Stock) -> Iterator[Amiss]:
    """Only the worst hole is spoken of: where one is out, others are too."""
    if not stock.holes:
        return
    across = stock.leaf[0] if stock.bound_at == "left" else stock.leaf[1]
    along = stock.leaf[1] if stock.bound_at == "left" else stock.leaf[0]
    closest = min((b - a for a, b in zip(stock.holes, stock.holes[1:], strict=False)), default=None)
    if closest is not None and closest <= stock.hole_diameter:
        yield Amiss(
            "holes",
            f"The holes run into one another: they are {millimetres(closest)} apart and "
            f"{millimetres(stock.hole_diameter)} wide.",
            "Check how far apart they are, centre to centre.",
        )
        return
    radius = -(-stock.hole_diameter // 2)
    edge = min(stock.hole_edge, across - stock.hole_edge)
    ends = min(min(at, along - at) for at in stock.holes)
    if edge < radius:
        film = stock.pouch != (0, 0)
        counted = " They are counted from the edge of the pouch." if film and stock.hole_edge < radius else ""
        yield Amiss(
            "holes",
            f"The holes reach {millimetres(radius - edge, up=True)} beyond the edge of the leaf.",
            f"Put them farther from the edge.{counted}",
        )
    elif ends < radius:
        yield Amiss(
            "holes",
            f"The outermost holes reach {millimetres(radius - ends, up=True)} beyond the ends of the leaf's edge, "
            f"which is {millimetres(along)} long.",
            "Take fewer holes, or put them closer together.",
        )
    elif (into := _into_corner(ends, edge, stock.corner_radius, radius)) > 0:
        yield Amiss(
            "holes",
            f"The outermost holes reach {millimetres(into, up=True)} into the rounded corners.",
            "Take smaller corners, or put the holes closer together or farther from the edge.",
        )


def _into_corner(along: int, across: int, corner: int, radius: int) -> int:
    """By how much a hole reaches out of a rounded corner; not above zero where it lies inside."""
    if along >= corner or across >= corner:
        return 0
    from_middle = isqrt((corner - along) ** 2 + (corner - across) ** 2)
    return from_middle + radius - corner


def _reading(stock: Stock) -> Iterator[Amiss]:
    distance = stock.reading_distance
    if distance < NEAREST_READ:
        short = millimetres(NEAREST_READ - distance, up=True)
        yield Amiss(
            "read at",
            f"Nobody reads at {millimetres(distance)}: it is {short} too near.",
            "Measure from the eye to the card as it is held, such as `600 mm`.",
        )
    elif distance > FARTHEST_READ:
        over = millimetres(distance - FARTHEST_READ, up=True)
        yield Amiss(
            "read at",
            f"Nobody reads a card at {millimetres(distance)}: it is {over} too far.",
            "Measure from the eye to the card as it is held, such as `600 mm`.",
        )
