"""Widths, heights, and the split of a run over the font files."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.page.drawn import Font
from dotleader.page.type import metrics, widths

FONTS = st.sampled_from(list(Font))
SIZES = st.integers(0, 200_000)
KNOWN = st.text(st.sampled_from(widths.TEXT + widths.SIGNS))
ANY = st.text(st.one_of(st.sampled_from(widths.TEXT + widths.SIGNS), st.characters()))


@pytest.mark.parametrize("font", Font)
def test_digits_have_one_width_in_both_weights(font: Font) -> None:
    assert {metrics.ems(digit, font) for digit in "0123456789"} == {metrics.CELL}
    assert metrics.ems("\u2007", font) == metrics.CELL  # the figure space


@pytest.mark.parametrize("font", Font)
def test_a_space_that_does_not_break_is_as_wide_as_a_space(font: Font) -> None:
    assert metrics.width("\u00a0", font, 12000) == metrics.width(" ", font, 12000)
    assert metrics.width("\u2011", font, 12000) == metrics.width("-", font, 12000)


def test_one_thousand_ems_are_a_thousand_times_the_size() -> None:
    # 72 pt are 25.4 mm exactly (the point of desktop publishing; the inch is that of NIST SP 811).
    assert metrics.ems("0" * 200, Font.BOLD) == 200 * 615
    assert metrics.width("0" * 200, Font.BOLD, 72_000) == 123 * 25_400


@given(KNOWN, FONTS, SIZES)
def test_a_width_is_rounded_once(string: str, font: Font, size: int) -> None:
    exact = Fraction(metrics.ems(string, font) * size * 25_400, 72 * 1000 * 1000)
    assert abs(metrics.width(string, font, size) - exact) <= Fraction(1, 2)


@given(ANY, ANY, FONTS)
def test_there_is_no_kerning(first: str, second: str, font: Font) -> None:
    assert metrics.ems(first + second, font) == metrics.ems(first, font) + metrics.ems(second, font)


@given(KNOWN, FONTS)
def test_runs_are_the_string_in_order(string: str, font: Font) -> None:
    runs = metrics.runs(string, font)
    assert "".join(part for _, part in runs) == string
    assert all(a[0] != b[0] for a, b in pairwise(runs))
    for face, part in runs:
        assert set(part) <= set(widths.SIGNS if face.startswith("signs") else widths.TEXT)
        assert face.endswith(font.value)


def test_runs_name_the_files() -> None:
    assert metrics.runs("10° → ⅓", Font.BOLD) == (
        ("bold", "10° "),
        ("signs bold", "→"),
        ("bold", " "),
        ("signs bold", "⅓"),
    )
    assert metrics.runs("", Font.REGULAR) == ()


@given(ANY, FONTS)
def test_what_is_missing_is_named_and_can_be_stood_in_for(string: str, font: Font) -> None:
    lost = metrics.missing(string, font)
    known = set(widths.TEXT + widths.SIGNS)
    assert set(lost) == set(string) - known
    assert len(set(lost)) == len(lost)
    shown = metrics.shown(string, font)
    assert metrics.missing(shown, font) == ""
    assert metrics.ems(shown, font) == metrics.ems(string, font)
    assert [a for a, b in zip(string, shown, strict=True) if a != b] == [c for c in string if c in lost]
    if lost:
        with pytest.raises(ValueError, match=f"U\\+{ord(lost[0]):04X}"):
            metrics.runs(string, font)


@pytest.mark.parametrize("character", ["\t", "\n", "\u00ad", "\u0301", "\u200b", "漢", "😀"])
def test_missing_characters(character: str) -> None:
    assert metrics.missing(f"a{character}b{character}", Font.REGULAR) == character


def test_heights() -> None:
    assert metrics.cap_height(Font.BOLD, 72_000) == round(0.668 * 25_400)
    assert metrics.x_height(Font.BOLD, 72_000) == round(0.496 * 25_400)
    assert metrics.ascent(Font.REGULAR, 72_000) == round(0.95 * 25_400)
    assert metrics.descent(Font.REGULAR, 72_000) == round(0.29 * 25_400)


@pytest.mark.parametrize(
    ("distance", "arcminutes", "millimetres"),
    # Worked from NUREG-0700 rev. 2, 1.3.1-4: height = 6.283 D (MA) / 21600.
    [
        (600, 16, 2.79),
        (600, 20, 3.49),
        (600, 22, 3.84),
        (24 * 25.4, 16, 2.84),
        (24 * 25.4, 20, 3.55),
        (24 * 25.4, 22, 3.90),
        (28 * 25.4, 16, 3.31),
        (28 * 25.4, 20, 4.14),
        (28 * 25.4, 22, 4.55),
        (30 * 25.4, 16, 3.55),
        (30 * 25.4, 20, 4.43),
        (30 * 25.4, 22, 4.88),
    ],
)
def test_height_needed(distance: float, arcminutes: int, millimetres: float) -> None:
    assert metrics.height_needed(arcminutes, distance) == pytest.approx(millimetres, abs=0.0051)


@given(SIZES.filter(bool), st.integers(100, 5000))
def test_arcminutes_turn_the_height_round(size: int, distance: int) -> None:
    millimetres = metrics.height_needed(metrics.cap_arcminutes(size, distance), distance)
    assert millimetres * 1000 == pytest.approx(metrics.cap_height(Font.REGULAR, size), abs=0.51)


@pytest.mark.parametrize(("distance", "size"), [(600, 12_000), (610, 12_500), (762, 15_500), (1, 500)])
def test_smallest_legible(distance: int, size: int) -> None:
    assert metrics.smallest_legible(distance) == size


@given(st.integers(1, 5000))
def test_the_smallest_legible_size_is_the_smallest(distance: int) -> None:
    size = metrics.smallest_legible(distance)
    assert size % 500 == 0
    assert metrics.cap_arcminutes(size, distance) >= 16
    assert size == 500 or metrics.cap_arcminutes(size - 500, distance) < 16


def test_measuring_needs_no_font_library() -> None:
    code = "import sys, dotleader.page.type.metrics; print(*sorted(sys.modules))"
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split()
    assert "dotleader.page.type.metrics" in loaded
    assert not {"reportlab", "fontTools", "PIL", "pathlib"} & set(loaded)
