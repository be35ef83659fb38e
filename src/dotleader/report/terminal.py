"""What the place that is written to can show."""

from __future__ import annotations

import os
from collections.abc import Mapping
from typing import NamedTuple, TextIO

USUAL_WIDTH = 80
_WIDEST = 100  # longer lines are hard to read back from
_NARROWEST = 40


class Terminal(NamedTuple):
    """`width` in columns; `encoding` is that of the stream, and what it cannot show is escaped."""

    width: int = USUAL_WIDTH
    colour: bool = False
    encoding: str = "utf-8"

    def shows(self, text: str) -> bool:
        if text.isascii():
            return True
        try:
            text.encode(self.encoding)
        except (UnicodeEncodeError, LookupError):
            return False
        return True

    def pick(self, fine: str, plain: str) -> str:
        """`fine` where the encoding has it, else `plain`, which is ASCII."""
        return fine if self.shows(fine) else plain


def terminal_for(stream: TextIO, environ: Mapping[str, str]) -> Terminal:
    """Colour only on a terminal, unless the user says otherwise: `NO_COLOR` goes first, then `FORCE_COLOR`."""
    on_terminal = stream.isatty()
    return Terminal(_width(stream, on_terminal), _colour(on_terminal, environ), stream.encoding or "ascii")


def _colour(on_terminal: bool, environ: Mapping[str, str]) -> bool:
    if environ.get("NO_COLOR"):
        return False
    forced = environ.get("FORCE_COLOR")
    if forced:
        return forced != "0"
    if os.name == "nt" and not {"WT_SESSION", "ANSICON", "TERM"} & environ.keys():
        return False  # an old console prints the codes themselves
    return on_terminal and environ.get("TERM") != "dumb"


def _width(stream: TextIO, on_terminal: bool) -> int:
    if not on_terminal:
        return USUAL_WIDTH
    try:
        columns = os.get_terminal_size(stream.fileno()).columns
    except (OSError, ValueError):
        return USUAL_WIDTH
    return max(_NARROWEST, min(columns, _WIDEST)) if columns else USUAL_WIDTH
