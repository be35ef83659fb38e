"""Fixes applied to texts: which go together, and what comes out."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence

from dotleader.source.finding import Edit, Fix


def compatible(fixes: Iterable[Fix]) -> list[Fix]:
    """The fixes, first come first taken, of which no two touch one another."""
    taken: dict[str, list[tuple[int, int]]] = {}
    chosen: list[Fix] = []
    for fix in fixes:
        if not fix.edits or any(_touches(edit, taken.get(edit.spot.source.name, ())) for edit in fix.edits):
            continue
        chosen.append(fix)
        for edit in fix.edits:
            places = taken.setdefault(edit.spot.source.name, [])
            places.insert(bisect_left(places, (edit.spot.start, edit.spot.end)), (edit.spot.start, edit.spot.end))
    return chosen


def _touches(edit: Edit, places: Sequence[tuple[int, int]]) -> bool:
    """Whether an edit overlaps one of the places, which are sorted and apart, or ends where one begins."""
    start, end = edit.spot.start, edit.spot.end
    at = bisect_left(places, (start, end))
    after = at < len(places) and places[at][0] <= end
    return after or (at > 0 and places[at - 1][1] >= start)


def edited(text: str, edits: Iterable[Edit]) -> str:
    """The text with edits that do not overlap; line feeds in them become what ends the lines of the text."""
    first = text.find("\n")
    line_end = "\r\n" if first > 0 and text[first - 1] == "\r" else "\n"
    parts: list[str] = []
    at = 0
    for edit in sorted(edits, key=lambda edit: (edit.spot.start, edit.spot.end)):
        parts += [text[at : edit.spot.start], edit.text.replace("\n", line_end)]
        at = edit.spot.end
    return "".join([*parts, text[at:]])
