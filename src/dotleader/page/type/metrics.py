"""How wide and how high a run of text is, which font file draws it, and how large it must be to be read.

Widths come from a table made from the font files (`widths`), so nothing here opens a file.
There is no kerning, and digits stand in cells of one width, so a width is the sum of its characters'.
A no-break space is as wide as a space. Sizes are in thousandths of a point, lengths in whole micrometres.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import groupby
from typing import Literal, TypeAlias

from dotleader.page.drawn import Font
from dotleader.page.type import widths

Face: TypeAlias = Literal["regular", "bold", "signs regular", "signs bold"]
"""The four font files: the two weights of the text face, and of the signs that it lacks."""

FILES: dict[Face, str] = {
    "regular": "DotleaderText-Regular.ttf",
    "bold": "DotleaderText-Bold.ttf",
    "signs regular": "DotleaderSigns-Regular.ttf",
    "signs bold": "DotleaderSigns-Bold.ttf",
}
"""Their names in the folder `fonts` beside this one."""

CELL = 615
"""Width of a digit's cell in thousandths of the em: numbers under one another line up, in both weights."""

STAND_IN = "□"
"""Stands for a character that no font has, where something must be shown all the same (a draft)."""

SMALLEST_ARC = 16
"""Least height of a capital in minutes of arc (NUREG-0700, 1.3.1-4)."""

SMALLEST_IN_FLIGHT = 12_000
"""Nothing that is used in flight is smaller (CAP 676, ch. 7: body type about 12 pt, judged at 600 mm)."""


class _Advances(dict[str, int]):
    """Widths by character; one that no font has is as wide as what stands for it."""

    def __missing__(self, character: str) -> int:
        return self[STAND_IN]


_TEXT = frozenset(widths.TEXT)
_ADVANCES = {
    Font.REGULAR: _Advances(zip(widths.SIGNS + widths.TEXT, widths.SIGNS_REGULAR + widths.TEXT_REGULAR, strict=True)),
    Font.BOLD: _Advances(zip(widths.SIGNS + widths.TEXT, widths.SIGNS_BOLD + widths.TEXT_BOLD, strict=True)),
}
_FACES: dict[Font, tuple[Face, Face]] = {
    Font.REGULAR: ("regular", "signs regular"),
    Font.BOLD: ("bold", "signs bold"),
}


@lru_cache(maxsize=1 << 15)
def ems(string: str, font: Font) -> int:
    """Width in thousandths of the em, for any size."""
    return sum(map(_ADVANCES[font].__getitem__, string))


@lru_cache(maxsize=1 << 15)
def width(string: str, font: Font, size: int) -> int:
    """Width in whole micrometres, rounded once for the whole string."""
    return _micrometres(ems(string, font), size)


def missing(string: str, font: Font) -> str:
    """The characters that no font has, each once, in their order; empty when all can be printed."""
    if string.isascii() and string.isprintable():
        return ""
    return "".join(dict.fromkeys(c for c in string if c not in _ADVANCES[font]))


def shown(string: str, font: Font) -> str:
    """The string with `STAND_IN` for each character that no font has: just as wide, and it can be printed."""
    lost = missing(string, font)
    return string.translate(dict.fromkeys(map(ord, lost), STAND_IN)) if lost else string


@lru_cache(maxsize=1 << 12)
def runs(string: str, font: Font) -> tuple[tuple[Face, str], ...]:
    """The string in parts, each with the font file that draws it; a ValueError if no font has a character."""
    text, signs = _FACES[font]
    if string.isascii() and string.isprintable():
        return ((text, string),) if string else ()
    if lost := missing(string, font):
        raise ValueError(f"no font has {lost[0]!r} (U+{ord(lost[0]):04X}), in {string!r}")
    return tuple((text if plain else signs, "".join(part)) for plain, part in groupby(string, _TEXT.__contains__))


def ascent(font: Font, size: int) -> int:
    """From the baseline up to where the highest letters end."""
    return _micrometres(widths.ASCENT, size)


def descent(font: Font, size: int) -> int:
    """From the baseline down to where the lowest letters end; positive."""
    return _micrometres(widths.DESCENT, size)


def cap_height(font: Font, size: int) -> int:
    return _micrometres(widths.CAP_HEIGHT, size)


def x_height(font: Font, size: int) -> int:
    return _micrometres(widths.X_HEIGHT, size)


def height_needed(arcminutes: float, distance_mm: float) -> float:
    """Height of a letter in millimetres that subtends an angle at a distance (NUREG-0700, 1.3.1-4)."""
    return 6.283 * distance_mm * arcminutes / 21600


def cap_arcminutes(size: int, distance_mm: float) -> float:
    """Minutes of arc that a capital of this size subtends at a distance."""
    millimetres = widths.CAP_HEIGHT * size * 25.4 / 72_000_000
    return 21600 * millimetres / (6.283 * distance_mm)


def smallest_legible(distance_mm: float) -> int:
    """The smallest size in whole or half points whose capitals subtend 16 minutes of arc or more."""
    step = 500
    steps = max(1, int(SMALLEST_ARC / cap_arcminutes(step, distance_mm)))
    return steps * step if cap_arcminutes(steps * step, distance_mm) >= SMALLEST_ARC else (steps + 1) * step


def _micrometres(thousandths: int, size: int) -> int:
    # 25400 / 72 micrometres to the point, over a thousand twice, in lowest terms; halves go up.
    return (thousandths * size * 127 + 180_000) // 360_000
