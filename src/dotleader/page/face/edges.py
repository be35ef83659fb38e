"""The outer edge of a face: the band that tells its kind, and the thumb mark that tells its group.

Both are told without colour and from the closed stack: solid black for emergencies, blocks for abnormal cards,
nothing for normal ones.
"""

from __future__ import annotations

from collections.abc import Iterator
from types import MappingProxyType

from dotleader.handbook.phases import ORDER, phase_named
from dotleader.handbook.stocks.measures import BLEED, hole_strip
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Font, Ink, Text, mm
from dotleader.page.face.margins import Margins
from dotleader.page.frames import BAND, band_width, frame_of
from dotleader.page.type.metrics import cap_height, width

BLOCK = mm(6)
BLOCK_PITCH = mm(12)

SLOTS = 7
SLOT_HEIGHT = mm(24)
FIRST_SLOT = mm(36)
_FIRST_SLOT_SHARE = (36, 222)
"""On lower leaves the first slot stands at this part of their height."""

_WORD_SIZES = (9_000, 8_500, 8_000, 7_500, 7_000, 6_500, 6_000, 5_500, 5_000)
_WORD_AIR = mm(1)

_PHASE_SLOTS = (0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 5, 6, 6, 6)
"""The slot of each phase in its order, from preflight at the top to parking at the bottom."""

_TOPICS: MappingProxyType[str, int] = MappingProxyType(
    {
        word: slot
        for slot, words in enumerate(
            (
                "engine power propeller oil emergency abnormal normal",
                "fire smoke fumes",
                "fuel",
                "electrical electrics electric alternator generator battery avionics radio",
                "controls trim flaps structure airframe canopy door instruments pitot",
                "weather ice icing lightning turbulence storm stall spin",
                "landing ditching evacuation gear wheels brakes tyre tire",
            )
        )
        for word in words.split()
    }
)
_INITIALS = ("abc", "def", "ghi", "jklm", "nopq", "rst", "uvwxyz")


def slot_of(word: str) -> int:
    """Which of the seven slots a thumb word stands in, from 0 at the top. It depends on the word alone.

    A phase stands in its order in the flight, a known topic at its place; any other word by its first letter,
    as in a telephone index. So no card can move another card's mark.
    """
    phase = phase_named(word)
    if phase:
        return _PHASE_SLOTS[ORDER[phase]]
    for part in word.casefold().replace("-", " ").split():
        if part in _TOPICS:
            return _TOPICS[part]
    first = word.casefold()[:1]
    return next((slot for slot, letters in enumerate(_INITIALS) if first and first in letters), SLOTS - 1)


def edge(stock: Stock, margins: Margins, kind: str, word: str) -> Iterator[Drawn]:
    """Band and thumb mark, with bleed, in the leaf's coordinates."""
    yield from _band(stock, margins, kind)
    if word.strip():
        yield from _thumb(stock, margins, word)


def slot_heights(stock: Stock) -> tuple[int, int]:
    """Top of the first slot and height of each, from the head of a front; on low leaves they are scaled."""
    share, whole = _FIRST_SLOT_SHARE
    first = min(FIRST_SLOT, stock.leaf[1] * share // whole)
    first = max(first, frame_of(stock).top)
    return first, min(SLOT_HEIGHT, (frame_of(stock).bottom - first) // SLOTS)


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
    reach = band_width(stock)
    left = stock.leaf[0] - reach if margins.outer_right else -BLEED
    return Box(left, top, reach + BLEED, height, fill=Ink.BLACK)


def _thumb(stock: Stock, margins: Margins, word: str) -> Iterator[Drawn]:
    first, height = slot_heights(stock)
    top = first + slot_of(word) * height
    if margins.upside:
        top = stock.leaf[1] - top - height
    yield _at_edge(stock, margins, top, height)
    shown, size = _fitted(word.upper(), height - 2 * _WORD_AIR)
    long = width(shown, Font.BOLD, size)
    reach = band_width(stock)
    middle = stock.leaf[0] - reach + BAND // 2 if margins.outer_right else reach - BAND // 2
    across = cap_height(Font.BOLD, size) // 2
    # Read from below on the right edge and from above on the left, so that its foot is always towards the text.
    if margins.outer_right:
        yield Text(middle + across, top + (height + long) // 2, shown, size, Font.BOLD, Ink.WHITE, turn=90)
    else:
        yield Text(middle - across, top + (height - long) // 2, shown, size, Font.BOLD, Ink.WHITE, turn=270)


def _fitted(word: str, room: int) -> tuple[str, int]:
    """The word at the largest size at which it fits; one that fits at none is cut."""
    for size in _WORD_SIZES:
        if width(word, Font.BOLD, size) <= room:
            return word, size
    least = _WORD_SIZES[-1]
    while word and width(f"{word}…", Font.BOLD, least) > room:
        word = word[:-1]
    return f"{word.rstrip()}…", least
