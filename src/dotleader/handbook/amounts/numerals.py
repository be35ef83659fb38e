"""One number: read as people write it, printed as a pilot reads it. Exact both ways."""

from __future__ import annotations

import re
from enum import Enum, auto
from fractions import Fraction

from dotleader.handbook.amounts.rounding import places_of
from dotleader.source.record import record

MINUS = "−"
_MINUSES = "-−–‑"  # hyphen, minus, and the dashes that a word processor makes of a hyphen
MOST_DIGITS = 40
_DIGITS = frozenset("0123456789")


@record
class Written:
    """How a number is written: decimals, commas between thousands, digits before the point (3 in `090`)."""

    places: int = 0
    grouped: bool = True
    digits: int = 1


@record
class Numeral:
    """A number as read, with the way it was written."""

    value: Fraction
    written: Written


class NumberFault(Enum):
    NOT_A_NUMBER = auto()
    DECIMAL_COMMA = auto()  # 3,5
    FOREIGN_THOUSANDS = auto()  # 1.234,5 or 1 234 or 1'234
    MISPLACED_COMMA = auto()  # 12,34,567
    BARE_POINT = auto()  # 5.
    PLUS_SIGN = auto()
    TOO_LONG = auto()


@record
class NumberTrouble:
    """A text that is no number here. `offers` are right forms of what may be meant, likeliest first."""

    fault: NumberFault
    text: str
    offers: tuple[str, ...] = ()


_PLAIN = re.compile(r"([0-9]*)(?:\.([0-9]+))?")
_GROUPED = re.compile(r"([1-9][0-9]{0,2}(?:,[0-9]{3})+)(?:\.([0-9]+))?")

# What is not a number, in the order in which it is tried. Compiled only when there is a fault to explain.
_COMMA = r"[0-9]*,[0-9]+"
_POINTS_FOR_THOUSANDS = r"[1-9][0-9]{0,2}(?:(?:\.[0-9]{3})+,[0-9]+|(?:\.[0-9]{3}){2,})"
_SPACED = r"([1-9][0-9]{0,2}(?:[ \u00a0\u2009\u202f'’][0-9]{3})+)([.,][0-9]+)?"
_TRAILING_POINT = r"[0-9][0-9,]*\."
_GROUPS_AND_DECIMALS = r"[0-9]+(?:,[0-9]+)*(?:\.[0-9]+)?"
_SWAPPED = str.maketrans({",": ".", ".": ","})


def read_number(text: str) -> Numeral | NumberTrouble:
    """One number: digits, a decimal point, commas before exactly three digits, a minus. Never raises.

    `.5` is read; whoever splits the line sees to it that no leader dot is taken for a decimal point.
    """
    stripped = text.strip()
    negative = stripped[:1] in _MINUSES and len(stripped) > 1
    body = stripped[1:].lstrip() if negative else stripped
    if sum(sign.isdigit() for sign in body) > MOST_DIGITS:
        return NumberTrouble(NumberFault.TOO_LONG, stripped)
    found = _PLAIN.fullmatch(body) or _GROUPED.fullmatch(body)
    if not found or not body:
        return _trouble(stripped, body, "-" if negative else "")
    whole, decimals = found[1].replace(",", ""), found[2] or ""
    value = Fraction(int((whole + decimals) or "0"), 10 ** len(decimals))
    digits = len(whole) if len(whole) > 1 and whole[0] == "0" else 1
    written = Written(len(decimals), grouped="," in body, digits=digits)
    return Numeral(-value if negative else value, written)


def _trouble(text: str, body: str, minus: str) -> NumberTrouble:
    def trouble(fault: NumberFault, *offers: str) -> NumberTrouble:
        return NumberTrouble(fault, text, tuple(minus + offer for offer in offers))

    if body[:1] == "+" and not minus and body[1:2] in _DIGITS and isinstance(read_number(body[1:]), Numeral):
        return trouble(NumberFault.PLUS_SIGN, body[1:])
    if re.fullmatch(_COMMA, body):
        whole, _, decimals = body.partition(",")
        if len(whole) > 3 and len(decimals) == 3:
            return trouble(NumberFault.DECIMAL_COMMA, f"{whole}.{decimals}", f"{int(whole + decimals):,}")
        return trouble(NumberFault.DECIMAL_COMMA, f"{whole or '0'}.{decimals}")
    if re.fullmatch(_POINTS_FOR_THOUSANDS, body):
        return trouble(NumberFault.FOREIGN_THOUSANDS, body.translate(_SWAPPED))
    if spaced := re.fullmatch(_SPACED, body):
        decimals = (spaced[2] or "").replace(",", ".")
        return trouble(NumberFault.FOREIGN_THOUSANDS, re.sub(r"[^0-9]", ",", spaced[1]) + decimals)
    if re.fullmatch(_TRAILING_POINT, body) and isinstance(read_number(body[:-1]), Numeral):
        return trouble(NumberFault.BARE_POINT, body[:-1])
    if re.fullmatch(_GROUPS_AND_DECIMALS, body):
        return trouble(NumberFault.MISPLACED_COMMA)
    return trouble(NumberFault.NOT_A_NUMBER)


def number_text(value: Fraction, written: Written | None = None) -> str | None:
    """A number as decimals, with commas between thousands from 1,000 up and a true minus sign.

    It is written with as many places as `written` asks for, and with more where it needs more: no digit is
    ever dropped. `None` when it does not come out even and has to be rounded first.
    """
    needed = places_of(value)
    if needed is None:
        return None
    form = written or Written()
    places = max(needed, form.places)
    scaled = abs(value.numerator) * 10**places // value.denominator
    whole, decimals = divmod(scaled, 10**places)
    digits = f"{whole:,}" if form.grouped else str(whole)
    point = f".{decimals:0{places}}" if places else ""
    return (MINUS if value < 0 else "") + digits.rjust(form.digits, "0") + point
