"""The words of everything that a handbook prints, each with the places where it stands."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.model import Handbook
from dotleader.handbook.walking import every_phrase
from dotleader.source.text import Spot
from dotleader.syntax.plain import plain

_NO_TEXT = re.compile(r"\{[^{}]*\}|(?:^|(?<=\s))#.*|\S*(?:://|@)\S*", re.MULTILINE)
"""References, comments, and addresses."""
_TOKEN = re.compile(r"(?<![\w.])[^\W\d_]+(?:['-][^\W\d_]+)*(?![\w]|\.[^\W_])")
"""Words with their hyphens. What has digits is none, nor what has a dot inside: a file name, `e.g.`"""


def tokens(handbook: Handbook) -> dict[str, list[Spot]]:
    """By words as written, in reading order of files and lines; typographic marks are made plain."""
    found: dict[str, list[Spot]] = {}
    seen: set[tuple[str, int]] = set()  # amplified text can repeat a line of its card
    for spot in sorted(_texts(handbook), key=lambda spot: spot.order):
        source, start, _ = spot
        if (source.name, start) in seen:
            continue
        seen.add((source.name, start))
        text = plain(spot.text)
        if any(mark in text for mark in "{#@:"):
            text = _NO_TEXT.sub(_blank, text)
        for match in _TOKEN.finditer(text):
            if len(match[0]) > 1:
                place = Spot(source, start + match.start(), start + match.end())
                found.setdefault(match[0], []).append(place)
    return found


def _texts(handbook: Handbook) -> Iterator[Spot]:
    for card in handbook.cards:
        yield card.spot
    for essay in handbook.essays:
        yield essay.spot
    for phrase in every_phrase(handbook):
        yield phrase.spot
    for control in handbook.controls.values():
        if control.does is not None:
            yield control.does.spot
    for value in handbook.values.values():
        bracket = value.spot.text.find("(")
        if value.speed and bracket >= 0:
            yield Spot(value.spot.source, value.spot.start + bracket, value.spot.end)  # what the symbol stands for


def _blank(found: re.Match[str]) -> str:
    return re.sub(r"\S", " ", found[0])
