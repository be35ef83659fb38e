"""Two negatives that have to be worked out."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from functools import cache

from dotleader.handbook.cards import Explained, Phrase
from dotleader.handbook.walking import texts_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
emergency Door open in flight
  when the door light is on
  Door .... NOT UNLATCHED
  if the door is not insecure
    Land .... WHEN CONVENIENT
    end
  caution Do not open the window without slowing down first.
  note Never fail to close the vents. Never leave the window unlatched.
  note No landing without a second look.
  if the lamp does not go out unless the pump is not on
    Fuel pump .... ON
  end
""",
    (
        ("double-negative", "NOT UNLATCHED"),
        ("double-negative", "not insecure"),
        ("double-negative", "not open the window without"),
        ("double-negative", "Never fail to"),
        ("double-negative", "Never leave the window unlatched"),
        ("double-negative", "No landing without"),
        ("double-negative", "unless the pump is not"),
    ),
)

GOOD = Example(
    """\
emergency Door open in flight
  when no engine and no airfield within gliding range
  Door .... LATCHED
  Life jackets .... ON, NOT INFLATED
  Propeller .... NO NICKS, NO CRACKS
  Stick .... NO SUDDEN FORCE, NEVER NEUTRAL
  caution Do not disconnect the battery while the engine runs.
  note No drop at all is a fault too: the other magneto may never switch off.
  note Once down the flaps cannot be brought up again without losing height.
  warning Nobody may touch the propeller unless the magnetos are off.
  if the gear does not move, or does not lock
    Gear lever .... NOT MOVED AGAIN
  if it does not charge, not even at idle
    Alternator .... OFF
  if there is no power, nothing turns and the radio is not working
    Land .... WITHOUT POWER
  end
""",
)

_NOT = r"(?:not|never|cannot|nobody|nothing|no one|neither|no|\w+n['’]t)"
_SOFT = r"(?:(?!(?:if|when|that|because|until|while|which|who|and|or|nor|but|than|so|even|only)\b)[\w{}°-]+\s+)"
_NEGATED = (
    "unlocked unlatched unsecured unfastened unchecked unsafe unarmed unable unclear "
    "uneven unstable unserviceable "
    "unreliable unknown untied unplugged unlit uncovered undone unequal unnecessary unimportant "
    "disconnected disengaged disarmed disabled deactivated inoperative inactive incorrect impossible incomplete "
    "insecure insufficient inadequate invisible"
)
# Looked for all over a book, and so each begins with letters that are the same wherever it is met: these are fast.
_FIRST = tuple(
    re.compile(pattern)
    for pattern in (
        r"no(?<!\wno)(?:t|body|thing)?\b",
        r"ne(?<!\wne)(?:ver|ither)\b",
        r"cannot(?<!\wcannot)\b",
        r"unless(?<!\wunless)\b",
    )
)
_MAY_BE = re.compile(
    r"(?:\w+|no one)\b(?:\s+[^\s.,;:]+){0,5}?\s+"
    rf"(?:not|never|no|nobody|nothing|without|fail|{'|'.join(_NEGATED.split())})\b"
)
_SHORT_FORM = re.compile(r"n['’]t\b")


@cache
def _twice() -> re.Pattern[str]:
    """Made only where something may be found: it takes long to compile."""
    return re.compile(
        rf"\b{_NOT}\s+(?:{'|'.join(_NEGATED.split())})\b"
        rf"|\b(?:not|never)\s+{_SOFT}{{0,5}}without\b"
        rf"|\bno\s+{_SOFT}without\b"
        rf"|\b(?:not|never)\s+{_SOFT}{{1,4}}(?:unlocked|unlatched|unsecured|unfastened|unchecked)\b"
        rf"|\b(?:not|never|cannot|\w+n['’]t)\s+{_SOFT}{{0,3}}(?:not|never|nobody|nothing)\b"
        rf"|\b(?:not|never|cannot|\w+n['’]t)\s+(?:{_SOFT}{{0,1}})fail\s+to\b"
        rf"|\bunless\s+{_SOFT}{{0,4}}(?:not|never|no)\b",
        re.IGNORECASE,
    )


def check(subject: Subject) -> Iterator[Finding]:
    places = _places(subject)
    if not places:
        return  # as nearly always
    for phrase in _phrases(subject):
        spot = phrase.spot
        offsets = places.get(spot.source.name, ())
        if bisect_left(offsets, spot.start) < bisect_left(offsets, spot.end):
            yield from _said(phrase)


def _places(subject: Subject) -> dict[str, list[int]]:
    """Where in each file a double negative may begin."""
    places = {
        source.name: sorted(_in_text(text))
        for source, text in zip(subject.handbook.files, subject.lines().texts, strict=True)
    }
    return {name: offsets for name, offsets in places.items() if offsets}


def _in_text(text: str) -> Iterator[int]:
    for first in _FIRST:
        for found in first.finditer(text):
            if _MAY_BE.match(text, found.start()):
                yield found.start()
    yield from (found.start() for found in _SHORT_FORM.finditer(text))


def _phrases(subject: Subject) -> Iterator[Phrase]:
    """The texts of the cards and of what is amplified; prose that stands before the cards has its own style."""
    lines = subject.lines()
    for card in subject.handbook.cards:
        if card.when is not None:
            yield card.when
        for part in card.amplified:
            yield from part.paragraphs if isinstance(part, Explained) else (part,)
    for _, item in lines.items:
        yield from texts_of(item)
    for _, notice in lines.notices:
        yield notice.phrase
    for _, arm in lines.arms:
        if arm.condition is not None:
            yield arm.condition
    for _, repeat in lines.repeats:
        yield repeat.until


def _said(phrase: Phrase) -> Iterator[Finding]:
    for found in _twice().finditer(phrase.spot.text):
        yield Finding(
            RULE.name,
            Spot(phrase.spot.source, phrase.spot.start + found.start(), phrase.spot.start + found.end()),
            f"`{short(' '.join(found[0].split()))}` says no twice.",
            "Say what is wanted: `LATCHED` for `NOT UNLATCHED`, `only after slowing down` for `not without slowing "
            "down`.",
        )


RULE = Rule(
    name="double-negative",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "Two negatives that belong together: `not unlocked`, `do not ... without`, `does not ... not`, `never fail "
        "to`, `unless ... not`. Two that stand beside one another (`NO NICKS, NO CRACKS`) are none, nor is a "
        "prohibition of undoing something (`Do not disconnect`)."
    ),
    why="A text that has to be turned round in the head is turned round wrongly by somebody who is frightened.",
    source="UK procedure audit aid after HSG 48, no double negatives (read)",
    mend="Say it without either.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
