"""Something that is to be done again and again, and nothing that says when to stop."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from dotleader.handbook.cards import Kind, Phrase
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.rules.wording.verbs import sentences
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD_1 = Example(
    """\
abnormal Flap failure
  when the flaps do not move
  Flap breaker .... OUT, THEN IN
    Repeat with the next breaker.
  end
""",
    (("endless-loop", "Repeat with the next breaker"),),
)

BAD_3 = Example(
    """\
abnormal Battery low
  when the voltage is low
  repeat until further notice
    Voltmeter .... READ ALOUD
  end
""",
    (("endless-loop", "further notice"),),
)

BAD_2 = Example(
    """\
emergency Electrical failure
  when all electrical power is lost
  Master switch .... OFF AND ON EVERY 30 s
  end
""",
    (("endless-loop", "OFF AND ON EVERY 30 s"),),
)

GOOD = Example(
    """\
emergency Electrical failure
  when all electrical power is lost
  repeat until power returns or the airfield is in sight
    Master switch .... OFF, THEN ON
  Flap breaker .... OUT, THEN IN
    Repeat once. Every breaker that is out stays out.
  Fuel selector .... CHANGED EVERY 30 min UNTIL LANDING
  Passenger .... WATCHES FOR SMOKE
    Call every minute while the battery lasts. Every minute counts.
    Repeat the position to the tower.
  Repeat the first two lines .... UNTIL IT LIGHTS
  Squawk .... REPEATED BACK BY THE TOWER
  end

normal Cruise
  when level
  Fuel selector .... OTHER TANK
    Every half hour.
""",
)

_AGAIN = re.compile(
    r"(?:^|[.;:,]\s+|\b(?:and|then)\s+)(?:"
    r"repeat(?:\s*$|\s+(?:with|this|these|it|both|all|from|for|as|every|steps?|items?|lines?|above|"
    r"(?:the\s+)?(?:\w+\s+)?(?:steps?|items?|lines?|above|procedure|drill|sequence|attempts?|cycle|start|checks?|try))\b)"
    r"|(?:do (?:this|it|that)|start|begin|try) again\s*$)"
    r"|\bevery\s+(?:\{[^}]*\}|\d+|few|half|other|two|three|five|ten|fifteen|thirty|sixty)?\s*"
    r"(?:an?\s+)?(?:s|sec|secs|seconds?|min|mins|minutes?|h|hours?)\b(?!\s+(?:counts|helps|matters))"
    r"|\bevery\s+\{[^}]*\}",
    re.IGNORECASE,
)
_NO_END = re.compile(
    r"further notice|(?:as )?(?:required|necessary|needed)|no longer (?:required|necessary|needed)|done|completed?|"
    r"finished|over|satisfied|ready|(?:asked|told|advised|instructed) otherwise",
    re.IGNORECASE,
)
_ENDS = re.compile(
    r"\b(?:until|till|while|as long as|once|twice|times|at most|no more than|at the latest|down to|up to|for\s+\d|"
    r"as far as|before|unless|if)\b",
    re.IGNORECASE,
)
_WORDS = ("every ", "again", "repeat", "every\n")


def check(subject: Subject) -> Iterator[Finding]:
    lines = subject.lines()
    for _, repeat in lines.repeats:
        if _NO_END.fullmatch(repeat.until.text):
            yield _finding(repeat.until.spot)
    for card, item in lines.items:
        if card.kind is not Kind.NORMAL:
            yield from _in_line([challenge.phrase for challenge in item.challenges], item.response)
            for phrase in item.detail:
                yield from _in_prose(phrase)
    for card, notice in lines.notices:
        if card.kind is not Kind.NORMAL:
            yield from _in_prose(notice.phrase)


def _in_line(challenges: Sequence[Phrase], response: Phrase | None) -> Iterator[Finding]:
    """A challenge and its response are one sentence: `Repeat steps 1 to 3 .... UNTIL IT RUNS`."""
    phrases = challenges if response is None else (*challenges, response)
    again = next((phrase for phrase in phrases if _may_be(phrase) and _AGAIN.search(phrase.spot.text)), None)
    if again is not None and not any(_ENDS.search(phrase.spot.text) for phrase in phrases):
        yield _finding(again.spot)


def _may_be(phrase: Phrase) -> bool:
    text = phrase.spot.text.lower()
    return any(word in text for word in _WORDS)


def _in_prose(phrase: Phrase) -> Iterator[Finding]:
    if not _may_be(phrase):
        return
    for at, sentence in sentences(phrase.spot.text):
        if _AGAIN.search(sentence) and not _ENDS.search(sentence):
            start = phrase.spot.start + at
            yield _finding(Spot(phrase.spot.source, start, start + len(sentence)))


def _finding(spot: Spot) -> Finding:
    return Finding(
        RULE.name,
        spot,
        f"`{short(' '.join(spot.text.split()))}` does not say when to stop.",
        "Put what is repeated below `repeat until` and what ends it; or say how often: `TWICE`, "
        "`EVERY 5 min UNTIL LANDING`.",
    )


RULE = Rule(
    name="endless-loop",
    severity=Severity.WARNING,
    family="form",
    what=(
        "On an emergency or abnormal card, `Repeat` at the head of a sentence or `every` with a time, in an item, its"
        " detail or a notice, with nothing in the sentence that ends it: until, while, once, twice, at most; and a "
        "`repeat until` that names no end (`further notice`). What is done at intervals on a normal card ends with "
        "the phase of flight."
    ),
    why="Whoever repeats a step that does not help, and waits for it to, has no hand and no height left for the next.",
    source="DOE-STD-1029-92, that repeated steps say when to stop (read)",
    mend="Say what ends it, or how often at most.",
    bad=(BAD_1, BAD_2, BAD_3),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
