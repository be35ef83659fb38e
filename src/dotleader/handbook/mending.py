"""The one name that was meant, as a fix. Only a handbook with a fault in it imports this."""

from __future__ import annotations

import re
from collections.abc import Iterable

from dotleader.handbook.names import nearest, part_of
from dotleader.source.finding import Fix, swapped
from dotleader.source.text import Spot
from dotleader.syntax.line_faults import one_apart
from dotleader.syntax.plain import folded

SHORTEST = 5
"""Letters below which two names are too often near by chance."""
_ONE_OFFER = re.compile(r"(?:Did you mean|Write) `([^`]+)`[.?](?: A zero .*)?")
_DIGITS = re.compile(r"\d+")


def respelt(spot: Spot, name: str, known: Iterable[str]) -> Fix | None:
    """`name`, written somewhere at `spot`, as the one of `known` that was meant; None where nobody can say which.

    Safe where it is a slip away from one name alone and no number differs; else, where but one is near at all, somebody
    has to look.
    """
    names = list(dict.fromkeys(known))
    near = nearest(name, names)
    place = part_of(spot, name)
    if not near or place.text != name or not is_plain(near[0]):
        return None
    certain = is_misspelt(name, near[0], names)
    return swapped(place, near[0], safe=certain) if certain or (len(near) == 1 and _may_be(name, near[0])) else None


def reference_offered(help_: str, spot: Spot) -> Fix | None:
    """The one reference that the help offers; a number of an instruction is the pilot's, and so it is never safe."""
    found = _ONE_OFFER.fullmatch(help_)
    if found is None or not (spot.text.startswith("{") and spot.text.endswith("}")):
        return None
    right = found[1].strip("{}")
    form_only = found[1].startswith("{")  # a zero for a letter O, a unit without `in`
    return swapped(spot, f"{{{right}}}", safe=False) if form_only or _may_be(spot.text[1:-1], right) else None


def _may_be(name: str, right: str) -> bool:
    """Whether a name may be another one misspelt: of short ones, and those with numbers, each letter may mean it."""
    one, other = folded(name), folded(right)
    return len(one) >= SHORTEST and _DIGITS.findall(one) == _DIGITS.findall(other) and one_apart(one, other, 2)


def is_misspelt(name: str, right: str, known: Iterable[str]) -> bool:
    """Whether `name` is one slip away from `right`, or two in a long name, and no other known name is that near."""
    key = folded(name)
    most = 1 if len(key) < 2 * SHORTEST else 2
    if len(key) < SHORTEST or _DIGITS.findall(name) != _DIGITS.findall(right):
        return False
    return [each for each in map(folded, known) if one_apart(key, each, most)] == [folded(right)]


def is_plain(text: str) -> bool:
    """Whether a text can be written as it reads: nothing in it means something else in a source."""
    return bool(text.strip()) and not any(mark in text for mark in "{}[]#\n") and ".." not in text
