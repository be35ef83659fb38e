"""What word processors leave behind, made plain one character for one, so that offsets stay true."""

from __future__ import annotations

from functools import lru_cache

_SPACES = "\u00a0\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000"
_DOUBLE_QUOTES = "\u201c\u201d\u201e\u201f\u00ab\u00bb"
_SINGLE_QUOTES = "\u2018\u2019\u201a\u201b\u2032\u00b4"
_DASHES = "\u2010\u2011\u2012\u2013\u2014\u2015\u2212"

_PLAIN = str.maketrans(
    {
        **dict.fromkeys(_SPACES, " "),
        **dict.fromkeys(_DOUBLE_QUOTES, '"'),
        **dict.fromkeys(_SINGLE_QUOTES, "'"),
        **dict.fromkeys(_DASHES, "-"),
    }
)


def plain(text: str) -> str:
    """The text with typographic quotes, dashes and spaces as their plain fellows; same length."""
    return text if text.isascii() else text.translate(_PLAIN)


@lru_cache(4096)
def folded(name: str) -> str:
    """The form in which names are compared: without regard to case or runs of spaces."""
    return " ".join(name.split()).casefold()


def looks(name: str) -> str:
    """The form in which names look alike, the letter O as a zero: `VSO` and `VS0`."""
    return folded(name).replace("o", "0")
