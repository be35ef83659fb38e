"""The keyword that was probably meant: at the head of a line of a card, or before the source of a number."""

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

_FROM_SLIPS = frozenset(("form", "frm", "fom", "fro", "fron", "frome", "fromm", "frmo", "ffrom", "rom", "from"))
_LETTERS = re.compile(r"[^\W\d_]+")

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


def near_source_word(text: str) -> tuple[int, int, str]:
    """Where a word stands that was probably meant to be `from` or `unverified`, and the right one; or nothing.

    `text` is what follows a number. In any case: keywords are lower case, so that `Unverified` is a slip, too.
    """
    for found in _LETTERS.finditer(text):
        word, lower, last = found[0], found[0].casefold(), not text[found.end() :].strip()
        if last and word != "unverified" and (lower == "unverified" or one_apart(lower, "unverified", 2)):
            return found.start(), found.end(), "unverified"
        if not last and word != "from" and lower in _FROM_SLIPS:
            return found.start(), found.end(), "from"
    return 0, 0, ""
