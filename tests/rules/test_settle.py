"""Suppressions, and one fault being one finding."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.rules.catalogue import RULES
from dotleader.rules.settling import settle
from dotleader.source.finding import Finding
from dotleader.source.text import SourceText, Spot
from dotleader.syntax.parse import parse
from tests.rules.pipeline import findings_of, said

UNUSED = "value-never-used"
CARD = "\nnormal Cruise\n  when level\n  Mixture .... LEANED\n"


def _values(*rows: str) -> list[tuple[str, str]]:
    return said(findings_of("values\n" + "\n".join(rows) + "\n" + CARD))


def test_without_a_suppression_the_finding_stands() -> None:
    assert _values("  spare .... 5 mm  unverified") == [(UNUSED, "spare")]


@pytest.mark.parametrize(
    "rows",
    [
        ("  spare .... 5 mm  unverified  # allow value-never-used: kept for the placard",),
        ("  # allow value-never-used: kept for the placard", "  spare .... 5 mm  unverified"),
        ("  # allow value-never-used: the placard", "", "  # A remark.", "  spare .... 5 mm  unverified"),
        ("# allow value-never-used: the placard", "  spare .... 5 mm  unverified"),
        ("  spare .... 5 mm  unverified # allow value-never-used: kept for the placard",),
        ("  # Allow value-never-used: kept for the placard", "  spare .... 5 mm  unverified"),
    ],
    ids=["at the end", "above", "above, with blank and comment between", "above, not indented", "one space", "capital"],
)
def test_a_suppression_suppresses(rows: tuple[str, ...]) -> None:
    assert _values(*rows) == []


def test_it_reaches_one_line_only() -> None:
    found = _values(
        "  # allow value-never-used: kept for the placard",
        "  spare .... 5 mm  unverified",
        "  other .... 6 mm  unverified",
    )
    assert found == [(UNUSED, "other")]


def test_above_a_block_it_reaches_the_head_alone() -> None:
    text = (
        "equipment\n  Fuel pump .... OFF, ON\n\n"
        "# allow near-name: for the head\nnormal Cruise\n  when level\n  Fuel pump .... ON\n  Feul pump .... ON\n"
    )
    assert said(findings_of(text)) == [
        ("allow-unused", "# allow near-name: for the head"),
        ("near-name", "Feul pump"),
    ]


def test_several_on_one_line() -> None:
    found = _values(
        "  # allow value-never-used: kept for the placard",
        "  spare .... 5 mm  # allow value-without-source: asked the maker",
    )
    assert found == []


def test_what_is_wrong_with_a_suppression_is_one_finding() -> None:
    row = "  spare .... 5 mm  unverified  # allow "
    assert _values(row + UNUSED) == [("allow-without-reason", "# allow value-never-used")]
    assert _values(row + "never-used: x") == [(UNUSED, "spare"), ("allow-unknown-rule", "# allow never-used: x")]
    assert _values(row + ": x") == [(UNUSED, "spare"), ("allow-unknown-rule", "# allow : x")]
    assert _values(row + "near-name") == [(UNUSED, "spare"), ("allow-unused", "# allow near-name")]
    assert _values(row + "open-brace: x") == [(UNUSED, "spare"), ("allow-of-error", "# allow open-brace: x")]


def test_the_nearest_rule_is_offered() -> None:
    text = f"# allow value-nevr-used: x\nvalues\n  spare .... 5 mm  unverified\n{CARD}"
    found = {finding.rule: finding for finding in findings_of(text)}
    assert "`value-never-used`" in found["allow-unknown-rule"].help


def test_an_error_is_never_suppressed() -> None:
    text = "normal Cruise\n  when level\n  # allow missing-response: everybody knows\n  Mixture\n"
    assert said(findings_of(text)) == [
        ("allow-of-error", "# allow missing-response: everybody knows"),
        ("missing-response", "Mixture"),
    ]


def test_suppressions_cannot_be_suppressed() -> None:
    text = f"# allow allow-unused: no\nvalues\n  # allow near-name: no\n  spare .... 5 mm  unverified\n{CARD}"
    assert [rule for rule, _ in said(findings_of(text))] == ["allow-unused", "allow-unused", UNUSED]


@pytest.mark.parametrize("remark", ["# allow two minutes for the warm-up", "# allow the engine to cool down"])
def test_a_remark_that_begins_with_allow_is_a_remark(remark: str) -> None:
    assert said(findings_of(f"normal Cruise\n  when level\n  {remark}\n  Mixture .... LEANED\n")) == []


def test_at_the_end_of_a_line_it_is_never_a_remark() -> None:
    """It is not printed with the line, so it must not be lost."""
    found = findings_of("normal Cruise\n  when level\n  Mixture .... LEANED  # allow two minutes for it\n")
    assert said(found) == [("allow-unknown-rule", "# allow two minutes for it")]


def test_a_rule_that_was_not_asked_is_not_called_unused() -> None:
    file = parse(SourceText("a.cards", "# allow near-name: x\nnormal Cruise\n  Mixture .... LEANED\n")).value
    assert [finding.rule for finding in settle([], [file])] == ["allow-unused"]
    assert settle([], [file], asked={"open-brace"}) == []


def test_a_suppression_reaches_its_own_file_only() -> None:
    files = [parse(SourceText(name, f"normal A{name[0]}\n  B .... C\n")).value for name in ("a", "b")]
    files.append(parse(SourceText("c", "# allow near-name: x\nnormal D\n  E .... F\n")).value)
    there = Finding("near-name", Spot(files[0].source, 21, 25), "m", "h")
    assert [finding.rule for finding in settle([there], files)] == ["near-name", "allow-unused"]


def test_duplicates_go_and_the_order_is_total() -> None:
    source = SourceText("a.cards", "normal Cruise\n  when level\n  Mixture .... LEANED\n")
    one = Finding("near-name", Spot(source, 16, 23), "m", "h")
    two = Finding("alias", Spot(source, 16, 23), "m", "h")
    three = Finding("near-name", Spot(source, 0, 6), "m", "h")
    known = [finding for finding in (one, two, three) if finding.rule == "near-name"]
    assert settle([*known, *known], [parse(source).value]) == [three, one]


TEXTS = [example.text for rule in RULES for example in (*rule.bad, *rule.good)]
PIECES = ["  ", "\t", "{", "}", " .... ", "# allow near-name: x", "  # allow", "\n", "if ", "end", "go to ", "VY", "9"]


@given(st.sampled_from(TEXTS), st.data())
def test_whatever_is_written_the_findings_are_in_order_and_none_stands_twice(text: str, data: st.DataObject) -> None:
    for _ in range(data.draw(st.integers(0, 3))):
        start = data.draw(st.integers(0, len(text)))
        end = data.draw(st.integers(start, min(len(text), start + 12)))
        text = text[:start] + data.draw(st.sampled_from(["", *PIECES])) + text[end:]
    found = findings_of(text)
    orders = [finding.order for finding in found]
    assert orders == sorted(set(orders))
