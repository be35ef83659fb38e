"""Text with references in braces."""

from __future__ import annotations

from dotleader.source.text import Span
from dotleader.syntax.grammar import read
from dotleader.syntax.tree import Fault, Ref, Words


def read_words(text: str, start: int, faults: list[Fault]) -> Words:
    """Words from `text`, which stands at `start`; a brace without its fellow becomes a fault and stays text."""
    lead = len(text) - len(text.lstrip())
    text = text.strip()
    start += lead
    span = Span(start, start + len(text))
    if "{" not in text and "}" not in text:
        return Words((text,) if text else (), span)
    pieces: list[str | Ref] = []
    for token in read("words", text).children:
        at = Span(start + token.start_pos, start + token.start_pos + len(token))
        if token.type == "REF":
            name = " ".join(token[1:-1].split())
            if name:
                pieces.append(Ref(name, at))
                continue
            faults.append(_empty(at))
        elif token.type == "LONE":
            faults.append(_lone(str(token), at))
        _add(pieces, token[0] if token.type == "DOUBLED" else str(token))
    return Words(tuple(pieces), span)


def _add(pieces: list[str | Ref], text: str) -> None:
    if pieces and isinstance(pieces[-1], str):
        pieces[-1] += text
    else:
        pieces.append(text)


def _lone(brace: str, at: Span) -> Fault:
    fellow = "`}` closes it" if brace == "{" else "`{` opens it"
    return Fault(
        "open-brace",
        at,
        f"There is a `{brace}` here and no {fellow}.",
        "Braces refer to a declared value: `{VG}`. To print a brace, double it: `{{` or `}}`.",
    )


def _empty(at: Span) -> Fault:
    return Fault(
        "open-brace",
        at,
        "There is nothing between these braces.",
        "Write the name of a declared value between them, such as `{VG}`; to print a brace, double it: `{{` or `}}`.",
    )
