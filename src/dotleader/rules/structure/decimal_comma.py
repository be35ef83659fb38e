"""A number with a comma where a decimal point belongs: in a value, or before a unit in the text of a card."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.amounts.units import UnknownUnit, find_unit
from dotleader.handbook.walking import every_phrase
from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
values
  oil ..... at least 4,5 US qt  unverified

normal Preflight
  when before the first flight of the day
  Oil ..... {oil}
  Tyres ..... 2,2 bar
""",
    (("decimal-comma", "4,5"), ("decimal-comma", "2,2")),
)

GOOD = Example(
    """\
values
  oil ..... at least 4.5 US qt  unverified

normal Preflight
  when before the first flight of the day
  Oil ..... {oil}
  Tyres ..... 2.2 bar
  Breakers 1,2 ..... IN
    Push 1,2 in turn.
""",
)

_COMMA = re.compile(r"(?<![\d.,])(?P<number>\d+,\d{1,2})(?![\d,.])\s*(?P<after>\S+(?: \S+)?)")

_MAY_BE = re.compile(r",\d{1,2}(?![\d,.])")  # begins with a mark that is seldom met, and is looked for fast


def check(subject: Subject) -> Iterator[Finding]:
    """Numbers in the texts of cards; those in values are found where these are read."""
    if not any(_MAY_BE.search(source.text) for source in subject.handbook.files):
        return  # as nearly always
    for phrase in every_phrase(subject.handbook):
        for found in _COMMA.finditer(phrase.spot.text):
            if not _is_unit(found["after"]):
                continue
            start = phrase.spot.start + found.start("number")
            number = found["number"]
            yield Finding(
                RULE.name,
                Spot(phrase.spot.source, start, start + len(number)),
                f"`{number}` has a comma where it does not separate thousands.",
                f"Write a point before decimals: `{number.replace(',', '.')}`. Where two things are counted, put a "
                f"space behind the comma: `{number.replace(',', ', ')}`.",
            )


def _is_unit(text: str) -> bool:
    """Whether the one or two words begin with a unit."""
    words = text.rstrip(".,;:!?)").split() or [""]
    if words[0] == "in" and len(words) > 1:
        return False  # `1,2 in turn`
    return any(not isinstance(find_unit(" ".join(words[:count])), UnknownUnit) for count in (2, 1))


RULE = Rule(
    name="decimal-comma",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A number with a comma that is not followed by exactly three digits, in a value or before a unit in the text "
        "of a card. A comma before exactly three digits separates thousands."
    ),
    why="A comma means a decimal to some readers and thousands to others.",
    source=THE_LANGUAGE,
    mend="Write a decimal point: `82.5`. Thousands are `1,250` or `1250`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    fix="unsafe",
)
