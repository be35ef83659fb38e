"""The right parts of a `stock` block: lengths, sizes, papers. Exact until they become whole micrometres."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction
from unicodedata import normalize

from dotleader.handbook.amounts.numerals import Numeral, read_number
from dotleader.handbook.amounts.trouble import said_of_number
from dotleader.handbook.stocks.sizes import INCH, SIZES, Size, micrometres, paper_named, size_named
from dotleader.handbook.stocks.stock import USUAL_PAPER
from dotleader.source.record import record
from dotleader.syntax.plain import folded

_UNITS: dict[str, Fraction] = {
    **dict.fromkeys(("mm",), Fraction(1_000)),
    **dict.fromkeys(("cm",), Fraction(10_000)),
    **dict.fromkeys(("in", "inch", "inches", '"'), Fraction(INCH)),
    **dict.fromkeys(("mil", "mils"), Fraction(INCH, 1_000)),
    **dict.fromkeys(("micron", "microns", "um", "\u00b5m", "\u03bcm"), Fraction(1)),
}
_UNIT = re.compile(r'(?P<number>.*?)\s*(?P<unit>[a-zA-Z\u00b5\u03bc]+|")?')
_LENGTHS_ARE_IN = "Lengths are in `mm`, `cm` or `in`; the thickness of film and paper in `mil` or `micron` as well."
_BETWEEN = re.compile(r"\s*[x×X]\s*|\s+by\s+")
_FRACTION = re.compile(r"(?:([0-9]{1,4})\s+)?([0-9]{1,4})/([1-9][0-9]{0,3})")
_OF_ONE_SIGN = re.compile("[\u00bc-\u00be\u2150-\u215e]")  # a half and its like, from a keyboard or a word processor
_LONGEST = 10_000_000  # 10 m: whatever is longer is a slip


@record
class Unread:
    """A text that could not be read: what is the matter with it, and what to do where that is known."""

    message: str
    help: str = ""


def exact_length(text: str, unit: str = "") -> Fraction | Unread:
    """A length above zero with its unit (or with `unit` where it has none), in micrometres."""
    found = _UNIT.fullmatch(text.strip())
    assert found  # the pattern matches any one line
    spelled = found["unit"] or unit
    if not any(sign.isnumeric() for sign in text):
        return Unread(f"`{text}` is no length." if text.strip() else "The number is missing.", _LENGTHS_ARE_IN)
    if not spelled:
        return Unread(f"`{text}` has no unit.", _LENGTHS_ARE_IN)
    if spelled not in _UNITS:
        return Unread(f"`{spelled}` is no unit of length here.", _LENGTHS_ARE_IN)
    number = _number(found["number"])
    if isinstance(number, Unread):
        return number
    length = number * _UNITS[spelled]
    if micrometres(length) <= 0:
        return Unread(f"`{text}` is no length: it is not above zero.")
    return length if length <= _LONGEST else Unread(f"`{text}` is longer than anything that is printed.")


def length_of(text: str, unit: str = "") -> int | Unread:
    """A length above zero with its unit (or with `unit` where it has none), in whole micrometres."""
    length = exact_length(text, unit)
    return length if isinstance(length, Unread) else micrometres(length)


def unit_of(text: str) -> str:
    """The unit that a length ends with; `""` without one."""
    found = _UNIT.fullmatch(text.strip())
    return (found["unit"] or "") if found else ""


def size_of(text: str) -> Size | Unread:
    """Width and height: `5.75 x 8.75 in`, `148 mm x 210 mm`, or a name such as `A5`."""
    named = size_named(text)
    if named:
        return named
    parts = _BETWEEN.split(text.strip())
    if len(parts) != 2:
        if parts and parts[0][:1].isdigit():
            return Unread(f"`{text}` is no size: a width and a height are needed.")
        return Unread(f"`{text}` is no size that has a name.", f"The names are {_listed(SIZES)}.")
    width = length_of(parts[0], unit_of(parts[1]))
    height = length_of(parts[1])
    if isinstance(height, Unread):
        return height
    return width if isinstance(width, Unread) else (width, height)


def paper_of(text: str) -> tuple[str, Size] | Unread:
    """A paper's name and its upright size; a size without a name stands as its own name."""
    name = paper_named(text)
    if name:
        return name, SIZES[name]
    size = size_of(text)
    if isinstance(size, Unread):
        return size
    return " ".join(text.split()), (min(size), max(size))


_GRAMS = ("g/m2", "g/m\u00b2", "gsm")
_POUNDS = {"bond": (17, 22), "text": (25, 38), "cover": (20, 26)}
"""The sheets, in inches, of which 500 weigh what an American paper is named after (common practice, no source)."""

_BULK = Fraction(USUAL_PAPER * 10, 752)
"""Micrometres of thickness to a g/m2: 4 mil to 75.2 g/m2, as with bond paper. Heavier papers are denser, so that this
is rather too much."""

_GRAMS_PER_POUND = Fraction(45_359_237, 100_000)


def weight_of(text: str) -> int | Unread:
    """The thickness of a paper, in micrometres rounded up, from its weight: `120 g/m2`, `20 lb bond`."""
    words = folded(text)
    for unit in _GRAMS:
        if words.endswith(unit):
            number = _number(words[: -len(unit)].strip())
            return number if isinstance(number, Unread) else _thickness(text, number)
    of_pounds = re.fullmatch(r"(?P<number>.*?)\s*lbs?(?:\s+(?P<kind>\w+))?", words)
    if of_pounds is None:
        return Unread(f"`{text}` is no weight of paper.", "It is in `g/m2`, or in pounds as in `20 lb bond`.")
    if of_pounds["kind"] not in _POUNDS:
        kinds = " or ".join(f"`lb {kind}`" for kind in _POUNDS)
        return Unread(f"`{text}` does not say which kind of paper is weighed.", f"Write {kinds}, or `g/m2`.")
    number = _number(of_pounds["number"])
    if isinstance(number, Unread):
        return number
    width, height = _POUNDS[of_pounds["kind"]]
    square_metres = 500 * width * height * Fraction(INCH, 1_000_000) ** 2
    return _thickness(text, number * _GRAMS_PER_POUND / square_metres)


def _thickness(text: str, grams: Fraction) -> int | Unread:
    if not 20 <= grams <= 1_000:
        return Unread(f"`{text}` is the weight of no paper that goes through a printer.")
    return -int(-grams * _BULK // 1)


def _number(text: str) -> Fraction | Unread:
    fraction = _FRACTION.fullmatch(_spelled_out(text).strip())
    if fraction:
        return Fraction(int(fraction[1] or 0)) + Fraction(int(fraction[2]), int(fraction[3]))
    read = read_number(text)
    if isinstance(read, Numeral):
        return read.value
    return Unread(*said_of_number(read)) if text.strip() else Unread("The number is missing.")


def _spelled_out(text: str) -> str:
    """Fractions that are one sign, such as a half, as two numbers and a stroke, apart from what stands before them."""
    apart = _OF_ONE_SIGN.sub(lambda sign: f" {normalize('NFKC', sign[0])}", text)
    return apart.replace("\u2044", "/")


def _listed(names: Iterable[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
