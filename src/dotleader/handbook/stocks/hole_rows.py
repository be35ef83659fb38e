"""What `holes` says: `4, 40 mm apart, 6 mm wide, 12 mm from edge`, in its three forms."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from dotleader.handbook.stocks.reading import Unread, exact_length, length_of, unit_of
from dotleader.handbook.stocks.sizes import micrometres
from dotleader.handbook.stocks.written import HoleRow
from dotleader.syntax.plain import folded

MOST_HOLES = 30

_SAID_OF_HOLES = (
    ("from the edge", "edge"),
    ("from edge", "edge"),
    ("in diameter", "wide"),
    ("wide", "wide"),
    ("apart", "apart"),
)
_HOW = {"wide": "how wide", "edge": "how far from the edge", "apart": "how far apart"}


def holes_of(text: str) -> HoleRow | Unread:
    """A row of holes: with one distance, with all of them (`6, 19 + 19 + 70 + 19 + 19 mm apart`), by their places
    (`at 32, 51, 70, 140, 159, 178 mm`), or `none`.

    After the count or the places the parts come in any order. Width and distance from the edge are those of ISO 838
    (6 mm, 12 mm) where they are not given.
    """
    if folded(text) in ("none", "0"):
        return HoleRow(0, (), 0, 0)
    parts = [" ".join(part.split()) for part in text.split(",")]
    at: tuple[int, ...] = ()
    if parts[0].casefold().startswith("at "):
        first = next((n for n, part in enumerate(parts) if _said(part)), len(parts))
        places = _places([parts[0][3:], *parts[1:first]])
        if isinstance(places, Unread):
            return places
        at, rest = places, parts[first:]
        count = len(at)
    else:
        number, rest = parts[0], parts[1:]
        if not number.isascii() or not number.isdigit() or len(number) > 3:
            return Unread(f"`{number}` is no number of holes.")
        count = int(number)
    if count > MOST_HOLES:
        return Unread(f"{count} are more holes than an edge takes.")
    return _row(count, at, rest)


def _row(count: int, at: tuple[int, ...], parts: list[str]) -> HoleRow | Unread:
    gaps: tuple[Fraction, ...] = ()
    sizes = {"wide": 6_000, "edge": 12_000}
    seen: set[str] = set()
    for part in parts:
        word = _said(part)
        if not word:
            return Unread(f"`{part}` says nothing of holes.")
        if word in seen:
            return Unread(f"It is said twice {_HOW[word]} the holes are.")
        seen.add(word)
        length = _without(part)
        if word == "apart":
            found = _gaps(length, count)
            if isinstance(found, Unread):
                return found
            gaps = found
        else:
            size = length_of(length)
            if isinstance(size, Unread):
                return size
            sizes[word] = size
    if at and gaps:
        return Unread("It is said where the holes are, and how far apart as well.", "Leave one of the two out.")
    if count > 1 and not at and not gaps:
        return Unread("It is not said how far apart the holes are.")
    return HoleRow(count, gaps, sizes["wide"], sizes["edge"], at)


def _said(part: str) -> str:
    """What a part speaks of; `""` where it is a bare number or nothing that is known."""
    return next((word for ending, word in _SAID_OF_HOLES if part.casefold().endswith(ending)), "")


def _without(part: str) -> str:
    ending = next(ending for ending, _ in _SAID_OF_HOLES if part.casefold().endswith(ending))
    return part[: -len(ending)].strip()


def _gaps(text: str, count: int) -> tuple[Fraction, ...] | Unread:
    """From each hole to the next: one distance for all, or one for each."""
    parts = [part.strip() for part in text.split("+")]
    lengths = []
    for part in parts:
        length = exact_length(part, unit_of(parts[-1]))
        if isinstance(length, Unread):
            return length
        lengths.append(length)
    if len(lengths) == 1:
        return tuple(lengths * max(0, count - 1))
    if len(lengths) != count - 1:
        return Unread(
            f"`{text}` are {len(lengths)} distances, and between {count} holes there are {max(0, count - 1)}."
        )
    return tuple(lengths)


def _places(parts: list[str]) -> tuple[int, ...] | Unread:
    """The centres from the end of the edge; a number without a unit takes that of the last."""
    exact = []
    for part in parts:
        length = exact_length(part, unit_of(parts[-1]))
        if isinstance(length, Unread):
            return length
        exact.append(length)
    places = tuple(micrometres(length) for length in exact)
    if any(here >= there for here, there in pairwise(places)):
        return Unread(
            "The places of the holes are not in their order.",
            "Count all of them from one end of the edge, nearest first.",
        )
    return places
