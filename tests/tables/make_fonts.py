"""Make the four font files of `src/dotleader/page/fonts` from the published ones they come from.

    python -m tests.tables.make_fonts FOLDER

FOLDER holds the originals named in `ORIGINALS` (their packages are in `fonts.md` beside the result);
a file whose hash is another is refused.
Equal originals and an equal fontTools give equal bytes, as no date is taken from the clock.
"""

from __future__ import annotations

import argparse
import hashlib
import sys
import unicodedata
from pathlib import Path

from fontTools import subset
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont, newTable
from fontTools.ttLib.scaleUpem import scale_upem

FONTS = Path(__file__).parents[2] / "src" / "dotleader" / "page" / "fonts"

ORIGINALS = {
    "AtkinsonHyperlegible_400Regular.ttf": "752bace0a9820236f24d65d680ac07aeb543c92dd903c871e09f6627261b812f",
    "AtkinsonHyperlegible_700Bold.ttf": "9ebfea858a99e61e2fc299d194ba55b87de4884094f86fdcb6fa0d510b9d77da",
    "DejaVuSans.ttf": "7da195a74c55bef988d0d48f9508bd5d849425c1770dba5d7bfc6ce9ed848954",
    "DejaVuSans-Bold.ttf": "e6476c1b80502924294eed40894c5b18e06c181444ca953e5334262df9c27724",
}

CELL = 615
"""Width of the cell of a digit, in thousandths of the em, in both weights."""

CAP_HEIGHT = 668
"""Height of capitals of the text faces, to which the signs are scaled."""

UNUSED = ("kern", "GPOS", "GSUB", "GDEF", "MATH", "FFTM", "DSIG", "gasp")
"""Tables that only a text shaper reads, and there is none here."""

FIGURES = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")

NOT_SET = {0x0D, 0xAD} | set(range(0x300, 0x370))
"""Left out: a return, the soft hyphen (it would show), and combining marks (nothing here can place them)."""

SIGNS: tuple[tuple[int, int], ...] = (
    (0x00A0, 0x017F),  # what the text faces lack of Latin: a name may hold any of it
    (0x01CD, 0x01DC),
    (0x0370, 0x03FF),  # Greek
    (0x0400, 0x045F),  # Cyrillic
    (0x0490, 0x0493),
    (0x2002, 0x200A),  # spaces of other widths
    (0x2010, 0x2015),
    (0x2020, 0x2027),
    (0x202F, 0x2037),  # per mille, primes
    (0x203B, 0x203E),
    (0x2070, 0x209C),  # superscripts and subscripts
    (0x20AC, 0x20AC),
    (0x2103, 0x2103),
    (0x2109, 0x2109),
    (0x2116, 0x2116),
    (0x2120, 0x2122),
    (0x2126, 0x2127),
    (0x212A, 0x212B),
    (0x2150, 0x215F),  # fractions
    (0x2190, 0x21BB),  # arrows
    (0x21C4, 0x21C6),
    (0x21D0, 0x21D5),
    (0x2200, 0x223C),  # operators
    (0x2243, 0x224D),
    (0x225F, 0x226B),
    (0x22A5, 0x22A5),
    (0x22C5, 0x22C5),
    (0x23CE, 0x23CF),
    (0x2460, 0x2473),  # digits in circles
    (0x2500, 0x2502),
    (0x25A0, 0x25CF),  # squares, triangles, diamonds, circles
    (0x25E6, 0x25EF),
    (0x2605, 0x2606),
    (0x260E, 0x2612),  # telephone, boxes to tick
    (0x2640, 0x2642),
    (0x2690, 0x2691),
    (0x26A0, 0x26A1),  # warning sign, high voltage
    (0x2708, 0x2709),  # aeroplane, envelope
    (0x2713, 0x2718),  # ticks and crosses
    (0x2776, 0x2788),
    (0x2794, 0x279E),
    (0x27F5, 0x27F7),
)
"""The ranges of which the signs take whatever the text faces lack and their original has."""


def figure(font: TTFont, name: str) -> None:
    """Move the drawing of a tabular digit of the original, unchanged, to the middle of a cell of CELL."""
    glyphs = font.getGlyphSet()
    recorded = DecomposingRecordingPen(glyphs)
    glyphs[name].draw(recorded)
    pen = TTGlyphPen(None)
    shift = round((CELL - font["hmtx"][name][0]) / 2)
    recorded.replay(TransformPen(pen, (1, 0, 0, 1, shift, 0)))
    drawn = pen.glyph()
    drawn.recalcBounds(font["glyf"])
    font["glyf"][name] = drawn
    font["hmtx"][name] = (CELL, drawn.xMin)


