"""`and` beside `or` in one condition."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Phrase
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
equipment
  Pitot heat .... OFF, ON

abnormal Icing
  when ice is seen and the airspeed falls or the windows freeze over
  Pitot heat .... ON if in cloud or rain and below 5 degC, otherwise OFF
  if the wings and the tail carry ice or it grows
    Land .... AT ONCE
  note The wipers stick when it is wet and cold or when ice has formed.
  Windows and vents or hatch .... CLOSED
  if rain and/or snow falls
    Windows .... CLOSED
  end
""",
    (
        ("and-or-mixed", "ice is seen and the airspeed falls or the windows freeze over"),
        ("and-or-mixed", "ON if in cloud or rain and below 5 degC, otherwise OFF"),
        ("and-or-mixed", "the wings and the tail carry ice or it grows"),
        ("and-or-mixed", "when it is wet and cold or when ice has formed"),
        ("and-or-mixed", "Windows and vents or hatch"),
        ("and-or-mixed", "rain and/or snow falls"),
    ),
)

GOOD = Example(
    """\
equipment
  Nav and strobe lights .... OFF, ON

abnormal Icing
  when ice is seen and felt, or the windows freeze over
  if the temperature is between -10 and 5 degC or unknown
    Nav and strobe lights .... ON if in cloud or rain, otherwise OFF
  if Nav and strobe lights are ON or the pitot heat is
    Ammeter .... WATCHED
  Flight controls .... FULL AND FREE, OR LESS
  note Rain and cloud, or drizzle, freeze on the wing. It may stay and it may go.
  repeat until no ice forms and the windows are clear
    Heading .... TO CLEAR AIR
  end
""",
)

_AND, _OR = re.compile(r"\band\b", re.IGNORECASE), re.compile(r"\bor\b", re.IGNORECASE)
_BETWEEN = re.compile(r"\bbetween\s+\S+(?:\s+\S+)?\s+and\b|\bboth\s+\w+\s+and\b|\bor\s+(?:more|less)\b", re.IGNORECASE)
_CONDITION = re.compile(r"\b(?:if|unless|when)\b[^,:.;]*", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    named = _named(subject)
    lines = subject.lines()
    for card in subject.handbook.cards:
        if card.when is not None and _in_part(card.when.spot.text, named):
            yield _finding(card.when.spot)
    for phrase in (
        *(arm.condition for _, arm in lines.arms if arm.condition is not None),
        *(repeat.until for _, repeat in lines.repeats),
    ):
        if _mixes(phrase.spot.text, named):
            yield _finding(phrase.spot)
    for _, item in lines.items:
        for spot in (*(c.phrase.spot for c in item.challenges), *((item.response.spot,) if item.response else ())):
            if _in_part(spot.text, named):
                yield _finding(spot)
        for phrase in item.detail:
            yield from _in_prose(phrase, named)
    for _, notice in lines.notices:
        yield from _in_prose(notice.phrase, named)


def _named(subject: Subject) -> list[str]:
    """Declared names that have an `and` or an `or` in them."""
    handbook = subject.handbook
    names = (*(control.name for control in handbook.controls.values()), *(g.name for g in handbook.gauges.values()))
    return [name for name in names if _AND.search(name) or _OR.search(name)]


def _has_both(text: str) -> bool:
    low = text.lower()
    return "or" in low and "and" in low and _OR.search(low) is not None and _AND.search(low) is not None


def _mixes(text: str, named: list[str]) -> bool:
    if not _has_both(text):
        return False
    for name in named:
        text = text.replace(name, "")
    text = _BETWEEN.sub("", text)
    return _has_both(text)


def _in_part(text: str, named: list[str]) -> bool:
    """Whether a part between commas mixes them; `A and B, or C` says at which moment well enough."""
    return _has_both(text) and any(_mixes(part, named) for part in text.split(","))


def _in_prose(phrase: Phrase, named: list[str]) -> Iterator[Finding]:
    text = phrase.spot.text
    if not _has_both(text):
        return
    for found in _CONDITION.finditer(text):
        if _mixes(found[0], named):
            start = phrase.spot.start + found.start()
            yield _finding(Spot(phrase.spot.source, start, start + len(found[0].rstrip())))
            return


def _finding(spot: Spot) -> Finding:
    return Finding(
        RULE.name,
        spot,
        f"`{short(' '.join(spot.text.split()))}` joins its parts by `and` and by `or`.",
        "Say it in one way: give each case an `if` or an `or if` of its own, or name the state that they make.",
    )


RULE = Rule(
    name="and-or-mixed",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A condition with both `and` and `or` in it: after `when`, `if`, `or if` or `repeat until`, or in a clause of"
        " a detail or notice that begins with `if`, `unless` or `when`; also a challenge or a response with both "
        "between two commas. `between 5 and 10` is no `and`, nor is one in a declared name."
    ),
    why="Whether `A and B or C` holds with C alone is read one way by one pilot and the other way by the next.",
    source="NUREG-0899 and DOE-STD-1029-92 on logic words, never AND with OR in one sentence (from memory)",
    mend="Split it: one `if` for each case, or two levels of `if`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
