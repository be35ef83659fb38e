"""Responses that name a position and say more, and what to do about one that names none."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from dotleader.handbook.names import nearest
from dotleader.handbook.positions import matched
from dotleader.source.finding import Fix, swapped
from dotleader.source.text import Spot
from dotleader.syntax.line_faults import one_apart
from dotleader.syntax.plain import folded

_SHORTEST = 4  # letters below which a word is too often near a position by chance
_CONNECTING = re.compile(r" (THEN|IF|OTHERWISE|OR)(?= )")
_BETWEEN = re.compile(r"\s*[/&+,;]\s*|\s+(?:and|or|then|to)\s+|\s+", re.IGNORECASE)
_PIECES = re.compile(r",| then | or | and | otherwise ")
_DIGITS = re.compile(r"\d+")
_WHEN = re.compile(r"^(?:when|if) ")
_MARKS = " ,;:()[]-\N{EN DASH}\N{EM DASH}"


def is_remark(text: str, own: Sequence[str], known: Collection[str]) -> bool:
    """Whether what follows a position and a comma only remarks on it: `LANDING, when the field is made`.

    It does not where a part of it is, begins with or nearly is a position (`LEFT, RIGHT`; `OFF, ON FOR LANDING`).
    `known` are all positions of all controls, matched.
    """
    pieces = [piece.strip(" .;") for piece in _PIECES.split(text)]
    return any(pieces) and not any(_is_position(piece, own, known) for piece in pieces if piece)


def _is_position(piece: str, own: Sequence[str], known: Collection[str]) -> bool:
    if matched(piece) in known or _leading(piece, own):
        return True
    return any(len(name) >= _SHORTEST and one_apart(folded(piece), folded(name)) for name in own)


def help_for(text: str, own: Sequence[str], known: Collection[str]) -> str:
    """What to write for a response that names none of a control's `own` positions."""
    names = ", ".join(f"`{position}`" for position in own)
    small = _CONNECTING.sub(lambda found: found[0].lower(), text)
    if small != text:
        return f"Connecting words are in lower case: `{small}`. The positions are {names}."
    pieces = [piece for piece in _BETWEEN.split(text) if piece]
    if len(pieces) > 1 and all(_leading(piece, own) == piece for piece in pieces):
        turns, choice = " then ".join(pieces), " or ".join(pieces)
        return f"Positions in turn are joined by `then`, others by `or`: `{turns}`, `{choice}`."
    position = _leading(text, own)
    rest = text[len(position) :].strip(_MARKS)
    if position and is_remark(rest, own, known):
        condition = _WHEN.sub("", rest)
        right = f"{position} if {condition}" if condition != rest else f"{position}, {rest}"
        return (
            f"A condition follows a position after `if`, a remark after a comma: `{right}`. The positions are {names}."
        )
    offer = _offer(text, own)
    return f"{offer}Its positions are {names}; a word for several of them is declared with `means`."


def _offer(text: str, own: Sequence[str]) -> str:
    near = _near(text, own)
    return f"Did you mean `{near}`? " if near else ""


def _near(text: str, own: Sequence[str]) -> str:
    """The position that was probably meant. Another number never is."""
    digits = _DIGITS.findall(text)
    same = [position for position in own if not digits or _DIGITS.findall(position) == digits]
    near = same[:1] if text.isdecimal() and len(same) == 1 else nearest(text, same, 1)
    return near[0] if near else ""


def fix_for(text: str, spot: Spot, own: Sequence[str]) -> Fix | None:
    """The one response that was probably meant, where it is the whole text; what a pilot does is never safe to mend."""
    if " ".join(spot.text.split()) != text:
        return None
    small = _CONNECTING.sub(lambda found: found[0].lower(), text)
    if small != text:
        return swapped(spot, small, safe=False)
    near = _near(text, own)
    alone = len(nearest(text, own, 2)) == 1
    return swapped(spot, near, safe=False) if near and alone and not _leading(text, own) else None


def _leading(text: str, positions: Sequence[str]) -> str:
    """The longest position that a text begins with, as it is written there; `""` for none."""
    found = ""
    for name in positions:
        head = text[: len(name)]
        if len(name) > len(found) and folded(head) == folded(name) and not text[len(name) : len(name) + 1].isalnum():
            found = head
    return found
