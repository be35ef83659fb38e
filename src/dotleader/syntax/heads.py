"""Unindented lines: the keyword that opens a block, and what its head says."""

from __future__ import annotations

import re
from typing import Any

from dotleader.source.text import Span
from dotleader.syntax.grammar import read
from dotleader.syntax.line_faults import CARD_KEYWORDS, near_word, right_keyword, short
from dotleader.syntax.lines import LEADER
from dotleader.syntax.plain import plain
from dotleader.syntax.tree import Allow, Fault, Head, Mend, Words
from dotleader.syntax.words import read_words

_TITLE = re.compile(r"[^\W\d_][\w'/ -]{2,40}")
"""What may be the title of a card that does not say its kind."""

CARD_KINDS = ("normal", "abnormal", "emergency")
NAMED = ("handbook", "include", *CARD_KINDS, "text", "stock", "punch", "book", "gauge")
UNNAMED = ("sources", "speeds", "values", "equipment", "electrical", "rules")
BLOCK_KEYWORDS = (*NAMED, *UNNAMED)
_NAME_OPTIONAL = ("stock", "handbook")

SAMPLES = {
    "handbook": "handbook Ostrel Two flight handbook",
    "include": "include emergency.cards",
    "normal": "normal Before takeoff",
    "abnormal": "abnormal Alternator failure",
    "emergency": "emergency Engine failure in flight",
    "text": "text Foreword",
    "gauge": "gauge Oil pressure in psi from engine manual",
    "stock": "stock",
    "punch": "punch Desk punch",
    "book": "book Cockpit set",
    "sources": "sources",
    "speeds": "speeds",
    "values": "values",
    "equipment": "equipment",
    "electrical": "electrical",
    "rules": "rules",
}
# Words that people write for a block keyword; the right one is offered and the block is read as if it stood there.
_SLIPS = {
    "card": "normal",
    "checklist": "normal",
    "procedure": "normal",
    "emergencies": "emergency",
    "equip": "equipment",
    "controls": "equipment",
    "switches": "equipment",
    "electrics": "electrical",
    "electric": "electrical",
    "source": "sources",
    "speed": "speeds",
    "value": "values",
    "gauges": "gauge",
    "instrument": "gauge",
    "aircraft": "handbook",
    "books": "book",
    "import": "include",
    "paper": "stock",
    "perforator": "punch",
    "punches": "punch",
    "rule": "rules",
    "thresholds": "rules",
    "limits": "rules",
}


def head_line(written: str, start: int, allow: Allow | None, faults: list[Fault]) -> Head:
    """The head that `written` (indentation and allow mark gone) is, standing at `start` in its block."""
    text = plain(written)
    tree = read("head", text)
    span = Span(start, start + len(text))
    kind = "unknown_head" if isinstance(tree, int) else str(tree.data)
    if kind == "unknown_head":
        return _unknown(text, span, allow, faults)
    key = tree.children[0]
    keyword = key.strip()
    name = unit = source = None
    for part in tree.children[1:]:
        token = part if hasattr(part, "type") else part.children[0]
        match token.type:
            case "TITLE" if keyword == "include":  # the name of a file, whatever marks it has
                path = written[token.start_pos :]
                name = Words((path,), Span(start + token.start_pos, start + len(written)))
            case "TITLE" | "GAUGE_NAME":
                name = read_words(token, start + token.start_pos, faults)
            case "IN_TAIL":
                unit = _tail(token, "in", start)
            case "FROM_TAIL":
                source = _tail(token, "from", start)
            case _:
                faults.append(_surplus(keyword, token, start))
    if name is None and keyword in NAMED and keyword not in _NAME_OPTIONAL:
        faults.append(
            Fault(
                "unnamed-block",
                span,
                f"`{keyword}` has no name.",
                f"Its name follows on the same line: `{SAMPLES[keyword]}`.",
            )
        )
    return Head(keyword, name, unit, source, span, allow)


def _tail(token: Any, word: str, start: int) -> Words:
    text = token.strip()[len(word) :]
    end = start + token.start_pos + len(token.rstrip())
    begin = end - len(text.lstrip())
    return Words((" ".join(text.split()),), Span(begin, end))


def _surplus(keyword: str, token: Any, start: int) -> Fault:
    at = start + token.start_pos + len(token) - len(token.lstrip())
    return Fault(
        "stray-line",
        Span(at, at + len(token.strip())),
        f"`{token.strip()}` follows `{keyword}`, which has no name.",
        f"`{keyword}` stands alone, and what it declares is indented below it.",
    )


def _not_a_head(text: str, first: str) -> str:
    """What to do about an unindented line that begins with nothing like a keyword."""
    if first.rstrip(":").casefold() in CARD_KEYWORDS:
        return f"`{first}` belongs to a card: indent it by two spaces below the line with its title."
    if LEADER.search(text):
        return "A line with a leader stands below the line that opens its block, such as `normal Before takeoff`."
    blocks = ", ".join(f"`{word}`" for word in BLOCK_KEYWORDS)
    kinds = ", ".join(f"`{kind}`" for kind in CARD_KINDS)
    card = f"A card begins with its kind, one of {kinds}: `normal {text}`. " if _TITLE.fullmatch(text) else ""
    return f"{card}A block begins with one of {blocks}; what belongs to the block above is indented by two spaces."


def _unknown(text: str, span: Span, allow: Allow | None, faults: list[Fault]) -> Head:
    """An unindented line that begins with no keyword: read as the block that it was probably meant to be."""
    first, _, rest = text.partition(" ")
    near = near_word(first.rstrip(":"), BLOCK_KEYWORDS, _SLIPS)
    word = Span(span.start, span.start + len(first))
    if near:
        title = rest.strip() if near in NAMED else ""
        right = f"{near} {short(title)}" if title else SAMPLES[near]
        help_ = right_keyword(f"{first} {title}".strip(), near, title, right)
        message = f"`{first}` opens no block; `{near}` is the nearest keyword."
    else:
        help_ = _not_a_head(text, first)
        message = f"`{first}` opens no block."
    mend = Mend(word, near, safe=first.rstrip(":").casefold() == near) if near else None
    faults.append(Fault("unknown-keyword", word, message, help_, mend))
    name = Words((rest.strip(),), Span(span.end - len(rest.lstrip()), span.end)) if rest.strip() else None
    return Head(near or "?", name, None, None, span, allow)
