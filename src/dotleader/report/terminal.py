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


def terminal_for(stream: TextIO | None, environ: Mapping[str, str]) -> Terminal:
    """Colour only on a terminal, unless the user says otherwise: `NO_COLOR` goes first, then `FORCE_COLOR`.

    The width is what `COLUMNS` says, else that of the terminal. A stream that is closed is None.
    """
    if stream is None:
        return Terminal()
    on_terminal = stream.isatty()
    width = _wanted(environ) or (_measured(stream) if on_terminal else 0) or USUAL_WIDTH
    return Terminal(max(_NARROWEST, min(width, _WIDEST)), _colour(on_terminal, environ), stream.encoding or "ascii")


def _colour(on_terminal: bool, environ: Mapping[str, str]) -> bool:
    if environ.get("NO_COLOR"):
        return False
    forced = environ.get("FORCE_COLOR")
    if forced:
        return forced != "0"
    if os.name == "nt" and not {"WT_SESSION", "ANSICON", "TERM"} & environ.keys():
        return False  # an old console prints the codes themselves
    return on_terminal and environ.get("TERM") != "dumb"


def _wanted(environ: Mapping[str, str]) -> int:
    """The columns that the user asks for; 0 for none."""
    columns = environ.get("COLUMNS", "")
    return int(columns) if columns.isascii() and columns.isdecimal() and len(columns) < 6 else 0


def _measured(stream: TextIO) -> int:
    """The columns of a terminal; 0 where it does not know them."""
    try:
        return os.get_terminal_size(stream.fileno()).columns
    except (OSError, ValueError):
        return 0
