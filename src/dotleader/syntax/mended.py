"""Lines that are not right as their writer probably meant them: what the help of a finding offers.

Nothing here is read as if it had been written; a guess that is wrong costs a look.
"""

from __future__ import annotations

import re

_BULLET = re.compile(r"(?:\(?\d{1,3}[.)]|\[[ xX]?\]|[-+*•·▪◦‣●○■□☐☑☒✓✔])\s+")
_JOINT = re.compile(r"\s+[-.,:;=_·•→>|~]+\s+|[:=→]+\s+|[_·]{2,}|[.,]{2,}|\s{2,}")
"""What people put between a challenge and its response where they know no leader."""
_PANEL = re.compile(
    r"(?P<left>.*[a-z].*?)\s+(?P<right>(?:[A-Z0-9][A-Z0-9/%°.-]*,?\s+)*[A-Z0-9/%°-]*[A-Z][A-Z0-9/%°-]*)"
)
"""`Fuel pump ON`: capitals at the end belong to the panel."""
_NUMBER = re.compile(r"(?P<left>\S*?[A-Za-z].*?)\s+(?P<right>\d.*)")
"""`VG 82 KIAS`: a name, and what begins with a number."""
_AT_MOST = re.compile(r"(?:<=?|≤|max(?:imum|\.)?|up to|not more than|no more than|under)\s*(?=\d)", re.IGNORECASE)
_AT_LEAST = re.compile(r"(?:>=?|≥|min(?:imum|\.)?|not less than|no less than|over)\s*(?=\d)", re.IGNORECASE)
_NAME = re.compile(r"[^\W\d_][^+*/()×]*?(?=\s*(?:$|[-+*/()×]|rounded\b|from\b|to\b))")
_DEGREES = {"℃": "degC", "℉": "degF"}  # one sign each, which nobody's keyboard has: they are pasted
_DOTS = "...."
_LONGEST = 200
"""Characters of a line that a guess is made about; the forms above need more than proportional time."""


def without_bullet(text: str) -> str:
    """The text without the bullet or number of a list before it, unless that is all there is."""
    return _BULLET.sub("", text, count=1) if _BULLET.match(text) else text


def item_of(text: str) -> str:
    """`Fuel pump: ON` as `Fuel pump .... ON`; empty where nobody can say what the response is."""
    return _joined(text) or _parted(_PANEL, text) if len(text) <= _LONGEST else ""


def fact_of(text: str) -> str:
    """`VG = 82 KIAS` as `VG .... 82 KIAS`; empty where nobody can say which part is the name."""
    return _joined(text) or _parted(_NUMBER, text) if len(text) <= _LONGEST else ""


def _joined(text: str) -> str:
    text = without_bullet(text.strip())
    joint = _JOINT.search(text)
    if joint is None:
        return ""
    left, right = text[: joint.start()].strip(), text[joint.end() :].strip()
    return f"{left} {_DOTS} {right}" if _says(left) and _says(right) else ""


def _parted(form: re.Pattern[str], text: str) -> str:
    found = form.fullmatch(without_bullet(text.strip()))
    return f"{found['left']} {_DOTS} {found['right']}" if found else ""


def _says(part: str) -> bool:
    return any(map(str.isalnum, part))


def value_hint(text: str, at: int) -> tuple[str, str]:
    """What to do about a value that can be read up to `at`, and the right text where there is one; empty where nobody
    can say."""
    if len(text) > _LONGEST:
        return "", ""
    number_part = text.split(" from ", 1)[0]
    for limit, words, row in ((_AT_MOST, "at most", "below"), (_AT_LEAST, "at least", "above")):
        if found := limit.match(number_part):
            rest = number_part[found.end() :]
            return f"Write `{words} {rest}`, or in the row of a gauge `{row} {rest}`.", ""
    before, rest = text[:at].strip(), text[at:].strip()
    if re.match(r"\d{3}(?!\d)", rest) and before[-1:].isdigit():
        return f"Thousands are separated by a comma, or by nothing: `{before},{rest}`.", f"{before},{rest}"
    if rest[:1] in _DEGREES and before[-1:].isdigit():
        right = f"{before} {_DEGREES[rest[0]]}{rest[1:]}"
        return f"Write `{right}`.", right
    if before[-1:] in set("+-*/×(") and (name := _NAME.match(rest)):
        return f"A declared value stands in braces: `{{{name[0].strip()}}}`.", ""
    return "", ""
