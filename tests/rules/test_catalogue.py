"""The catalogue is complete, and what it says of each rule has the form that is promised."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import dotleader
from dotleader.rules.catalogue import ASKED_FOR, BY_NAME, FACTS, RULES
from dotleader.rules.checks import CHECKED
from dotleader.rules.rule import FAMILIES, FOUND_BY, NO_SOURCE, Rule
from dotleader.source.finding import Severity

SRC = Path(dotleader.__file__).parent
FOLDER = SRC / "rules"
NAME = re.compile(r"[a-z]+(?:-[a-z0-9]+)+")

ROOMS = ("source", "syntax", "handbook", "cockpit", "page")
"""The rooms that can have something to say."""

# Hyphenated words of these rooms that are no names of rules.
OTHER_WORDS = {
    "dotleader-kept",
    "dotleader-likely",
    "latin-1",
    "level-off",
    "lift-off",
    "long-edge",
    "pre-takeoff",
    "run-up",
    "short-edge",
    "utf-16",
    "utf-16-be",
    "utf-16-le",
    "utf-32",
    "utf-8",
    "utf-8-sig",
    "walk-round",
}


def _modules_with_a_rule() -> dict[str, str]:
    """Family and name by the paths of the modules that assign `RULE`."""
    found = {}
    for path in FOLDER.rglob("*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        targets = [t for node in tree.body if isinstance(node, ast.Assign) for t in node.targets]
        if any(isinstance(target, ast.Name) and target.id == "RULE" for target in targets):
            found[path.stem.replace("_", "-")] = path.parent.name
    return found


def _said_names() -> Iterator[tuple[str, str]]:
    """Every string in these rooms that could name a rule, with its file."""
    for path in SRC.rglob("*.py"):
        if path.relative_to(SRC).parts[0] not in ROOMS or path.name == "generated.py":
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and NAME.fullmatch(node.value):
                yield node.value, str(path.relative_to(SRC))


def test_every_module_with_a_rule_is_listed_under_its_own_name_and_family() -> None:
    assert {rule.name: rule.family for rule in RULES} == _modules_with_a_rule()
    assert len(BY_NAME) == len(RULES) == len(FACTS)


def test_every_name_that_a_stage_says_has_a_page() -> None:
    unknown = {said for said in _said_names() if said[0] not in BY_NAME and said[0] not in OTHER_WORDS}
    assert not unknown


def test_every_rule_without_a_check_is_said_by_a_stage() -> None:
    said = {name for name, _ in _said_names()}
    silent = {r.name for r in RULES if r.check is None and r.found_by != "settling" and r.name not in said}
    assert not silent


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_a_page_has_its_form(rule: Rule) -> None:
    assert NAME.fullmatch(rule.name)
    assert rule.family in FAMILIES
    assert rule.found_by in FOUND_BY
    assert (rule.check is None) == (rule.found_by != "a check of its own")
    assert rule.bad
    assert rule.good
    for text in (rule.what, rule.why, rule.mend):
        assert text[0].isupper() or text[0] == "`"
        assert text.endswith(".")
        assert "  " not in text
    assert ". " not in rule.why, "why is one sentence"
    assert rule.source == NO_SOURCE or not rule.source.endswith(".")
    assert FACTS[rule.name].severity is rule.severity


def test_families_weigh_what_the_design_says() -> None:
    for rule in RULES:
        if rule.family == "structure":
            assert rule.severity is Severity.ERROR
        if rule.family in ("suppressions", "coverage"):
            assert rule.severity is Severity.WARNING


def test_the_rules_with_a_check_are_those_that_a_lint_asks() -> None:
    assert {*CHECKED, *ASKED_FOR} == {rule for rule in RULES if rule.check is not None}
