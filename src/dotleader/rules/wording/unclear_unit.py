"""A unit in a text that does not say which it is."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Phrase
from dotleader.handbook.walking import texts_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
normal Preflight
  when before the first flight of the day
  Fuel .... AT LEAST 18 gal
    Both tanks hold 38 gallons.
  Wind .... BELOW 30 kmh
  Visibility .... 3 MILES
""",
    (
        ("unclear-unit", "18 gal"),
        ("unclear-unit", "38 gallons"),
        ("unclear-unit", "30 kmh"),
        ("unclear-unit", "3 MILES"),
    ),
)

GOOD = Example(
    """\
normal Preflight
  when ten miles out, or 10 miles from the coast
  Fuel .... AT LEAST 18 US gal, 15 imp. gal
    Both tanks hold 38 US gallons, or 32 imperial gallons.
  Wind .... BELOW 30 KM/H
  Visibility .... 3 NAUTICAL MILES, 3.5 statute miles
  Tyres .... 36 PSI
  Time .... 20 mins
  Weight .... 60 lbs
  Fuel cans .... 2 GALLON CANS OUT
""",
)

_GALLONS = {"gph": "US gal/h", "gal/h": "US gal/h", "gal/hr": "US gal/h", "gals/h": "US gal/h"}
_MAY_BE = re.compile(r"[0-9]\s*(?:gal|gph|k(?:mh|ph|mph|m/hr|m\.h)|mile)")
_UNCLEAR = re.compile(
    r"(?<![\w.])\d[\d.,]*\s*(?P<unit>gals?/hr?|gal(?:lon)?s?(?!\s+(?:cans?|drums?|tanks?|jerry))|gph|"
    r"kmh|kph|kmph|km/hr|km\.h|miles?)\b(?![/\w])",
    re.IGNORECASE,
)


def check(subject: Subject) -> Iterator[Finding]:
    lines = subject.lines()
    if not any(map(_MAY_BE.search, lines.texts)):
        return  # as nearly always
    for _, item in lines.items:
        for phrase in texts_of(item):
            yield from _said(phrase, miles=phrase is item.response)
    for _, notice in lines.notices:
        yield from _said(notice.phrase, miles=False)
    for _, arm in lines.arms:
        if arm.condition is not None:
            yield from _said(arm.condition, miles=False)


def _said(phrase: Phrase, *, miles: bool) -> Iterator[Finding]:
    """What is unclear in a text; how far away something is may be said in miles where nothing is set by it."""
    for found in _UNCLEAR.finditer(phrase.spot.text):
        unit = found["unit"].lower()
        if unit.startswith("mile") and not miles:
            continue
        start = phrase.spot.start
        yield Finding(
            RULE.name,
            Spot(phrase.spot.source, start + found.start(), start + found.end()),
            _message(found[0], unit),
            _help(unit),
        )


def _message(text: str, unit: str) -> str:
    text = " ".join(text.split())
    if unit.startswith("k"):
        return f"`{text}` is in a unit that the language does not have."
    which = "mile: the nautical or the statute" if unit.startswith("mile") else "gallon: the American or the imperial"
    return f"`{text}` does not say which {which} one."


def _help(unit: str) -> str:
    if unit.startswith("k"):
        return "Write `km/h`, as it stands on the instrument."
    if unit.startswith("mile"):
        return "Write `NM` or `SM`."
    if unit in _GALLONS:
        return "Write `US gal/h`, or `l/h` where the instrument shows litres."
    return "Write `US gal` or `imp gal`."


RULE = Rule(
    name="unclear-unit",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A typed number in gallons that does not say which, in miles in a response that does not say which, or in "
        "`kmh` or `kph`, in an item, a detail, a notice or a condition. In a declared value such a unit is an error."
    ),
    why=(
        "An imperial gallon is a fifth larger than a US gallon: with the wrong one the fuel on board is wrong by that "
        "much."
    ),
    source="NIST SP 811 (2008), appendix B: gallon (U.S.) 3.785 412 L, gallon (Imperial) 4.546 09 L (from memory)",
    mend="Write the unit in full: `18 US gal`, `100 km/h`, `3 NM`; or declare the value and refer to it.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
