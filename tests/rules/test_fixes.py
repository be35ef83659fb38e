"""What a finding offers mends it, and nothing that is the pilot's is mended unasked."""

from __future__ import annotations

import pytest

from dotleader.rules.catalogue import BY_NAME, RULES
from dotleader.rules.rule import Example, Rule
from dotleader.source.editing import edited
from dotleader.source.finding import Finding
from tests.rules.pipeline import findings_of

BAD = [(rule, example) for rule in RULES for example in rule.bad if rule.name != "not-utf8"]
WITH_FIX = [rule for rule in RULES if rule.fix]
PILOTS = {
    "unknown-value", "unknown-position", "unknown-unit", "decimal-comma", "bare-name", "alias-used", "uneven-wording",
    "vague-response", "impossible-value", "unlike-units", "typed-completion", "trailing-comment",
}  # fmt: skip
"""Rules whose findings are about words, numbers or units of an instruction, or about what is printed."""


def _id(value: object) -> str:
    return value.name if isinstance(value, Rule) else ""


def _found(example: Example) -> list[Finding]:
    return findings_of(example.text, baseline=example.baseline)


@pytest.mark.parametrize(("rule", "example"), BAD, ids=_id)
def test_a_fix_is_one_that_its_rule_speaks_of_and_mends_the_finding(rule: Rule, example: Example) -> None:
    found = _found(example)
    for finding in found:
        if finding.fix is None:
            continue
        assert BY_NAME[finding.rule].fix, finding.rule
        assert not (finding.fix.safe and BY_NAME[finding.rule].fix == "unsafe"), finding.rule
        assert all(edit.spot.source is finding.spot.source for edit in finding.fix.edits)
        after = findings_of(edited(example.text, finding.fix.edits))
        count = [f.rule for f in found].count(finding.rule)
        assert [f.rule for f in after].count(finding.rule) < count, (finding.rule, finding.spot.text)


@pytest.mark.parametrize("rule", WITH_FIX, ids=_id)
def test_a_rule_that_speaks_of_a_fix_has_one_in_an_example(rule: Rule) -> None:
    fixes = [f.fix for example in rule.bad for f in _found(example) if f.rule == rule.name and f.fix is not None]
    assert fixes
    if rule.fix == "safe":
        assert any(fix.safe for fix in fixes)


def test_what_is_the_pilots_is_never_safe() -> None:
    assert {rule.name for rule in RULES if rule.fix == "safe"}.isdisjoint(PILOTS)


@pytest.mark.parametrize(
    ("declared", "written", "safe"),
    [
        ("Fuel pump", "Feul pump", True),
        ("Fuel pump", "fuel pmp", True),
        ("Landing light", "Lnding lihgt", True),  # two slips in a long name
        ("Fuel pump", "Fule pmp", False),  # two in a short one
        ("Fuel pump 1", "Fuel pmp 1", True),
    ],
)
def test_a_misspelt_challenge(declared: str, written: str, safe: bool) -> None:
    text = f"equipment\n  {declared} .... OFF, ON\n\nnormal Cruise\n  when level\n  {written} .... ON\n"
    (finding,) = [f for f in findings_of(text) if f.rule == "near-name"]
    assert finding.fix is not None
    assert finding.fix.safe is safe
    assert edited(text, finding.fix.edits) == text.replace(written, declared)


def test_a_challenge_between_two_names_is_for_the_writer() -> None:
    controls = "equipment\n  Tank left .... OFF, ON\n  Tank lefts .... OFF, ON\n"
    text = f"{controls}\nnormal Cruise\n  when level\n  Tank leftx .... ON\n"
    (finding,) = [f for f in findings_of(text) if f.rule == "near-name"]
    assert finding.fix is None


def test_a_challenge_near_another_name_is_no_label_and_asked() -> None:
    text = (
        "equipment\n  Fuel pump .... OFF, ON\n    also called .... boost pump\n\n"
        "normal Cruise\n  when level\n  Bost pump .... ON\n"
    )
    (finding,) = [f for f in findings_of(text) if f.rule == "near-name"]
    assert finding.fix is not None
    assert not finding.fix.safe


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("speeds\n  VG .... 82 KIAS  unverified\n\nnormal Cruise\n  Airspeed .... {VGL}\n", "unknown-value"),
        ("speeds\n  VS0 .... 46 KIAS  unverified\n\nnormal Cruise\n  Airspeed .... {VS1}\n", "unknown-value"),
        ("values\n  tank 1 .... 5 mm  unverified\n\nnormal Cruise\n  Fuel .... {tank 2}\n", "unknown-value"),
        ("sources\n  glide tests .... x\n\nspeeds\n  VG .... 82 KIAS  from climb tests\n", "unknown-source"),
        ("equipment\n  Pump .... OFF, ON\n\nnormal Cruise\n  Pump .... OFN\n", "unknown-position"),
        ("speeds\n  VG .... 82 KIAS  from unverified, no\n  VX .... 600 - 700 KIAS\n", "unreadable-value"),
        ("normal Cruise\n  Flaps....5 deg\n", "dots-against-digit"),
        ("normal Cruise\n  Tyres .... 2,2 bar\n", "decimal-comma"),
    ],
)
def test_what_has_two_answers_has_no_fix(text: str, rule: str) -> None:
    found = [f for f in findings_of(text) if f.rule == rule]
    assert found
    assert all(f.fix is None for f in found)


@pytest.mark.parametrize(
    ("text", "rule", "safe"),
    [
        (
            "sources\n  stall tests .... card 12\n\nspeeds\n  VS0 .... 46 KIAS  from stal tests\n",
            "unknown-source",
            True,
        ),
        ("sources\n  tests 1 .... card 12\n\nspeeds\n  VS0 .... 46 KIAS  from tests 2\n", "unknown-source", False),
        ("normal Cruise\n  phase criuse\n  Mixture .... LEANED\n", "unknown-phase", True),
        ("Normal Cruise\n  Mixture .... LEANED\n", "unknown-keyword", True),
        ("checklist Cruise\n  Mixture .... LEANED\n", "unknown-keyword", False),
        ("normal Cruise\n  Note: Look out.\n  Mixture .... LEANED\n", "unknown-keyword", True),
        ("normal Cruise\n  notes Look out.\n  Mixture .... LEANED\n", "unknown-keyword", False),
        ("normal Cruise\n\tMixture .... LEANED\n", "tab-indentation", True),
        ("normal Cruise\n  Mixture - LEANED\n", "dash-for-leader", False),
        ("speeds\n  VG .... 82 KAIS  unverified\n", "unknown-unit", False),
        ("speeds\n  VG .... 8,2 KIAS  unverified\n", "decimal-comma", False),
    ],
)
def test_what_is_safe(text: str, rule: str, safe: bool) -> None:
    (finding,) = [f for f in findings_of(text) if f.rule == rule]
    if finding.fix is None:
        assert not safe
    else:
        assert finding.fix.safe is safe
        assert rule not in [f.rule for f in findings_of(edited(text, finding.fix.edits))]
