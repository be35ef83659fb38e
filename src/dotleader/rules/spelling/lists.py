"""The words that are right in any handbook: English as it is spelt on both sides of the ocean, the trade's, units.

`english.zlib` is made by `tests/tables/make_word_list.py`, which says of what; `licence-english.txt` is its licence.
`trade.txt` is our own, and is read as it is.
"""

from __future__ import annotations

import re
import zlib
from bisect import bisect_left
from collections.abc import Iterable
from pathlib import Path

from dotleader.handbook.amounts.unit_spellings import ALIASES
from dotleader.handbook.amounts.unit_table import ROWS

FOLDER = Path(__file__).parent
_PREFIXES = """
    aero air anti auto bi co counter cross de electro fore hydro hyper infra inter intra macro mega micro mid mini mono
    multi non omni over pre pro pseudo quasi re semi sub super tele thermo trans tri turbo ultra un under
"""
BEFORE_A_HYPHEN = frozenset(_PREFIXES.split())
"""What is a word only with another one behind it."""

_LETTERS = re.compile(r"[^\W\d_]{2,}")


class English:
    """A sorted list in which a word is found by halving; no set is built of it, which would take longer to fill than
    all look-ups of a handbook together."""

    def __init__(self, words: list[str]) -> None:
        self._words = words

    def __contains__(self, word: object) -> bool:
        if not isinstance(word, str):
            return False
        at = bisect_left(self._words, word)
        return at < len(self._words) and self._words[at] == word

    def beginning_with(self, letter: str) -> list[str]:
        first = bisect_left(self._words, letter)
        return self._words[first : bisect_left(self._words, chr(ord(letter) + 1), first)]


def english() -> English:
    """Words in small letters; with capitals only those that always have some, as a name or an abbreviation."""
    return English(zlib.decompress((FOLDER / "english.zlib").read_bytes()).decode("ascii").split("\n"))


def trade() -> frozenset[str]:
    """The words and abbreviations of the trade and the letters of all units, in small letters."""
    lines = (FOLDER / "trade.txt").read_text(encoding="utf-8").splitlines()
    own = (word for line in lines if not line.startswith("#") for word in line.split())
    return frozenset((*own, *_unit_words()))


def _unit_words() -> Iterable[str]:
    for text in (*(row.symbol for row in ROWS), *ALIASES):
        for word in _LETTERS.findall(text):
            yield word.lower()
