"""The `rules` block: thresholds, rules that are off, and what is said of rows that set nothing."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dotleader.handbook.model import Setting
from dotleader.rules.catalogue import BY_NAME
from dotleader.rules.rule import CONFIDENCES, FIXES
from dotleader.rules.settings import Amiss, Off, Set, limits_of, meaning_of
from dotleader.rules.thresholds import BY_NAME as THRESHOLDS
from dotleader.rules.thresholds import Limits, Threshold, shown, written
from dotleader.source.finding import Severity
from dotleader.source.text import SourceText, Spot
from tests.rules.pipeline import findings_of, said

SPOT = Spot(SourceText("a.cards", ""), 0, 0)
MEMORY = "emergency Fire\n  when flames show\n  memory\n" + "".join(
    f"    Breaker {name} .... PULLED\n" for name in ("one", "two", "three", "four", "five")
)
UNUSED = "values\n  spare .... 5 mm  unverified\n\nnormal Cruise\n  when level\n  Mixture .... LEANED\n"
OFF = "off because the placard shows it"


def _setting(name: str, text: str) -> Setting:
    return Setting(name, text, SPOT, SPOT)


def _with(*rows: str, book: str = UNUSED) -> list[tuple[str, str]]:
    return said(findings_of("rules\n" + "".join(f"  {row}\n" for row in rows) + "\n" + book))


@pytest.mark.parametrize("threshold", THRESHOLDS.values(), ids=lambda each: each.name)
def test_a_threshold_belongs_to_a_rule_that_is_no_error_and_its_default_can_be_set(threshold: Threshold) -> None:
    for name in (threshold.rule, *threshold.shared):
        assert BY_NAME[name].severity is not Severity.ERROR
    assert threshold.low <= threshold.default <= threshold.high
    assert threshold.what[0].islower()
    assert not threshold.what.endswith(".")
    assert threshold.source
    default = written(threshold, threshold.default)
    assert meaning_of(_setting(threshold.name, default)) == Set(threshold, Fraction(threshold.default))


@pytest.mark.parametrize("rule", BY_NAME.values(), ids=lambda rule: rule.name)
def test_a_rule_says_how_sure_it_is_and_whether_it_has_a_fix(rule: object) -> None:
    assert rule.confidence in CONFIDENCES  # type: ignore[attr-defined]
    assert rule.fix in FIXES  # type: ignore[attr-defined]


def test_numbers_are_written_as_they_are_read() -> None:
    numbers = [shown(number) for number in (4, Fraction(5, 2), Fraction(80), Fraction(13, 10))]
    assert numbers == ["4", "2.5", "80", "1.3"]
    assert written(THRESHOLDS["many-memory-items"], 1) == "1 item"


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("off because the maker's own wording is kept", "the maker's own wording is kept"),
        ("OFF, because: it is so", "it is so"),
        ("off", ""),
        ("off because", ""),
        ("off, it is a nuisance", ""),
    ],
)
def test_off(text: str, reason: str) -> None:
    assert meaning_of(_setting("near-name", text)) == Off(reason)


@pytest.mark.parametrize(
    "text", ["3", "3 lines", "items", "three items", "-3 items", "3.5 items", "3,5 items", "1e9 items", "offbeat", ""]
)
def test_what_is_no_number_of_items_sets_nothing(text: str) -> None:
    assert isinstance(meaning_of(_setting("many-memory-items", text)), Amiss)
    assert limits_of([_setting("many-memory-items", text)])["many-memory-items"] == 4


@pytest.mark.parametrize("text", ["0 items", "7 items", "1,000 items", "999999999 items"])
def test_bounds(text: str) -> None:
    read = meaning_of(_setting("many-memory-items", text))
    assert isinstance(read, Amiss)
    assert read.number is not None


def test_an_unknown_threshold_is_a_slip_of_ours() -> None:
    with pytest.raises(KeyError):
        Limits()["no-such-rule"]


def test_a_threshold_moves_what_is_found() -> None:
    assert _with(book=MEMORY + "  end\n")[-1] == ("many-memory-items", "Breaker five .... PULLED")
    three = _with("many-memory-items .... 3 items", book=MEMORY + "  end\n")
    assert three == [("many-memory-items", "Breaker four .... PULLED")]
    assert _with("many-memory-items .... 6 items", book=MEMORY + "  end\n") == []
    assert _with("many-memory-items .... 5 items", book=MEMORY + "  end\n") == [
        ("fourth-memory-item", "Breaker five .... PULLED")
    ]


def test_a_rule_is_off() -> None:
    assert _with("many-memory-items .... 3 items") == [("value-never-used", "spare")]
    assert _with(f"value-never-used .... {OFF}") == []
    assert _with(f"Value-Never-Used .... {OFF}") == []


def test_off_without_a_reason_is_off_and_said() -> None:
    assert _with("value-never-used .... off") == [("allow-without-reason", "off")]


def test_off_without_effect_is_said() -> None:
    assert _with(f"value-never-used .... {OFF}", f"near-name .... {OFF}") == [("allow-unused", "near-name")]


def test_what_is_wrong_with_the_block_is_not_turned_off_in_it() -> None:
    assert _with(f"near-name .... {OFF}", f"allow-unused .... {OFF}") == [
        ("allow-unused", "near-name"),
        ("allow-unused", "allow-unused"),
        ("value-never-used", "spare"),
    ]
    comment = UNUSED.replace("unverified", "unverified  # allow near-name: because")
    assert _with(f"allow-unused .... {OFF}", book=comment) == [("value-never-used", "spare")]


def test_an_error_stays_on() -> None:
    book = "normal Taxi\n  when it runs\n  Airspeed .... {VX}\n"
    found = _with(f"unknown-value .... {OFF}", book=book)
    assert found == [("allow-of-error", "unknown-value"), ("unknown-value", "{VX}")]


def test_a_rule_that_there_is_not() -> None:
    found = findings_of(f"rules\n  value-nevr-used .... {OFF}\n  many-memory-itms .... 3 items\n\n{UNUSED}")
    assert said(found)[:2] == [("unknown-rule", "value-nevr-used"), ("unknown-rule", "many-memory-itms")]
    assert "`value-never-used`" in found[0].help
    assert "`many-memory-items`" in found[1].help


def test_a_name_is_offered_once_though_a_rule_and_its_number_have_it() -> None:
    found = findings_of("rules\n  long-lists .... 14 items\n\n" + UNUSED)
    helps = [finding.help for finding in found if finding.rule == "unknown-rule"]
    assert [text.count("`long-list`") for text in helps] == [1]


def test_a_row_that_sets_nothing_is_one_finding_and_says_what_could_be_set() -> None:
    found = findings_of(
        "rules\n  many-memory-items .... 9 items\n  near-name .... 3 letters\n  unknown-value .... 3\n\n" + UNUSED
    )
    rows = [finding for finding in found if finding.rule == "impossible-setting"]
    assert [finding.spot.text for finding in rows] == ["9 items", "3 letters", "3"]
    assert "1 item to 6 items" in rows[0].message
    assert "off because" in rows[1].help
    assert "errors" in rows[2].help


def test_a_row_stands_once_also_in_two_blocks() -> None:
    twice = "rules\n  many-memory-items .... 3 items\n\nrules\n  many-memory-items .... 2 items\n\n" + UNUSED
    assert ("name-used-twice", "many-memory-items") in said(findings_of(twice))


@pytest.mark.parametrize("block", ["rules", "rules\n  ", "rules\n  near-name", "rules\n  .... off", "rules x"])
def test_half_a_block_is_no_more_than_a_finding(block: str) -> None:
    findings_of(block + "\n\n" + UNUSED)


def test_half_an_item_is_within_the_bounds_and_not_whole() -> None:
    found = findings_of("rules\n  long-list .... 12.5 items\n" + UNUSED)
    assert [finding.message for finding in found if finding.rule == "impossible-setting"] == [
        "`12.5 items` is no whole number, and `long-list` takes nothing between."
    ]
