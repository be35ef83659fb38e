"""The committed parser is the one that the grammar makes, and gives every line a form."""

from __future__ import annotations

import lark
from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.syntax import generated
from dotleader.syntax.grammar import read
from tests.syntax.strategies import JUNK
from tests.tables.make_parser import GENERATED, generated_text, tables


def test_the_parser_has_not_drifted_from_the_grammar() -> None:
    assert tables() == (generated.DATA, generated.MEMO)
    if lark.__version__ == generated.__version__:
        assert GENERATED.read_text(encoding="utf-8") == generated_text()


@given(st.sampled_from(("card_line", "row", "head", "words")), JUNK)
@settings(max_examples=400, deadline=None)
def test_every_line_has_a_production(start: str, text: str) -> None:
    for line in text.split("\n"):
        shown = line.strip()
        if shown:
            assert not isinstance(read(start, shown), int)
