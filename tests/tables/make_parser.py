"""Make `src/dotleader/syntax/generated.py` from the grammar: run `python -m tests.tables.make_parser` at the top."""

from __future__ import annotations

import io
from contextlib import redirect_stdout
from pathlib import Path

from lark.lark import Lark
from lark.tools.standalone import gen_standalone

TOP = Path(__file__).parents[2]
GRAMMAR = TOP / "grammar" / "dotleader.lark"
GENERATED = TOP / "src" / "dotleader" / "syntax" / "generated.py"
STARTS = ["head", "card_line", "row", "value", "words"]


def generated_text() -> str:
    """The parser as it should stand, from the grammar as it stands."""
    parser = Lark(GRAMMAR.read_text(encoding="utf-8"), parser="lalr", start=STARTS)
    out = io.StringIO()
    with redirect_stdout(out):
        gen_standalone(parser, out=out)
    return out.getvalue()


if __name__ == "__main__":
    GENERATED.write_text(generated_text(), encoding="utf-8")
