"""An action that is read before the condition that it stands under."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Explained, Item, Kind, Phrase
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.rules.wording.verbs import OF_FLYING, clauses, first_word, orders, sentences
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
emergency Engine failure after takeoff
  when power is lost below 700 ft
  Flaps UP if the field is long .... DONE
  Magnetos .... LEFT, RIGHT, BOTH
    Stay on one magneto if it runs better.
    Lower flaps if the field is made.
  note Land straight ahead unless there is height for a turn.
  Land .... AT ONCE, if smoke is left
  Squawk .... 7700 UNLESS TOLD OTHERWISE
  end
""",
    (
        ("condition-after-action", "Flaps UP if the field is long"),
        ("condition-after-action", "Stay on one magneto if it runs better"),
        ("condition-after-action", "Lower flaps if the field is made"),
        ("condition-after-action", "Land straight ahead unless there is height for a turn"),
        ("condition-after-action", "AT ONCE, if smoke is left"),
        ("condition-after-action", "7700 UNLESS TOLD OTHERWISE"),
    ),
)

GOOD = Example(
    """\
equipment
  Pitot heat .... OFF, ON

emergency Engine failure after takeoff
  when power is lost below 700 ft
  Pitot heat .... ON if in visible moisture, otherwise OFF
  Flaps, if fitted .... UP
  Door .... OPEN IF ABLE
  Window .... OPEN IF WARM, OTHERWISE SHUT
  Magnetos .... LEFT, RIGHT, BOTH
    If it runs better on one magneto, stay on it.
    Turn back to BOTH when it has been tried. Call the tower if possible.
    See if the tail is free. Fly on even if it shakes.
  note It shakes if the mixture is lean. Turn radius grows if the wind is behind.
  note Do not restart the engine if fuel was smelt. Keep clear of it if it burns.
  note Use of the primer helps if it is cold. Take care if the ground is soft.
  end
""",
)

_IF = re.compile(
    r"\s(?<!\beven\s)(?<!\bas\s)(?<!\bsee\s)(?<!\bcheck\s)(?<!\bfeel\s)(?<!\bask\s)(?<!\btell\s)(?<!\blook\s)"
    r"(?:if|unless)\s+"
    r"(?!(?:possible|necessary|needed|required|fitted|installed|carried|available|any|able|so|in doubt|need be|used"
    r"|open|aboard|on board|equipped)\b)",
    re.IGNORECASE,
)
_OTHERWISE = re.compile(r"[,;]\s*otherwise\b", re.IGNORECASE)
_IDIOM = re.compile(r"(?:of|care|clear|away)\b", re.IGNORECASE)  # `Keep clear` is what not to do, `Use of` no verb


def check(subject: Subject) -> Iterator[Finding]:
    lines = subject.lines()
    for card, item in lines.items:
        yield from _in_item(item)
        if card.kind is not Kind.NORMAL and item.response is not None and _is_late(item):
            yield _finding(item.response.spot)
    for _, notice in lines.notices:
        yield from _in_prose(notice.phrase, is_notice=True)
    for card in subject.handbook.cards:
        for part in card.amplified:
            for phrase in part.paragraphs if isinstance(part, Explained) else (part,):
                yield from _in_prose(phrase, is_notice=False)


def _in_item(item: Item) -> Iterator[Finding]:
    for challenge in item.challenges:
        if not challenge.control and not challenge.gauge and _IF.search(challenge.phrase.text):
            yield _finding(challenge.phrase.spot)
    for phrase in item.detail:
        yield from _in_prose(phrase, is_notice=False)


def _is_late(item: Item) -> bool:
    """Whether a response says for its end when it holds. That of a control is the language's own, and printed so."""
    text = item.response.text if item.response is not None else ""
    named = any(challenge.control or challenge.gauge for challenge in item.challenges)
    return not named and _IF.search(text) is not None and _OTHERWISE.search(text) is None


def _in_prose(phrase: Phrase, *, is_notice: bool) -> Iterator[Finding]:
    text = phrase.spot.text
    if _IF.search(text) is None:
        return
    for at, sentence in sentences(text):
        for clause in clauses(sentence):
            if not _IF.search(clause):
                continue
            ordered = orders(clause)
            verb, rest = first_word(clause)
            flown = not ordered and verb in OF_FLYING and _IDIOM.match(rest) is None
            if (ordered and not is_notice) or flown:
                start = phrase.spot.start + at
                yield _finding(Spot(phrase.spot.source, start, start + len(sentence)))
                break  # an action in a notice is found as one


def _finding(spot: Spot) -> Finding:
    return Finding(
        RULE.name,
        spot,
        f"`{short(' '.join(spot.text.split()))}` says what to do before it says in which case.",
        "Put the condition first: `if ...` on a line above, or at the head of the sentence.",
    )


RULE = Rule(
    name="condition-after-action",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A challenge with an `if` or `unless` behind its first words; on an emergency or abnormal card such a "
        "response to what is no control and no gauge; or a sentence in a detail, a notice or amplified text that "
        "begins with what to do and ends with `if` or `unless`. The response `ON if ..., otherwise OFF` is the "
        "language's own and none; nor is an option (`if fitted`, `if possible`), nor what is not to be done."
    ),
    why="Whoever reads and does line by line has done it before the condition is read.",
    source=(
        "NUREG-0899 and DOE-STD-1029-92, that the condition stands first and the action behind it (from memory; the "
        "titles read)"
    ),
    mend="Begin with the condition. What hangs together stands below an `if` of its own.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
