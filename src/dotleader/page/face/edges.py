"""The outer edge of a face: the band that tells its kind, the thumb mark that tells its group, the section's tab.

Kinds are told without colour and from the closed stack: solid black for emergencies, blocks for abnormal cards,
nothing for normal ones. Where tabs are cut, band and marks stand along the edge that is cut back, and bleed past it;
the tab stands out beyond.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.handbook.stocks.measures import BLEED, body_of_leaf, hole_strip
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Font, Ink, Line, Text, mm, pt
from dotleader.page.extents import Rect
from dotleader.page.face.margins import Margins
from dotleader.page.face.thumb_index import section_slot, section_word, slot_of, slot_span
from dotleader.page.frames import BAND, band_width, larger
from dotleader.page.imposition import lost_at_outer_edge
from dotleader.page.type.metrics import cap_height, width

TRIM = pt(0.25)
BLOCK = mm(6)
BLOCK_PITCH = mm(12)

_WORD_SIZES = (9_000, 8_500, 8_000, 7_500, 7_000, 6_500, 6_000, 5_500, 5_000)
_LARGE_WORD_SIZES = (12_000, 11_500, 11_000, 10_500, 10_000, 9_500)
"""Where type is large, as large as the band is wide for."""

_TAB_SIZES = (10_500, 10_000, 9_500, *_WORD_SIZES[:-4])
_WORD_AIR = mm(1)


def edge(stock: Stock, margins: Margins, kind: str, word: str, section: str, divider: bool = False) -> Iterator[Drawn]:
    """Band, thumb mark and tab, with bleed, in the leaf's coordinates. A blank has nothing but its tab.

    Where no tab is cut, the mark of a divider stands in its place.
    """
    yield from _band(stock, margins, kind)
    if stock.recess:
        yield from _tab(stock, margins, section)
    if word.strip() and stock.tabs != "none":
        yield from _mark(stock, margins, slot_of(word), word.upper())
    if divider and stock.tabs == "printed":
        yield from _mark(stock, margins, section_slot(section), _section_said(section), section)


def shown_areas(stock: Stock, margins: Margins, section: str) -> tuple[Rect, ...]:
    """What is left of a face when it has been cut: the leaf, or what is beside its tab, and the tab."""
    width, height = stock.leaf
    if not stock.recess:
        return (Rect(0, 0, width, height),)
    top, low = _span(stock, margins, section_slot(section))
    body, _ = body_of_leaf(stock)
    if margins.outer_right:
        return Rect(0, 0, body, height), Rect(body, top, width, low)
    return Rect(stock.recess, 0, width, height), Rect(0, top, stock.recess, low)


def trim_line(stock: Stock, margins: Margins, section: str) -> Iterator[Line]:
    """Where the outer edge is cut back, for a page that stands for a leaf and is not cut."""
    if not stock.recess:
        return
    body, (left, top, right, low) = shown_areas(stock, margins, section)
    edge, tip = (left, right) if margins.outer_right else (right, left)
    points = ((edge, body.top), (edge, top), (tip, top), (tip, low), (edge, low), (edge, body.bottom))
    yield Line(points, TRIM)


def _band(stock: Stock, margins: Margins, kind: str) -> Iterator[Box]:
    """Along the whole edge, but for the hole strip that a leaf bound at the top has across its head."""
    height = stock.leaf[1]
    first = -BLEED if stock.bound_at == "left" else hole_strip(stock) or -BLEED
    parts: list[tuple[int, int]] = []
    if kind == "emergency":
        parts.append((first, height + BLEED))
    elif kind == "abnormal":
        middles = range(0, height + BLOCK // 2, BLOCK_PITCH)
        parts.extend((max(middle - BLOCK // 2, first), min(middle + BLOCK // 2, height + BLEED)) for middle in middles)
    for upper, lower in parts:
        if upper < lower:
            yield _at_edge(stock, margins, height - lower if margins.upside else upper, lower - upper)


def _at_edge(stock: Stock, margins: Margins, top: int, height: int) -> Box:
    """A piece of the band: from the edge, which may be cut back, inwards, and past it by the bleed."""
    reach, recess = band_width(stock), stock.recess
    left = stock.leaf[0] - recess - reach if margins.outer_right else recess - BLEED
    return Box(left, top, reach + BLEED, height, fill=Ink.BLACK)


def _section_said(section: str) -> str:
    return f"{section} {section_word(section)}"


def _mark(stock: Stock, margins: Margins, slot: int, words: str, shorter: str = "") -> Iterator[Drawn]:
    """A piece of the band with words on it; what is `shorter` stands there instead of words that have to be cut."""
    top, low = _span(stock, margins, slot)
    yield _at_edge(stock, margins, top, low - top)
    sizes = (*_LARGE_WORD_SIZES, *_WORD_SIZES) if larger(stock) else _WORD_SIZES
    room = low - top - 2 * _WORD_AIR
    shown, size = _fitted(words, room, sizes)
    if shorter and shown != words:
        shown, size = _fitted(shorter, room, sizes)
    middle = stock.recess + band_width(stock) - BAND // 2
    yield _lengthwise(stock, margins, middle, (top, low), shown, size)


def _tab(stock: Stock, margins: Margins, section: str) -> Iterator[Drawn]:
    """Number and word of a section, white on black: on the part of the tab that a printer reaches.

    Where the leaf's edge turns into the tab, it is rounded by no more than the bleed, so that the tab is black there.
    """
    top, low = _span(stock, margins, section_slot(section))
    left = stock.leaf[0] - stock.recess if margins.outer_right else -BLEED
    yield Box(left, top - BLEED, stock.recess + BLEED, low - top + 2 * BLEED, fill=Ink.BLACK)
    room = low - top - 2 * _WORD_AIR
    whole = _section_said(section)
    size = next((size for size in _TAB_SIZES if width(whole, Font.BOLD, size) <= room), 0)
    shown, size = (whole, size) if size else _fitted(section, room, _TAB_SIZES)
    middle = (lost_at_outer_edge(stock) + stock.recess) // 2
    yield _lengthwise(stock, margins, middle, (top, low), shown, size)


def _span(stock: Stock, margins: Margins, slot: int) -> tuple[int, int]:
    """A slot on this side of the leaf."""
    top, low = slot_span(stock, slot)
    return (stock.leaf[1] - low, stock.leaf[1] - top) if margins.upside else (top, low)


def _lengthwise(stock: Stock, margins: Margins, middle: int, span: tuple[int, int], shown: str, size: int) -> Text:
    """White words along the edge, `middle` inwards from the leaf's side; their foot is always towards the text.

    So they are read from below on the right edge and from above on the left.
    """
    top, low = span
    long, across = width(shown, Font.BOLD, size), cap_height(Font.BOLD, size) // 2
    if margins.outer_right:
        x = stock.leaf[0] - middle + across
        return Text(x, (top + low + long) // 2, shown, size, Font.BOLD, Ink.WHITE, turn=90)
    return Text(middle - across, (top + low - long) // 2, shown, size, Font.BOLD, Ink.WHITE, turn=270)


def _fitted(word: str, room: int, sizes: Sequence[int] = _WORD_SIZES) -> tuple[str, int]:
    """The word at the largest size at which it fits; one that fits at none is cut."""
    for size in sizes:
        if width(word, Font.BOLD, size) <= room:
            return word, size
    least = sizes[-1]
    while word and width(f"{word}…", Font.BOLD, least) > room:
        word = word[:-1]
    return f"{word.rstrip()}…", least
