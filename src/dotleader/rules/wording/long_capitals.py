"""A long text in capitals."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Explained, Phrase
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
emergency Engine fire in flight
  when flames come from the cowling
  Mixture .... CUT OFF
  warning NEVER START THE ENGINE AGAIN AFTER A FIRE.
  Magnetos .... OFF
    They stay off. AN ENGINE THAT IS STARTED AGAIN WILL BURN AGAIN.
  end
""",
    (
        ("long-capitals", "NEVER START THE ENGINE AGAIN AFTER A FIRE"),
        ("long-capitals", "AN ENGINE THAT IS STARTED AGAIN WILL BURN AGAIN"),
    ),
)

GOOD = Example(
    """\
normal Before takeoff
  when holding short of the runway
  FLIGHT CONTROLS AND TRIM OF THE RIGHT SEAT TOO .... FULL AND FREE IN BOTH DIRECTIONS WITH THE STICK
  warning NEVER take off with the canopy open.
  note VFE, VNO, VNE, VA, VS0, VS1 and VREF are on the placard.
  note The placard says "NO SMOKING, NO AEROBATICS, NO SPINS IN THIS AIRCRAFT".
  Radio .... ON
    Say MAYDAY MAYDAY MAYDAY, the callsign, the position.
    QNH, QFE, VHF, UHF, ILS, VOR, DME and NDB are not used here.
""",
)

_RUN = re.compile(r"\b[A-Z][A-Z'’-]*\b(?:[,;]?\s+(?:\d[\d.,]*|\{[^{}]*\}|[A-Z][A-Z'’-]*)(?![\w]))+")
_WORD = re.compile(r"[A-Z][A-Z'’-]*")
_QUOTED = re.compile('["“„«][^"”“»]*["”“»]')
_VOWEL = re.compile(r"[AEIOUY]")
_FEW = 3  # what is long must have as many words of four letters that can be spoken, or it is a row of abbreviations


def check(subject: Subject) -> Iterator[Finding]:
    most = subject.limits["long-capitals"]
    for phrase in _prose(subject):
        text = phrase.spot.text
        if text.islower():
            continue
        for found in _RUN.finditer(text):
            words = _WORD.findall(re.sub(r"\{[^{}]*\}", "", found[0]))
            if len(words) > most and _is_text(words) and not _quoted(text, found.start()):
                start = phrase.spot.start + found.start()
                yield Finding(
                    RULE.name,
                    Spot(phrase.spot.source, start, start + len(found[0])),
                    f"`{short(' '.join(found[0].split()))}` is a text of {len(words)} words in capitals.",
                    "Write it in small letters, and at most the one word in capitals that must not be missed.",
                )


def _is_text(words: list[str]) -> bool:
    return sum(len(word) > 3 and _VOWEL.search(word) is not None for word in words) >= _FEW


def _quoted(text: str, at: int) -> bool:
    return any(quoted.start() < at < quoted.end() for quoted in _QUOTED.finditer(text))


def _prose(subject: Subject) -> Iterator[Phrase]:
    lines = subject.lines()
    for _, item in lines.items:
        yield from item.detail
    for _, notice in lines.notices:
        yield notice.phrase
    for card in subject.handbook.cards:
        for part in card.amplified:
            yield from part.paragraphs if isinstance(part, Explained) else (part,)
    for essay in subject.handbook.essays:
        yield from essay.paragraphs


RULE = Rule(
    name="long-capitals",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "More than six words in capitals in a row in a notice, a detail or in prose. Challenges and responses may "
        "stand in capitals, and so may what is quoted from a placard and a row of abbreviations."
    ),
    why="Words in capitals all have the one shape of a box, and are read letter by letter.",
    source="NASA CR-177605 (Degani, 1992) section 6, recommendation 4, long text in lower case (read in a reprint)",
    mend="Write it in small letters; `warning` and `caution` are printed so that they stand out by themselves.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
