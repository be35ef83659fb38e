"""The width table and the font files that it is made from."""

from __future__ import annotations

import hashlib
import re
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from dotleader.page.type import metrics, widths
from tests.tables import make_widths

FONTS = Path(metrics.__file__).parents[1] / "fonts"


def test_the_table_is_what_the_font_files_say() -> None:
    assert make_widths.TABLE.read_text(encoding="utf-8") == make_widths.table(), (
        "run python -m tests.tables.make_widths"
    )


def test_the_files_are_those_whose_hashes_are_recorded() -> None:
    recorded = dict(re.findall(r"`(Dotleader\S+\.ttf)`.*`([0-9a-f]{64})`", (FONTS / "fonts.md").read_text("utf-8")))
    found = {path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in FONTS.glob("*.ttf")}
    assert recorded == found
    assert set(found) == set(metrics.FILES.values())


@pytest.mark.parametrize("name", sorted(metrics.FILES.values()))
def test_a_changed_font_keeps_its_licence_and_not_its_name(name: str) -> None:
    font = TTFont(FONTS / name)
    entries = {number: font["name"].getDebugName(number) or "" for number in (0, 1, 4, 6, 13)}
    for number in (1, 4, 6):
        assert entries[number].startswith("Dotleader")
        assert not re.search("Bitstream|Vera|Arev|DejaVu|Atkinson", entries[number])
    assert entries[0].startswith("Copyright")
    assert entries[13]
    assert font["OS/2"].fsType == 0  # may be embedded without restriction (OpenType specification, OS/2 table)
    assert "glyf" in font
    assert not {"GSUB", "GPOS", "kern"} & set(font.keys())  # nothing that a browser would do and we did not measure
    assert (FONTS / name).stat().st_size < 120_000
    assert (FONTS / f"licence-{'text' if 'Text' in name else 'signs'}.txt").stat().st_size > 4000


@pytest.mark.parametrize("style", ["Regular", "Bold"])
def test_digits_stand_in_the_middle_of_one_cell(style: str) -> None:
    font = TTFont(FONTS / f"DotleaderText-{style}.ttf")
    for digit in "0123456789":
        name = font.getBestCmap()[ord(digit)]
        glyph = font["glyf"][name]
        assert font["hmtx"][name] == (metrics.CELL, glyph.xMin)
        # The original's tabular figures are placed by eye: off the middle by up to a fiftieth of an em.
        assert abs(glyph.xMin + glyph.xMax - metrics.CELL) <= 2 * 20
        assert glyph.xMin > 0
        assert glyph.xMax < metrics.CELL


def test_what_a_handbook_needs_is_there() -> None:
    has = set(widths.TEXT) | set(widths.SIGNS)
    greek = "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρςστυφχψωάέήίόύώΆΈΉΊΌΎΏϊϋΐΰ"
    cyrillic = {chr(code) for code in range(0x400, 0x460)} | set("Ґґ")
    latin = {chr(code) for code in range(0xA1, 0x180) if code != 0xAD}  # Latin-1 and Extended-A of ISO/IEC 10646
    signs = "←↑→↓↔⇒½⅓¼¾⅔⅛⅜⅝⅞✓✔✗☐☑☒□■▲▼◀▶●○≤≥≠≈±×÷−′″°µμΩ№⚠–—…“”‘’„«»€™‑½²³₁₂"
    assert set(greek) | cyrillic | latin | set(signs) | set(map(chr, range(0x20, 0x7F))) <= has
    assert not set(widths.TEXT) & set(widths.SIGNS)


def test_nothing_that_could_not_be_placed_is_there() -> None:
    has = set(widths.TEXT) | set(widths.SIGNS)
    combining = set(map(chr, range(0x300, 0x370)))
    assert not has & (combining | set("\t\n\r\u00ad\u200b\u200d\ufeff"))
