"""Make `src/dotleader/syntax/generated.py` from the grammar: run `python -m tests.tables.make_parser` at the top."""

from __future__ import annotations

import io
from collections import deque
from contextlib import redirect_stdout
from pathlib import Path
from typing import Any

from lark.grammar import Rule
from lark.lark import Lark
from lark.lexer import TerminalDef
from lark.tools.standalone import gen_standalone

TOP = Path(__file__).parents[2]
GRAMMAR = TOP / "grammar" / "dotleader.lark"
GENERATED = TOP / "src" / "dotleader" / "syntax" / "generated.py"
UNLIMITED = 2**31
"""Stands for any length of a token; what Python says for it is not the same in all its versions."""
STARTS = ["head", "card_line", "row", "value", "words"]


def generated_text() -> str:
    """The parser as it should stand, from the grammar as it stands."""
    out = io.StringIO()
    with redirect_stdout(out):
        gen_standalone(_InOrder(), out=out)
    return _lighter(out.getvalue())


LIGHTER = (
    ("import logging\nfrom dataclasses import dataclass\n", ""),
    (
        'logger: logging.Logger = logging.getLogger("lark")\nlogger.addHandler(logging.StreamHandler())\n',
        "class _Silent:\n    debug = info = warning = exception = staticmethod(lambda *_, **__: None)\n\n\n"
        "logger = _Silent()\n",
    ),
    ("logger.setLevel(logging.CRITICAL)\n", ""),
    (
        "@dataclass(frozen=True)\nclass TextSlice(Generic[AnyStr]):\n    #--\n"
        "    text: AnyStr\n    start: int\n    end: int\n",
        "class TextSlice(Generic[AnyStr]):\n    #--\n"
        "    def __init__(self, text, start, end):\n        self.text, self.start, self.end = text, start, end\n"
        "        self.__post_init__()\n",
    ),
    ("from inspect import getmembers, getmro\n", ""),
    ("import pickle, zlib, base64\n", ""),
)
"""What the tool writes and nothing of ours asks for: logging, dataclasses, inspect and pickle, which together took a
third of the time that importing the parser took. Visitors with `v_args`, and lark's own cache, do not work without."""


def _lighter(text: str) -> str:
    """The generated text without what is not needed. Fails where lark writes something else than it did."""
    for before, after in LIGHTER:
        if text.count(before) != 1:
            raise ValueError(f"lark's tool no longer writes {before!r} once")
        text = text.replace(before, after)
    return text


def tables() -> tuple[Any, Any]:
    """What of the generated parser comes from the grammar; the rest is lark's own code."""
    return _InOrder().memo_serialize(None)


class _InOrder:
    """The parser as lark's standalone tool asks for it.

    lark numbers states and symbols in the order in which a set gives them, another one in every run. Here symbols are
    in the order of their names and states in that in which they are reached, so that the same grammar makes the same
    file.
    """

    def memo_serialize(self, types: object) -> tuple[Any, Any]:
        parser = Lark(GRAMMAR.read_text(encoding="utf-8"), parser="lalr", start=STARTS)

        data, memo = parser.memo_serialize([TerminalDef, Rule])
        _put_in_order(data["parser"]["parser"])
        for pattern in (entry["pattern"] for entry in memo.values() if "pattern" in entry):
            pattern["_width"] = [min(width, UNLIMITED) for width in pattern["_width"]]
        return data, memo


def _put_in_order(table: dict[str, Any]) -> None:
    names = table["tokens"]
    actions = {
        state: dict(sorted((names[symbol], action) for symbol, action in row.items()))
        for state, row in table["states"].items()
    }
    reached = {table["start_states"][start]: n for n, start in enumerate(STARTS)}
    waiting = deque(reached)
    while waiting:
        for kind, to in actions[waiting.popleft()].values():
            if kind == 0 and to not in reached:
                reached[to] = len(reached)
                waiting.append(to)
    symbols = {name: n for n, name in enumerate(sorted(set(names.values())))}
    table["tokens"] = {n: name for name, n in symbols.items()}
    table["states"] = {
        n: {symbols[name]: (kind, reached[to] if kind == 0 else to) for name, (kind, to) in actions[state].items()}
        for state, n in reached.items()
    }
    for ends in ("start_states", "end_states"):
        table[ends] = {start: reached[table[ends][start]] for start in STARTS}


if __name__ == "__main__":
    GENERATED.write_text(generated_text(), encoding="utf-8")
