"""`docs/rules/evidence.md` says what is found today."""

from __future__ import annotations

from tests.tables.make_evidence import wanted
from tests.tables.make_rule_pages import EVIDENCE


def test_the_page_has_not_drifted() -> None:
    assert EVIDENCE.read_text(encoding="utf-8") == wanted(), "run `python -m tests.tables.make_evidence`"
