"""The rows of a `stock` block: what each is called, a line of each that is right, and what it changes."""

from __future__ import annotations

from collections.abc import Callable
from types import MappingProxyType

from dotleader.handbook.stocks.hole_rows import MOST_HOLES, holes_of
from dotleader.handbook.stocks.reading import Unread, length_of, paper_of, size_of, weight_of
from dotleader.handbook.stocks.tab_rows import dividers_of, tabs_of
from dotleader.handbook.stocks.written import HoleRow, Rings, Written
from dotleader.source.record import replace
from dotleader.syntax.plain import folded

SAMPLES = {
    "leaf": "leaf .... 5.75 x 8.75 in",
    "pouch": "pouch .... 6 x 9 in",
    "seal": "seal .... 1/8 in",
    "film": "film .... 5 mil",
    "corners": "corners .... 6 mm",
    "holes": "holes .... 4, 40 mm apart, 6 mm wide, 12 mm from edge",
    "rings": "rings .... 3, 25 mm",
    "relief": "relief .... 3 mm",
    "bound at": "bound at .... left",
    "folded": "folded .... once",
    "cut lines": "cut lines .... separate",
    "paper": "paper .... Letter",
    "paper weight": "paper weight .... 120 g/m2",
    "paper thickness": "paper thickness .... 0.15 mm",
    "printable margin": "printable margin .... 5 mm",
    "read at": "read at .... 600 mm",
    "tabs": "tabs .... cut, 8 mm deep",
    "dividers": "dividers .... yes",
}
"""Each property of a stock with a line that is right, in the order in which they are taken: the thickness of a paper
goes before what its weight lets expect."""


def changed(written: Written, key: str, text: str) -> Written | Unread:
    """A written stock with one property read from a text. `key` is one of `SAMPLES`."""
    if key == "paper":
        paper = paper_of(text)
        return paper if isinstance(paper, Unread) else replace(written, paper_name=paper[0], paper=paper[1])
    field, read, none = _READ[key]
    value: object = none if none is not None and folded(text) in _NOTHING else read(text)
    if isinstance(value, Unread):
        return value
    return replace(written, **{field: value})


def _edge(text: str) -> str | Unread:
    edge = folded(text)
    if edge not in ("left", "top"):
        return Unread(f"`{text}` is no edge that a leaf is bound at.", "It is `left` or `top`.")
    return edge


def _folded(text: str) -> bool | Unread:
    if folded(text) != "once":
        return Unread(
            f"`{text}` is no way to fold a card here.", "A card is folded once, where it is bound, or not at all."
        )
    return True


def _cut_lines(text: str) -> str | Unread:
    lines = folded(text)
    if lines not in ("shared", "separate"):
        return Unread(f"`{text}` is no way to lay out what is cut.", "Leaves have cut lines `shared` or `separate`.")
    return lines


def _side(text: str) -> str:
    """A measure of one side without the words that say so."""
    words = " ".join(text.split())
    for ending in (" per side", " on each side", " each side", " all round"):
        if words.casefold().endswith(ending):
            return words[: -len(ending)]
    return words


def rings_of(text: str) -> Rings | Unread:
    """`3, 25 mm`: how many rings and how wide they are inside; without a number, one for each hole."""
    number, comma, rest = (part.strip() for part in text.partition(","))
    if not comma:
        number, rest = "0", number
    if not number.isascii() or not number.isdigit() or len(number) > 3 or (comma and int(number) == 0):
        return Unread(f"`{number}` is no number of rings.")
    if int(number) > MOST_HOLES:
        return Unread(f"`{number}` are more rings than an edge takes.")
    for ending in ("inside", "wide"):
        rest = rest[: -len(ending)].strip() if rest.casefold().endswith(ending) else rest
    inside = length_of(rest)
    return inside if isinstance(inside, Unread) else Rings(int(number), inside)


_NOTHING = ("none", "square", "0", "0 mm", "0 in")

_READ: MappingProxyType[str, tuple[str, Callable[[str], object], object]] = MappingProxyType(
    {
        "leaf": ("leaf", size_of, None),
        "pouch": ("pouch", size_of, (0, 0)),
        "seal": ("seal", lambda text: length_of(_side(text)), -1),
        "film": ("film", lambda text: length_of(_side(text)), 0),
        "corners": ("corners", length_of, 0),
        "holes": ("holes", holes_of, HoleRow(0, (), 0, 0)),
        "rings": ("rings", rings_of, Rings(0, 0)),
        "relief": ("relief", lambda text: length_of(_side(text)), 0),
        "bound at": ("bound_at", _edge, None),
        "folded": ("folded", _folded, False),
        "cut lines": ("cut_lines", _cut_lines, None),
        "paper weight": ("paper_thickness", weight_of, None),
        "paper thickness": ("paper_thickness", length_of, None),
        "printable margin": ("printable_margin", length_of, 0),
        "read at": ("read_at", length_of, None),
        "tabs": ("tabs", tabs_of, None),
        "dividers": ("dividers", dividers_of, None),
    }
)
"""The field of `Written` that a row is for, what reads it, and what stands for none of it; None where it must be."""
