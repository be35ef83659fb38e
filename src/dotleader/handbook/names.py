"""Names in texts: where one stands, what it may have meant, and what is offered in its place."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from dotleader.source.text import Spot
from dotleader.syntax.plain import folded


def part_of(spot: Spot, words: str) -> Spot:
    """Where words of a text stand; all of the text where they stand in it more than once or otherwise written."""
    found = list(re.finditer(rf"(?<!\w){re.escape(words)}(?!\w)", spot.text)) if words else []
    if len(found) != 1:
        return spot
    return Spot(spot.source, spot.start + found[0].start(), spot.start + found[0].end())


def nearest(name: str, known: Iterable[str], most: int = 3) -> list[str]:
    """The declared names most like `name`, best first; none where nothing is like it."""
    return list(_nearest(name, tuple(known), most))


@lru_cache(8)  # the help and the fix of a finding ask for the same
def _nearest(name: str, known: tuple[str, ...], most: int) -> tuple[str, ...]:
    # Only a book with a fault in it pays for this import.
    from rapidfuzz import fuzz, process  # noqa: PLC0415

    found = process.extract(_bare(name), [*map(_bare, known)], scorer=fuzz.ratio, limit=most, score_cutoff=62)
    return tuple(known[place] for _, _score, place in found)


@lru_cache(16_384)
def _bare(name: str) -> str:
    """A name as it is compared; a long book with many slips asks for all its titles again and again."""
    from rapidfuzz import utils  # noqa: PLC0415

    return utils.default_process(name)


def offered(name: str, known: Iterable[str], none: str) -> str:
    """Help for a name that is not declared: the nearest ones, or `none`."""
    near = nearest(name, known)
    if not near:
        return none
    return "Did you mean " + " or ".join(f"`{choice}`" for choice in near) + "?"


def split_prefix(text: str, names: Iterable[str]) -> tuple[str, str] | None:
    """The longest of `names` (as declared) that `text` begins with, folded, and the rest; None if there is none."""
    words = text.split()
    known = {folded(name): name for name in names}
    for count in range(len(words), 0, -1):
        name = known.get(folded(" ".join(words[:count])))
        if name is not None:
            return name, " ".join(words[count:])
    return None
