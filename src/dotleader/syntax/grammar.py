"""The generated parser, and nothing of it but `read`.

`generated.py` is made from `grammar/dotleader.lark` by lark's standalone tool, so that a lint need not import lark;
`python -m tests.tables.make_parser` makes it anew and a test fails when the two drift apart.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from dotleader.syntax import generated

# The generated module has no types; Any ends in this room, its trees go no further than `lines` and `values`.
_PARSER: Any = generated.Lark_StandAlone()  # type: ignore[no-untyped-call]  # generated, without types
# A lark parser asks for each text anew which lexer and parser it has been built with; these are they.
_LEXER: Any = _PARSER.parser.lexer
_LALR: Any = _PARSER.parser.parser.parser

REMEMBERED = 4096
"""Texts whose trees are kept: cards repeat their lines, and an editor reads a file again after every stroke."""


@lru_cache(REMEMBERED)
def read(start: str, text: str) -> Any:
    """The tree of `text` by the start symbol `start`, or as an int the offset at which it stops making sense.

    A tree is shared by all lines with the same text; nobody may change it.
    """
    try:
        return _LALR.parse(generated.LexerThread.from_text(_LEXER, text), start)
    except generated.UnexpectedInput as trouble:
        token = getattr(trouble, "token", None)
        if token is not None and token.type == "$END":
            return len(text)
        at = trouble.pos_in_stream
        return min(at, len(text)) if isinstance(at, int) else len(text)
