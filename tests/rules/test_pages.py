"""`docs/rules/` says what the rules say."""

from __future__ import annotations

import re

from dotleader.rules.catalogue import RULES
from dotleader.rules.pages import index_text, page_text
from tests.tables.make_rule_pages import EVIDENCE, FOLDER, wanted


def test_the_pages_have_not_drifted() -> None:
    texts = wanted()
    assert {path.name for path in FOLDER.iterdir()} == {EVIDENCE.name, *texts}
    drifted = [name for name, text in texts.items() if (FOLDER / name).read_text(encoding="utf-8") != text]
    assert not drifted, "run `python -m tests.tables.make_rule_pages`"


def test_the_index_leads_to_every_page() -> None:
    assert re.findall(r"\]\(([a-z0-9-]+)\.md\)", index_text(RULES)) == [rule.name for rule in RULES]


def test_a_page_says_everything_once_and_can_be_printed() -> None:
    for rule in RULES:
        text = page_text(rule)
        assert all(character.isprintable() or character == "\n" for character in text)
        assert "\n\n\n" not in text
        for part in (rule.what, rule.why, rule.mend):
            assert text.count(part) == 1
        assert text.count("```text\n") == sum(1 + bool(example.baseline) for example in (*rule.bad, *rule.good))
