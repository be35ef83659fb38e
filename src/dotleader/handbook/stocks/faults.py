"""What keeps a stock from being made, each with the millimetres by which it fails."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.fault import Amiss, as_measured, millimetres
from dotleader.handbook.stocks.fold_faults import fold_faults
from dotleader.handbook.stocks.hole_faults import hole_faults
from dotleader.handbook.stocks.measures import (
    BLEED,
    FREE_EDGE,
    LEAST_LEAF_HEIGHT,
    LEAST_SEAL,
    LEAST_SEAL_OF_ALL,
    LEAST_TEXT_WIDTH,
    OUTER_MARGIN,
    binding_margin,
    fills,
    hole_strip,
    may_fill,
    open_size,
    seals,
    sides_around,
    text_width,
)
from dotleader.handbook.stocks.relief import narrow_relief, relief_faults
from dotleader.handbook.stocks.stock import Stock
from dotleader.handbook.stocks.tab_faults import divider_faults, tab_faults
from dotleader.handbook.stocks.thickness import hole_from_edge, narrowest_ring, stack_thickness
from dotleader.source.record import replace

NEAREST_READ, FARTHEST_READ = 250_000, 1_500_000
LONGEST_LEAF = 500_000
WIDEST_MARGIN = 15_000
THICKEST_FILM = THICKEST_PAPER = 1_000

_SEAL_HELP = "A pouch is larger than its leaf by the seal on both sides, 1/4 in as a rule."


def amiss(stock: Stock) -> Iterator[Amiss]:
    """Everything that keeps a stock from being made; nothing where it can be."""
    if max(stock.leaf) > LONGEST_LEAF:
        yield Amiss(
            "leaf",
            f"A leaf of {millimetres(max(stock.leaf))} is {millimetres(max(stock.leaf) - LONGEST_LEAF, up=True)} "
            "larger than any that is bound.",
            "A leaf is 500 mm long at most; check the number and its unit.",
        )
        return
    if stock.recess:
        flush = replace(stock, tabs="printed", recess=0)
        others = list(amiss(flush))
        yield from others or tab_faults(stock)
        return
    margins = list(_printable_margin(stock))
    yield from margins
    papers = list(_paper(stock)) if not margins else []
    yield from papers
    pouches = list(_pouch(stock))
    yield from pouches
    if not papers:  # the room for text on a leaf that is far too large or small says nothing more
        yield from _text(replace(stock, relief=0) if any(relief_faults(stock)) else stock)
    corner = list(_corners(stock))
    yield from corner
    thick = list(_thickness(stock))
    yield from thick
    if not pouches:  # from whose edge holes are counted
        yield from () if corner else _holes(stock)
        yield from () if thick else _rings(stock)
    yield from _reading(stock)
    yield from divider_faults(stock)


def _holes(stock: Stock) -> Iterator[Amiss]:
    folds = list(fold_faults(stock))
    yield from folds
    holes = [] if folds else list(hole_faults(stock))
    yield from holes
    if not folds and not holes:
        yield from relief_faults(stock)


def doubtful(stock: Stock) -> Iterator[Amiss]:
    """What had better not be, in a stock that can be made: a seal of less than 1/8 in, around the leaf or its holes."""
    yield from narrow_relief(stock)
    if stock.pouch == (0, 0):
        return
    narrowest = min(seals(stock))
    if LEAST_SEAL_OF_ALL <= narrowest < LEAST_SEAL:
        yield Amiss(
            "pouch",
            f"The seal is {millimetres(narrowest)} wide, {millimetres(LEAST_SEAL - narrowest, up=True)} less than "
            "1/8 in.",
            "Cut the leaf smaller, or take a larger pouch; or lay it into the very middle and look for gaps.",
        )


def _printable_margin(stock: Stock) -> Iterator[Amiss]:
    over = stock.printable_margin - WIDEST_MARGIN
    if over > 0:
        yield Amiss(
            "printable margin",
            f"A printable margin of {millimetres(stock.printable_margin)} is {millimetres(over, up=True)} more "
            "than any printer leaves.",
            "Measure what the printer leaves white along the edge of the paper, about `5 mm`.",
        )


def _paper(stock: Stock) -> Iterator[Amiss]:
    """The leaf has to fit the paper with bleed and crop marks, or fill it so that none are needed."""
    leaf, paper = open_size(stock), stock.paper
    of = "cut lines" if stock.cut_lines == "separate" else "leaf"
    what = "open card" if stock.folded else "leaf"
    around = 2 * sides_around(stock.printable_margin)
    ways = (leaf, leaf[::-1])
    if any(width + around <= paper[0] and height + around <= paper[1] for width, height in ways):
        return
    filling = any(fills(width, paper[0]) and fills(height, paper[1]) for width, height in ways)
    if filling and stock.cut_lines != "separate":
        if not may_fill(stock):
            yield _lost(stock)
        return
    over = max(min(leaf) - min(paper), max(leaf) - max(paper))
    name = stock.paper_name
    if over > 0:
        yield Amiss(
            "leaf",
            f"The {what} is {millimetres(over, up=True)} larger than the paper ({name}).",
            f"Take a smaller leaf{' (each face is one)' if stock.folded else ''} or a larger paper.",
        )
        return
    advice = (
        f"Leave {millimetres(around // 2)} of paper on every side of the {what}: for the printable margin and for crop "
        f"marks outside of {millimetres(BLEED)} of bleed. "
        + ("Or have `shared` cut lines." if filling else "Or fill the paper with it exactly.")
    )
    if over + 2 * BLEED > 0:
        bleeding = over + 2 * BLEED
        yield Amiss(
            of,
            f"The {what} with its bleed is {millimetres(bleeding, up=True)} larger than the paper ({name}).",
            advice,
        )
        return
    yield Amiss(
        of,
        f"Beside the {what}, {millimetres(over + around, up=True)} of paper ({name}) are missing for the crop marks.",
        advice,
    )


def _lost(stock: Stock) -> Amiss:
    lost = stock.printable_margin - FREE_EDGE
    return Amiss(
        "printable margin",
        f"Of a leaf that fills the paper, {millimetres(lost, up=True)} of what stands at its foot would be missing.",
        f"A leaf can fill the paper where the printer leaves {millimetres(FREE_EDGE)} white at most; take a larger "
        "paper or a smaller leaf.",
    )


def _pouch(stock: Stock) -> Iterator[Amiss]:
    if stock.pouch == (0, 0):
        return
    pouch, leaf = stock.pouch, stock.leaf
    short = max(leaf[0] - pouch[0], leaf[1] - pouch[1])
    across = short > 0 and all(a - b >= 2 * LEAST_SEAL_OF_ALL for a, b in zip(pouch[::-1], leaf, strict=True))
    help_ = "Write its width first, as the leaf stands." if across else _SEAL_HELP
    if short > 0:
        yield Amiss("pouch", f"The pouch is {millimetres(short, up=True)} smaller than the leaf.", help_)
    elif short == 0:
        yield Amiss("pouch", "The pouch is no larger than the leaf, and nothing is left to seal it.", help_)
    elif (narrowest := min(seals(stock))) < LEAST_SEAL_OF_ALL:
        yield Amiss(
            "pouch",
            f"The seal is {millimetres(narrowest)} wide, {millimetres(LEAST_SEAL - narrowest, up=True)} less than the "
            "1/8 in that it needs.",
            _SEAL_HELP,
        )


def _text(stock: Stock) -> Iterator[Amiss]:
    narrow = LEAST_TEXT_WIDTH - text_width(stock)
    if narrow > 0:
        inner = binding_margin(stock) if stock.bound_at == "left" else OUTER_MARGIN
        yield Amiss(
            "leaf",
            f"The leaf is {millimetres(narrow, up=True)} too narrow: beside margins of {millimetres(inner)} and "
            f"{millimetres(OUTER_MARGIN)} it leaves less than {millimetres(LEAST_TEXT_WIDTH)} for text.",
            "Take a wider leaf, or put the holes nearer to the edge." if stock.holes else "Take a wider leaf.",
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
    """A corner may not reach past seal and margin, where what is printed begins."""
    radius = stock.corner_radius
    over = 2 * radius - min(stock.leaf)
    help_ = "A corner's radius is some millimetres, such as `6 mm`."
    if over > 0:
        yield Amiss(
            "corners",
            f"Two corners of {millimetres(radius)} are {millimetres(over, up=True)} wider than the leaf.",
            help_,
        )
        return
    seal = max(0, min(seals(stock)))
    past = radius - seal - OUTER_MARGIN
    if past > 0:
        beside = f"a seal of {millimetres(seal)} and a margin of {millimetres(OUTER_MARGIN)} have"
        if not seal:
            beside = f"a margin of {millimetres(OUTER_MARGIN)} has"
        yield Amiss(
            "corners",
            f"Corners of {millimetres(radius)} are {millimetres(past, up=True)} larger than {beside} room for.",
            help_,
        )


def _rings(stock: Stock) -> Iterator[Amiss]:
    if not stock.ring_width:
        return
    if not stock.holes:
        yield Amiss("rings", "There are rings, and no holes for them.", "Say in `holes` where they go.")
        return
    if stock.rings > len(stock.holes):
        yield Amiss(
            "rings",
            f"There are {stock.rings} rings, and no more than {len(stock.holes)} holes.",
            "Take a ring for each hole at most.",
        )
    edge, each = hole_from_edge(stock), stack_thickness(stock, 1)
    short = narrowest_ring(stock, each) - stock.ring_width
    if short > 0:
        yield Amiss(
            "rings",
            f"Rings of {as_measured(stock.ring_width)} are {millimetres(short, up=True)} too narrow to close around "
            f"the {millimetres(edge)} from hole to edge of one leaf.",
            "Take wider rings, measured inside, or put the holes nearer to the edge.",
        )


def _thickness(stock: Stock) -> Iterator[Amiss]:
    """A film or paper that is far too thick has its number in a wrong unit."""
    for key, thick, most in (
        ("film", stock.film, THICKEST_FILM),
        ("paper thickness", stock.paper_thickness, THICKEST_PAPER),
    ):
        if thick > most:
            yield Amiss(
                key,
                f"{'Film' if key == 'film' else 'Paper'} of {millimetres(thick)} is "
                f"{millimetres(thick - most, up=True)} thicker than any that is used.",
                "Thickness is some hundredths of a millimetre, such as `5 mil` or `0.1 mm`.",
            )


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
