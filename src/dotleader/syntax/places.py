"""What a line may be depends on where it stands.

Below a head that declares numbers stands a row, below an item a detail, below `amplified` prose. `Place` names these;
`place_of_block` and `place_below` say what stands below what.
"""

from __future__ import annotations

from enum import Enum

from dotleader.syntax.heads import CARD_KINDS
from dotleader.syntax.tree import Body, Broken, Item, Prose, Row, Say


class Place(Enum):
    CARD = "card"
    DETAIL = "detail"
    TEXT = "text"  # prose that nothing ends: text blocks, continued notices
    AMPLIFIED = "amplified"
    FACTS = "facts"
    NUMBERS = "numbers"
    EQUIPMENT = "equipment"
    PROPERTY = "property"
    ELECTRICAL = "electrical"
    SUPPLY = "supply"  # below a row of an electrical block
    NOTHING = "nothing"


RAW_PLACES = frozenset({Place.TEXT, Place.AMPLIFIED})
"""Where `#` is text."""
PROSE_PLACES = frozenset({Place.TEXT, Place.AMPLIFIED, Place.DETAIL})
"""Where a line is prose, and its indentation the writer's own."""
PROSE_PROPERTIES = ("does", "says")
NUMBER_PROPERTIES = ("draws", "breaker", "fuse")
ELECTRICAL_NUMBERS = (
    "alternator", "generator", "battery", "system", "always on", "wires rated", "shed after", "landing takes",
    "must last",
)  # fmt: skip
"""What the rows of an electrical block begin with whose right part is a value."""

_BY_KEYWORD = {
    **dict.fromkeys(CARD_KINDS, Place.CARD),
    **dict.fromkeys(("handbook", "sources", "stock", "punch", "book", "rules"), Place.FACTS),
    **dict.fromkeys(("speeds", "values", "gauge"), Place.NUMBERS),
    "equipment": Place.EQUIPMENT,
    "electrical": Place.ELECTRICAL,
    "text": Place.TEXT,
    "?": Place.TEXT,  # an unknown block: kept, and nothing more said about its lines
}
_BY_SAY = {
    **dict.fromkeys(("memory", "group", "if", "or if", "otherwise", "one of", "repeat until"), Place.CARD),
    **dict.fromkeys(("note", "caution", "warning", "when"), Place.TEXT),
    "amplified": Place.AMPLIFIED,
}


def place_of_block(keyword: str) -> Place:
    """What stands directly below the head that `keyword` opens."""
    return _BY_KEYWORD.get(keyword, Place.NOTHING)


def place_below(place: Place, body: Body) -> Place:
    """What stands below `body`, which itself stands at `place`."""
    if place in (Place.TEXT, Place.DETAIL):
        return place
    match body:
        case Item():
            return Place.DETAIL
        case Say():
            return _BY_SAY.get(body.keyword, Place.NOTHING)
        case Row() if place is Place.EQUIPMENT:
            return Place.PROPERTY
        case Row() if place is Place.ELECTRICAL:
            return Place.SUPPLY
        case Row() if body.left.text in PROSE_PROPERTIES:
            return Place.TEXT
        case Prose():
            return Place.AMPLIFIED if place is Place.AMPLIFIED else Place.TEXT
        case Broken():
            return Place.TEXT
        case _:
            return Place.NOTHING
