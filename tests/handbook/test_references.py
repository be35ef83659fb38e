"""References that are nearly right: what is read, and what is offered for the rest."""

from __future__ import annotations

import pytest

from dotleader.source.finding import Finding
from tests.handbook.texts import resolved

BOOK = """\
speeds
  VFE (flaps 10) ........ 100 KIAS unverified
  VLO (wheels moving) ... 80 KIAS unverified
  VY .................... {VLO (wheels moving)} - 2 KIAS

normal Cruise
  when level
  Airspeed ... {reference}
"""


def _of(reference: str) -> tuple[str, tuple[Finding, ...]]:
    handbook, findings = resolved(BOOK.replace("{reference}", f"{{{reference}}}"))
    (item,) = handbook.cards[0].steps
    return item.response.text, findings  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("reference", "shown"),
    [
        ("VFE", "100 KIAS"),
        ("VFE (flaps 10)", "100 KIAS"),
        ("vlo  (wheels moving)", "80 KIAS"),
        ("VLO (wheels moving) in km/h", "148 km/h IAS"),
        ("VY", "78 KIAS"),
    ],
)
def test_a_speed_is_referred_to_with_its_meaning_or_without(reference: str, shown: str) -> None:
    text, findings = _of(reference)
    assert findings == ()
    assert text.startswith(shown[:3])
    assert text.endswith(shown[-4:])


@pytest.mark.parametrize(
    ("reference", "rule", "offered"),
    [
        ("VFE (flaps 20)", "unknown-value", "Declared is `VFE (flaps 10)`"),
        ("VY mph", "unknown-value", "Write `{VY in mph}`."),
        ("VYY", "unknown-value", "Did you mean `VY`?"),
        ("VY in kg", "unlike-units", "a unit that measures the same"),
    ],
)
def test_what_is_offered_for_a_reference_that_is_nearly_right(reference: str, rule: str, offered: str) -> None:
    _, (finding,) = _of(reference)
    assert (finding.rule, finding.spot.text) == (rule, f"{{{reference}}}")
    assert offered in finding.help


def test_a_conversion_says_what_cannot_be_given_in_what() -> None:
    assert _of("VFE in KTAS")[1][0].message == "`100 KIAS` cannot be given in `KTAS`."


def test_speeds_that_differ_in_brackets_alone_are_told_how_to_differ() -> None:
    text = BOOK.replace("  VLO", "  VFE (flaps 20) ........ 90 KIAS unverified\n  VLO").replace("{reference}", "{VFE}")
    _, (finding,) = resolved(text)
    assert (finding.rule, finding.spot.text) == ("name-used-twice", "VFE (flaps 20)")
    assert "`VFE flaps 20`" in finding.help
