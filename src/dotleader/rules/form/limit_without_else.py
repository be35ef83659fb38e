"""Something that must happen within a time, and nothing for the case that it does not."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from dotleader.handbook.cards import (
    Branch,
    Card,
    Explained,
    Group,
    Item,
    Memory,
    Notice,
    Phrase,
    Step,
    Unread,
)
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD_1 = Example(
    """\
normal Engine start
  method read and do
  when the area round the propeller is clear
  Starter .... ENGAGED
  Oil pressure .... RISING WITHIN 30 s
  Alternator .... ON
""",
    (("limit-without-else", "RISING WITHIN 30 s"),),
)

BAD_2 = Example(
    """\
values
  oil pressure time .... 30 s  unverified

normal Engine start
  when the area round the propeller is clear
  Oil pressure .... ABOVE 25 psi
    Within {oil pressure time} of the start.
  note If it is cold, wait a little longer before taxiing.
""",
    (("limit-without-else", "Within {oil pressure time} of the start."),),
)

GOOD_1 = Example(
    """\
values
  oil pressure time .... 30 s  unverified

normal Engine start
  method read and do
  when the area round the propeller is clear
  Starter .... ENGAGED, 10 s AT MOST
  Oil pressure .... RISING
    Not within {oil pressure time}: Mixture CUT OFF.
  Alternator light .... OUT WITHIN 5 s
  if it stays on
    Alternator .... OFF
  Fuel pressure .... RISING WITHIN 10 s, OTHERWISE STOP
  Engine .... WARM FOR 3 min
  Altimeter .... FIELD ELEVATION, WITHIN 75 ft
""",
)

GOOD_2 = Example(
    """\
emergency Electrical failure
  when all power is lost
  note The bus is back within 20 s; if it is not, it stays off.
  Master switch .... ON, LIGHTS WITHIN 20 s
  repeat until the engine runs
    Starter .... FIRES WITHIN 10 s
  Landing .... WITHIN 30 min
  end
  amplified
    Landing .... WITHIN 30 min
      Otherwise the battery is empty, and with it the radio.
""",
)

_LIMIT = re.compile(
    r"\b(?:within|in less than|in under|no later than|not later than)\s+(?:about\s+)?"
    r"(?:\d+(?:\.\d+)?|a few|two|three|five|ten|fifteen|twenty|thirty|sixty)\s*(?:to\s+\d+\s*)?"
    r"(?:s|secs?|seconds?|min|mins|minutes?)\b"
    r"|(?<=\w )in\s+\d+\s*(?:s|secs?|seconds?)\b",
    re.IGNORECASE,
)
_ELSE = re.compile(r"\b(?:not|no|otherwise|else|if|unless|longer|later|without)\b|n't\b", re.IGNORECASE)
_WORDS = ("in ", "within", "less than", "under", "later than")


def check(subject: Subject) -> Iterator[Finding]:
    limits = [(card, item, phrase) for card, item in subject.lines().items if (phrase := _limit(item)) is not None]
    beside: dict[int, tuple[Step | None, Step | None]] = {}
    for card in {card.key: card for card, _, _ in limits}.values():
        _place(card.steps, None, beside)
    for card, item, phrase in limits:
        if id(item) in beside and not _has_else(card, item, beside[id(item)]):
            yield Finding(
                RULE.name,
                phrase.spot,
                f"`{short(phrase.text)}` sets a limit, and nothing says what to do when it has passed.",
                "Say it below the item, as in `Not within 30 s: Mixture CUT OFF.`, or put an `if` behind it.",
            )


def _limit(item: Item) -> Phrase | None:
    """The text of an item that sets it a limit."""
    for phrase in (item.response, *item.detail):
        if phrase is not None:
            text = phrase.spot.text.lower()
            if any(word in text for word in _WORDS) and _LIMIT.search(phrase.text):
                return phrase
    return None


def _place(steps: Sequence[Step], follows: Step | None, beside: dict[int, tuple[Step | None, Step | None]]) -> None:
    """Note what stands before and behind each item; `follows` is the step behind the last one.

    What is done again, and of several options one, says by itself what follows.
    """
    before: Step | None = None
    for at, step in enumerate(steps):
        behind = steps[at + 1] if at + 1 < len(steps) else follows
        match step:
            case Item():
                beside[id(step)] = (before, behind)
            case Group(steps=inner) | Memory(steps=inner):
                _place(inner, behind, beside)
            case Branch(arms):
                for arm in arms:
                    _place(arm.steps, behind, beside)
            case _:
                pass
        before = step


def _has_else(card: Card, item: Item, beside: Iterable[Step | None]) -> bool:
    """Whether something beside an item, or in what explains it, can say what follows when its time has passed."""
    texts = [phrase.text for phrase in (item.response, *item.detail) if phrase is not None]
    if any(map(_ELSE.search, texts)):
        return True
    for step in beside:
        if isinstance(step, Branch | Unread):
            return True  # also a line that could not be read may well say it
        if isinstance(step, Notice) and _LIMIT.search(step.phrase.text) and _ELSE.search(step.phrase.text):
            return True
    return any(
        _ELSE.search(paragraph.text)
        for part in card.amplified
        if isinstance(part, Explained) and part.item.challenge == item.challenge
        for paragraph in part.paragraphs
    )


RULE = Rule(
    name="limit-without-else",
    severity=Severity.WARNING,
    family="form",
    what=(
        "An item that must come true within a time (`RISING WITHIN 30 s`), where neither its own words, its detail, a "
        "notice beside it that speaks of the time, its amplified text nor an `if` beside it says what to do when the "
        "time has passed. How long something lasts (`FOR 30 s`, `10 s AT MOST`) is no such limit."
    ),
    why="When the time has passed and nothing has happened, a hand hovers over a card that goes on as if it had.",
    source="DOE-STD-1029-92, that a step with a time limit says what to do if the time is missed (read)",
    mend="Say in the detail what is done then, or put an `if` behind the item.",
    bad=(BAD_1, BAD_2),
    good=(GOOD_1, GOOD_2),
    check=check,
    confidence="medium",
)
