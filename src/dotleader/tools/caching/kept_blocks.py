"""Parsed blocks kept between two runs: of a handbook in which one card was changed only that card is parsed.

One file for each handbook, with the blocks of its last lint. It is made with `marshal`, which holds plain values and
no code; what is read has the digest that it was written with, and is looked through before it is used.
"""

from __future__ import annotations

import marshal
import os
import sys

from dotleader.syntax.stored import packed, unpacked
from dotleader.syntax.tree import Parsed
from dotleader.tools.caching import cache_folder
from dotleader.tools.caching.digests import digest
from dotleader.tools.caching.identity import identity

_KIND = "blocks"
_FORM = 1
_MOST_TEXT = 800_000
"""Letters; packed blocks take about three times as many bytes, and the cache takes no file above 4 MB."""


class KeptBlocks:
    """Parsed blocks by their texts, as the parser asks for them and tells of them."""

    def __init__(self, main: str) -> None:
        self._key = _key(main)
        self._before = _read(self._key)
        self._now: dict[str, tuple[object, ...]] = {}
        self._fresh = False
        self._size = 0  # of the texts of what is kept

    def known(self, text: str) -> Parsed | None:
        key = digest(text.encode("utf-8", "surrogatepass"))
        plain = self._before.get(key)
        parsed = unpacked(plain) if plain is not None else None
        if parsed is not None and plain is not None:
            self._hold(key, text, plain)
        return parsed

    def learn(self, text: str, parsed: Parsed) -> None:
        if self._key and self._size <= _MOST_TEXT:
            self._hold(digest(text.encode("utf-8", "surrogatepass")), text, packed(parsed))
            self._fresh = True

    def _hold(self, key: str, text: str, plain: tuple[object, ...]) -> None:
        """A book that is too long to be kept is not held in memory either."""
        self._size += len(text)
        if self._size <= _MOST_TEXT:
            self._now[key] = plain
        else:
            self._now.clear()

    def keep(self) -> None:
        """Keep what was asked for in this run, if something of it is new."""
        if self._fresh and self._key and self._size <= _MOST_TEXT:
            cache_folder.keep(_KIND, self._key, marshal.dumps((_FORM, self._now)))


def _key(main: str) -> str:
    try:
        tool = identity()
    except OSError:
        return ""
    if not cache_folder.folder():
        return ""
    about = (_FORM, tool, sys.version, os.path.abspath(main))
    return digest(repr(about).encode("utf-8", "surrogatepass"))


def _read(key: str) -> dict[str, tuple[object, ...]]:
    body = cache_folder.kept(_KIND, key) if key else None
    if body is None:
        return {}
    try:
        form, blocks = marshal.loads(body)
    except (EOFError, ValueError, TypeError):
        return {}
    return blocks if form == _FORM and isinstance(blocks, dict) else {}
