"""The arithmetic of a value is shown as it is written: another sum would be shown without its brackets."""

from __future__ import annotations

import pytest

from dotleader.syntax.plain import folded
from tests.handbook.texts import resolved

VALUES = """
    values
      tank ....... 19 US gal unverified
      unusable ... 0.5 US gal unverified
      result ..... {formula}
"""


@pytest.mark.parametrize(
    ("formula", "shown"),
    [
        ("2 * ({tank} - {unusable})", "37 US gal"),
        ("({tank} - {unusable}) * (1 + 1)", "37 US gal"),
        ("((2 * {tank}))", "38 US gal"),
        ("-({unusable} - {tank})", "18.5 US gal"),
        ("2 * ({tank} - {unusable}) rounded down to 2 US gal", "36 US gal"),
        ("root of ((2 + 2) * 4) rounded to 1", "4"),
    ],
)
def test_a_formula_keeps_its_brackets(formula: str, shown: str) -> None:
    handbook, _ = resolved(VALUES.replace("{formula}", formula))
    value = handbook.values[folded("result")]
    assert value.formula == formula
    assert value.shown == shown


def test_a_number_in_brackets_is_a_number() -> None:
    handbook, findings = resolved("values\n  two ... (5 mm) unverified\n")
    assert not findings
    assert handbook.values["two"].shown == "5 mm"
    assert handbook.values["two"].formula == ""
