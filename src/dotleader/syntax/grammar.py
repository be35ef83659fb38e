"""The generated parser, and nothing of it but `read`.

`generated.py` is made from `grammar/dotleader.lark` by lark's standalone tool, so that a lint need not import lark;
`python -m tests.tables.make_parser` makes it anew and a test fails when the two drift apart.
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Any

REMEMBERED = 4096
"""Texts whose trees are kept: cards repeat their lines, and an editor reads a file again after every stroke."""


@cache
def _parser() -> tuple[Any, Any, Any]:
    """The generated module with lexer and parser; imported for the first line that has to be parsed.

    The module has no types; Any ends in this room, its trees go no further than `lines` and `values`. A lark parser
    asks for each text anew which lexer and parser it has been built with; these are they.
    """
    from dotleader.syntax import generated  # noqa: PLC0415  # a lint that knows all blocks does without

    built: Any = generated.Lark_StandAlone()  # type: ignore[no-untyped-call]  # generated, without types
    return generated, built.parser.lexer, built.parser.parser.parser


@lru_cache(REMEMBERED)
def read(start: str, text: str) -> Any:
    """The tree of `text` by the start symbol `start`, or as an int the offset at which it stops making sense.

    A tree is shared by all lines with the same text; nobody may change it.
    """
    generated, lexer, parser = _parser()
    try:
        return parser.parse(generated.LexerThread.from_text(lexer, text), start)
    except generated.UnexpectedInput as trouble:
        token = getattr(trouble, "token", None)
        if token is not None and token.type == "$END":
            return len(text)
        at = trouble.pos_in_stream
        return min(at, len(text)) if isinstance(at, int) else len(text)
