"""The seven places along the outer edge of a leaf: which word and which section stands in which, and where they are.

A section has one place, so that both sides of a leaf, which belong to one section, have the same: its tab stands
there. The words of cards have places of their own along the same seven steps.
"""

from __future__ import annotations

from types import MappingProxyType

from dotleader.handbook.phases import ORDER, phase_named
from dotleader.handbook.stocks.measures import TAB_PLACES
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import mm
from dotleader.page.frames import frame_of

SLOTS = TAB_PLACES
SLOT_HEIGHT = mm(24)
FIRST_SLOT = mm(36)
_FIRST_SLOT_SHARE = (36, 222)
"""On lower leaves the first slot stands at this part of their height."""

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

_SECTIONS: MappingProxyType[str, tuple[int, str]] = MappingProxyType(
    {
        "0": (0, "FRONT"),
        "1": (0, "GENERAL"),
        "2": (1, "LIMITATIONS"),
        "3": (2, "EMERGENCY"),
        "3A": (3, "ABNORMAL"),
        "4": (4, "NORMAL"),
        "5": (5, "PERFORMANCE"),
        "6": (5, "WEIGHT"),
        "7": (6, "SYSTEMS"),
        "8": (6, "HANDLING"),
        "9": (6, "SUPPLEMENTS"),
    }
)
"""Sections that are read in the air have a place to themselves; those that are read on the ground share."""


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


def section_slot(section: str) -> int:
    """The slot of a section's tab. It depends on the section alone, so that no other section can move it."""
    return _SECTIONS[section][0]


def section_word(section: str) -> str:
    return _SECTIONS[section][1]


def slot_heights(stock: Stock) -> tuple[int, int]:
    """Top of the first slot and height of each, from the head of a front; on low leaves they are scaled."""
    share, whole = _FIRST_SLOT_SHARE
    first = min(FIRST_SLOT, stock.leaf[1] * share // whole)
    first = max(first, frame_of(stock).top)
    return first, min(SLOT_HEIGHT, (frame_of(stock).bottom - first) // SLOTS)


def leaf_area(stock: Stock) -> int:
    """Of a leaf, in square micrometres, without what is cut off beside its tab; rounded corners count as full."""
    width, height = stock.leaf
    return width * height - stock.recess * (height - slot_heights(stock)[1])


def slot_span(stock: Stock, slot: int) -> tuple[int, int]:
    """From where to where a slot reaches, from the head of a front."""
    first, height = slot_heights(stock)
    return first + slot * height, first + (slot + 1) * height
