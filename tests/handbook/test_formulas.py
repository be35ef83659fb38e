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


ORIGINS = """
    sources
      kit ... kit manual
      scales ... weighing record

    values from kit
      tank ........ 19 US gal
      usable ...... {tank} - 0.5 US gal
      drained ..... {tank} - 0.6 US gal from scales, drained
      both ........ 2 * 19 US gal
      about ....... {tank} - 1 to {tank}
      guessed ..... {tank} * 2 unverified
"""


@pytest.mark.parametrize(
    ("name", "formula", "source"),
    [
        ("tank", "", "kit"),
        ("usable", "{tank} - 0.5 US gal", None),  # derived: it has the source of its parts
        ("drained", "{tank} - 0.6 US gal", "scales"),
        ("both", "2 * 19 US gal", "kit"),
        ("guessed", "{tank} * 2", ""),
    ],
)
def test_a_derived_value_keeps_the_source_that_it_names(name: str, formula: str, source: str | None) -> None:
    handbook, findings = resolved(ORIGINS.replace("{tank} - 1 to {tank}", "{tank} - 1 US gal to {tank}"))
    assert not findings
    value = handbook.values[name]
    assert value.formula == formula
    assert (value.origin.source if value.origin else None) == source
    assert handbook.values["about"].formula == "{tank} - 1 US gal to {tank}"
