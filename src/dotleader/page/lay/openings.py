"""Where a long run of items is opened, so that the eye keeps its line and a stop point is easy to name."""

from __future__ import annotations

import re
from collections.abc import Sequence

from dotleader.handbook.cards import Item
from dotleader.page.lay.measures import RUN

_BLANK_LINE = re.compile(r"\n[ \t]*\r?\n")


def openings(items: Sequence[Item]) -> frozenset[int]:
    """Before which items a run of more than `RUN` is opened.

    Where the author left a blank line, for there the sense changes; what is still too long is parted evenly.
    """
    if len(items) <= RUN:
        return frozenset()
    blanks = [at for at in range(1, len(items)) if _apart(items[at - 1], items[at])]
    if len(blanks) == len(items) - 1:  # a blank line after every item says nothing
        blanks = []
    found = set(blanks)
    for start, end in zip([0, *blanks], [*blanks, len(items)], strict=True):
        parts = -(-(end - start) // RUN)
        found.update(start + -(-(end - start) * part // parts) for part in range(1, parts))
    return frozenset(found)


def _apart(above: Item, below: Item) -> bool:
    source, start, end = above.spot.source, above.spot.end, below.spot.start
    return source is below.spot.source and _BLANK_LINE.search(source.text, start, end) is not None