def cut(font: TTFont, codes: set[int], hints: bool) -> None:
    """Keep the glyphs of those characters, and nothing that would move or swap them when drawn."""
    options = subset.Options()
    options.layout_features = []
    options.drop_tables = [*options.drop_tables, *UNUSED]
    options.hinting = hints
    options.name_IDs = ["*"]
    options.notdef_outline = True
    options.recalc_timestamp = False
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=codes)
    subsetter.subset(font)


def rename(font: TTFont, family: str, style: str, note: str) -> None:
    """Give a changed font a name of its own; its copyright and licence stay, as both licences ask."""
    names = font["name"]
    keep = {i: names.getDebugName(i) for i in (0, 9, 13, 14) if names.getDebugName(i)}
    font["name"] = fresh = newTable("name")
    fresh.names = []
    plain = f"{family.replace(' ', '')}-{style}"
    keep |= {1: family, 2: style, 3: f"1.0;{plain}", 4: f"{family} {style}", 5: "Version 1.0", 6: plain}
    keep[10] = note
    for number, value in sorted(keep.items()):
        fresh.setName(value, number, 3, 1, 0x409)


def text_face(original: Path, style: str) -> TTFont:
    """The text face: digits are the original's own tabular figures, in narrower cells of one width."""
    font = TTFont(original, recalcTimestamp=False)
    for table in font["cmap"].tables:
        for digit, name in enumerate(FIGURES):
            table.cmap[0x30 + digit] = f"{name}.tf"
        table.cmap[0x2011] = table.cmap[0x2D]  # a hyphen that does not break is drawn as a hyphen
    for name in FIGURES:
        figure(font, f"{name}.tf")
    cut(font, set(font.getBestCmap()) - NOT_SET, hints=True)
    rename(font, "Dotleader Text", style, "Atkinson Hyperlegible with tabular digits only; see fonts.md")
    return font


def signs_face(original: Path, style: str, text: TTFont) -> TTFont:
    """The signs: what the text face lacks, scaled so that capitals are as high, 1000 units to the em."""
    font = TTFont(original, recalcTimestamp=False)
    wanted = {code for low, high in SIGNS for code in range(low, high + 1)}
    wanted = {c for c in wanted if unicodedata.category(chr(c)) not in ("Mn", "Cn", "Cf", "Zl", "Zp")}
    codes = (wanted & set(font.getBestCmap())) - set(text.getBestCmap()) - NOT_SET
    high = font["glyf"]["H"].yMax
    units = font["head"].unitsPerEm
    cut(font, codes, hints=False)
    scale_upem(font, round(CAP_HEIGHT * units / high))
    font["head"].unitsPerEm = 1000
    figure_space = font.getBestCmap()[0x2007]
    font["hmtx"][figure_space] = (CELL, 0)  # as wide as a digit, which is what it is for
    for field in ("sTypoAscender", "sTypoDescender", "sTypoLineGap", "usWinAscent", "usWinDescent"):
        setattr(font["OS/2"], field, getattr(text["OS/2"], field))
    for field in ("ascent", "descent", "lineGap"):
        setattr(font["hhea"], field, getattr(text["hhea"], field))
    font["OS/2"].version = 4
    for field in ("sCapHeight", "sxHeight", "usDefaultChar", "usBreakChar", "usMaxContext"):
        setattr(font["OS/2"], field, getattr(text["OS/2"], field))
    rename(font, "Dotleader Signs", style, "A small part of DejaVu Sans, scaled; see fonts.md")
    return font


def make(folder: Path) -> dict[str, TTFont]:
    """The four fonts by file name; a ValueError if an original is not the one that was chosen."""
    for name, digest in ORIGINALS.items():
        if hashlib.sha256((folder / name).read_bytes()).hexdigest() != digest:
            raise ValueError(f"{name} is not the file whose hash is recorded")
    made: dict[str, TTFont] = {}
    for style, text, signs in (
        ("Regular", "AtkinsonHyperlegible_400Regular.ttf", "DejaVuSans.ttf"),
        ("Bold", "AtkinsonHyperlegible_700Bold.ttf", "DejaVuSans-Bold.ttf"),
    ):
        face = text_face(folder / text, style)
        made[f"DotleaderText-{style}.ttf"] = face
        made[f"DotleaderSigns-{style}.ttf"] = signs_face(folder / signs, style, face)
    return made


def main() -> int:
    parser = argparse.ArgumentParser(description="Make the font files from the published originals.")
    parser.add_argument("folder", type=Path, help="where the four originals are")
    for name, font in make(parser.parse_args().folder).items():
        font.save(FONTS / name)
        data = (FONTS / name).read_bytes()
        print(f"{name:28} {len(data):7} {hashlib.sha256(data).hexdigest()}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
