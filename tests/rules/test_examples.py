"""The examples of every rule are its tests: the exact findings, on exactly the marked text."""

from __future__ import annotations

import pytest

from dotleader.rules.catalogue import FACTS, RULES
from dotleader.rules.rule import Example, Rule
from dotleader.source.finding import Severity
from tests.rules.pipeline import findings_of, said

# No text can show bytes that are not UTF-8: the example is stored as its author's old editor would have.
ENCODED = {"not-utf8": "cp1252"}

BAD = [(rule, example) for rule in RULES for example in rule.bad]
GOOD = [(rule, example) for rule in RULES for example in rule.good]


def _id(value: object) -> str:
    return value.name if isinstance(value, Rule) else ""


def _bytes(rule: Rule, example: Example) -> bytes:
    return example.text.encode(ENCODED.get(rule.name, "utf-8"))


@pytest.mark.parametrize(("rule", "example"), BAD, ids=_id)
def test_bad_example(rule: Rule, example: Example) -> None:
    found = findings_of(_bytes(rule, example), baseline=example.baseline)
    mine = [(name, text) for name, text in said(found) if name == rule.name]
    assert mine == [pair for pair in example.findings if pair[0] == rule.name]
    assert mine, "a bad example shows its rule at work"
    errors = [(f.rule, f.spot.text) for f in found if FACTS[f.rule].severity is Severity.ERROR]
    assert set(errors) <= set(example.findings), "one fault, one finding: every error of the example is named in it"


@pytest.mark.parametrize(("rule", "example"), GOOD, ids=_id)
def test_good_example(rule: Rule, example: Example) -> None:
    assert not example.findings
    wrong = [
        (f.rule, f.spot.text, f.message)
        for f in findings_of(example.text, baseline=example.baseline)
        if f.rule == rule.name or FACTS[f.rule].severity is Severity.ERROR
    ]
    assert not wrong
