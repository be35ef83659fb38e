"""The keyword that a line of a card was probably meant to begin with."""

from __future__ import annotations

import re

from dotleader.syntax.line_faults import CARD_KEYWORDS, one_apart

# What people write for a keyword. The right word is offered, never taken silently.
_SLIPS = {
    "goto": "go to",
    "until": "repeat until",
    "repeat": "repeat until",
    "else": "otherwise",
    "elif": "or if",
    "else if": "or if",
    "notes": "note",
    "cautions": "caution",
    "warnings": "warning",
    "trigger": "when",
    "condition": "when",
    "section": "group",
    "heading": "group",
    "memory items": "memory",
    "choose": "one of",
    "stop": "end",
}

_ENDS = frozenset(".;,!")
"""Marks that a keyword at the end of a line gets from somebody who writes sentences."""


def near_keyword(text: str) -> tuple[str, int]:
    """The keyword that a line was probably meant to begin with, and how much of the line stands for it; or nothing."""
    lower = text.casefold()
    for keyword in sorted((*CARD_KEYWORDS, *_SLIPS), key=len, reverse=True):
        length = len(keyword)
        ended = lower[length:] in _ENDS
        if lower[:length] != keyword or not (ended or lower[length : length + 1] in ("", " ", ":", "\t")):
            continue
        if text[:length] != keyword or keyword in _SLIPS or ended or lower[length : length + 1] == ":":
            return _SLIPS.get(keyword, keyword), len(text) if ended else length
    first = re.split(r"[\s:]", lower, maxsplit=1)[0]
    if len(first) >= 4 and first == text[: len(first)]:
        for keyword in CARD_KEYWORDS:
            if len(keyword) >= 4 and " " not in keyword and one_apart(first, keyword):
                return keyword, len(first)
    return "", 0
