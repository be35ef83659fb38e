"""Two negatives that have to be worked out."""

from __future__ import annotations

import re
from collections.abc import Iterator

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
  note Never fail to close the vents.
  if the lamp does not go out unless the pump is not on
    Fuel pump .... ON
  end
""",
    (
        ("double-negative", "NOT UNLATCHED"),
        ("double-negative", "not insecure"),
        ("double-negative", "not open the window without"),
        ("double-negative", "Never fail to"),
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
    "unlocked unlatched unsafe unarmed unlikely unusual unable uncommon unclear uneven unstable unserviceable "
    "unreliable unknown unfastened untied unplugged unsecured unlit uncovered undone unequal unnecessary unimportant "
    "disconnected disengaged disarmed disabled deactivated inoperative inactive incorrect impossible incomplete "
    "insecure insufficient inadequate invisible"
)
_TWICE = re.compile(
    rf"\b{_NOT}\s+(?:{'|'.join(_NEGATED.split())})\b"
    rf"|\b(?:not|never)\s+{_SOFT}{{0,3}}without\b"
    rf"|\b(?:not|never|cannot|\w+n['’]t)\s+{_SOFT}{{0,3}}(?:not|never|nobody|nothing)\b"
    rf"|\b(?:not|never|cannot|\w+n['’]t)\s+(?:{_SOFT}{{0,1}})fail\s+to\b"
    rf"|\bunless\s+{_SOFT}{{0,4}}(?:not|never|no)\b",
    re.IGNORECASE,
)


def check(subject: Subject) -> Iterator[Finding]:
    if not any(_TWICE.search(source.text) for source in subject.handbook.files):
        return  # as nearly always
    lines = subject.lines()
    for phrase in _phrases(subject):
        yield from _said(phrase)
    for _, repeat in lines.repeats:
        yield from _said(repeat.until)


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


def _said(phrase: Phrase) -> Iterator[Finding]:
    found = _TWICE.search(phrase.spot.text)
    if found is not None:
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
