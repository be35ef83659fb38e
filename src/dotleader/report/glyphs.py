"""How each character of a text is shown, and how many columns it takes."""

from __future__ import annotations

import re
import unicodedata
from functools import cache
from typing import NamedTuple

from dotleader.report.terminal import Terminal

_TAB = 4
_SHOWS_AS_IS = re.compile(r"[ -~]*")


class Glyph(NamedTuple):
    """One character of the source as it is shown; a combining mark takes no column."""

    text: str
    width: int


def glyphs(text: str, terminal: Terminal) -> list[Glyph]:
    """One for each code point of a line. A tab is shown as an arrow and reaches to the next fourth column."""
    made: list[Glyph] = []
    column = 0
    arrow = terminal.pick("→", ">")
    for character in text:
        if character == "\t":
            width = _TAB - column % _TAB
            glyph = Glyph(arrow + " " * (width - 1), width)
        else:
            glyph = _glyph(character, terminal)
        column += glyph.width
        made.append(glyph)
    return made


def escaped(text: str, terminal: Terminal) -> str:
    """A text for people with what would confuse a terminal, or what it cannot show, written out."""
    if _SHOWS_AS_IS.fullmatch(text):
        return text
    return "".join(_glyph(character, terminal).text for character in text)


def width_of(text: str, terminal: Terminal) -> int:
    """Columns of a text that is already escaped."""
    return len(text) if text.isascii() else sum(_glyph(character, terminal).width for character in text)


@cache
def _glyph(character: str, terminal: Terminal) -> Glyph:
    if " " <= character <= "~":
        return Glyph(character, 1)
    wide = unicodedata.east_asian_width(character) in "WF"
    if unicodedata.category(character) == "Zs":
        return Glyph("  " if wide else " ", 2 if wide else 1)
    if not character.isprintable() or not terminal.shows(character):
        written = _written(ord(character))
        return Glyph(written, len(written))
    if unicodedata.combining(character) or unicodedata.category(character) in ("Mn", "Me"):
        return Glyph(character, 0)
    return Glyph(character, 2 if wide else 1)


def _written(code: int) -> str:
    if code < 0x100:
        return f"\\x{code:02x}"
    return f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"
