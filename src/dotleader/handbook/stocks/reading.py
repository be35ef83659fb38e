"""The right parts of a `stock` block: lengths, sizes, holes. Exact until they become whole micrometres."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from dotleader.handbook.amounts.numerals import Numeral, read_number
from dotleader.handbook.amounts.trouble import said_of_number
from dotleader.handbook.stocks.library import INCH, SIZES, HoleRow, micrometres, paper_named, size_named
from dotleader.source.record import record
from dotleader.syntax.plain import folded

_UNITS = {"mm": 1_000, "cm": 10_000, "in": INCH, "inch": INCH, "inches": INCH, '"': INCH}
_UNIT = re.compile(r'(?P<number>.*?)\s*(?P<unit>[a-zA-Z]+|")?')
_BETWEEN = re.compile(r"\s*[x×X]\s*|\s+by\s+")
_FRACTION = re.compile(r"(?:([0-9]{1,4})\s+)?([0-9]{1,4})/([1-9][0-9]{0,3})")
_LONGEST = 10_000_000  # 10 m: whatever is longer is a slip

Size = tuple[int, int]


@record
class Unread:
    """A text that could not be read: what is the matter with it, and what to do where that is known."""

    message: str
    help: str = ""


def length_of(text: str, unit: str = "") -> int | Unread:
    """A length above zero with its unit (or with `unit` where it has none), in whole micrometres."""
    found = _UNIT.fullmatch(text.strip())
    assert found  # the pattern matches any one line
    spelled = found["unit"] or unit
    if not spelled:
        return Unread(f"`{text}` has no unit.", "Lengths are in `mm`, `cm` or `in`.")
    if spelled not in _UNITS:
        return Unread(f"`{spelled}` is no unit of length here.", "Lengths are in `mm`, `cm` or `in`.")
    number = _number(found["number"])
    if isinstance(number, Unread):
        return number
    length = micrometres(number * _UNITS[spelled])
    if length <= 0:
        return Unread(f"`{text}` is no length: it is not above zero.")
    return length if length <= _LONGEST else Unread(f"`{text}` is longer than anything that is printed.")


def size_of(text: str) -> Size | Unread:
    """Width and height: `5.75 x 8.75 in`, `148 mm x 210 mm`, or a name such as `A5`."""
    named = size_named(text)
    if named:
        return named
    parts = _BETWEEN.split(text.strip())
    if len(parts) != 2:
        if parts and parts[0][:1].isdigit():
            return Unread(f"`{text}` is no size: a width and a height are needed.")
        return Unread(f"`{text}` is no size that has a name.", f"The names are {_listed(SIZES)}.")
    unit = _UNIT.fullmatch(parts[1])
    width = length_of(parts[0], (unit["unit"] or "") if unit else "")
    height = length_of(parts[1])
    if isinstance(height, Unread):
        return height
    return width if isinstance(width, Unread) else (width, height)


def paper_of(text: str) -> tuple[str, Size] | Unread:
    """A paper's name and its upright size; a size without a name stands as its own name."""
    name = paper_named(text)
    if name:
        return name, SIZES[name]
    size = size_of(text)
    if isinstance(size, Unread):
        return size
    return " ".join(text.split()), (min(size), max(size))


def holes_of(text: str) -> HoleRow | Unread:
    """`4, 40 mm apart, 6 mm wide, 12 mm from edge`, in any order after the count; or `none`.

    Width and distance from the edge are those of ISO 838 (6 mm, 12 mm) where they are not given.
    """
    if folded(text) in ("none", "0"):
        return HoleRow(0, 0, 0, 0)
    first, *rest = (part.strip() for part in text.split(","))
    if not first.isascii() or not first.isdigit() or len(first) > 3:
        return Unread(f"`{first}` is no number of holes.")
    count = int(first)
    if count > 30:
        return Unread(f"`{first}` are more holes than an edge takes.")
    apart, wide, edge = 0, 6_000, 12_000
    for part in rest:
        length, word = _hole_part(part)
        if isinstance(length, Unread):
            return length
        match word:
            case "apart":
                apart = length
            case "wide":
                wide = length
            case _:
                edge = length
    if count > 1 and not apart:
        return Unread("It is not said how far apart the holes are.")
    return HoleRow(count, apart, wide, edge)


_SAID_OF_HOLES = (
    ("from the edge", "edge"),
    ("from edge", "edge"),
    ("in diameter", "wide"),
    ("wide", "wide"),
    ("apart", "apart"),
)


def _hole_part(part: str) -> tuple[int | Unread, str]:
    words = " ".join(part.split())
    for ending, word in _SAID_OF_HOLES:
        if words.casefold().endswith(ending):
            return length_of(words[: -len(ending)].strip()), word
    return Unread(f"`{words}` says nothing of holes."), ""


def _number(text: str) -> Fraction | Unread:
    fraction = _FRACTION.fullmatch(text.strip())
    if fraction:
        return Fraction(int(fraction[1] or 0)) + Fraction(int(fraction[2]), int(fraction[3]))
    read = read_number(text)
    if isinstance(read, Numeral):
        return read.value
    return Unread(*said_of_number(read)) if text.strip() else Unread("The number is missing.")


def _listed(names: Iterable[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
