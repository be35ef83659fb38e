"""What is an instruction in a text: a sentence that begins with the verb of an action (common practice, no source).

The lists are short on purpose. A word that is a noun as often as a verb counts only with an object behind it
(`Lock the canopy`, but not `Lock pins`).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

_SURE = """
    apply connect declare disarm disengage engage enrich extend insert reduce remove retract select squawk tighten
    transmit unlatch unlock
"""
_ALSO_OTHER = """
    adjust advance arm call check close confirm cut disconnect drain ensure feather fit hold increase jettison latch
    lean lift lock lower move open prime press pull push raise release replace reset set shut start stop switch trim
    turn verify
"""
_OF_FLYING = """
    abandon bring climb continue descend dip divert evacuate fly go keep land leave let maintain make put return stay
    steer take taxi try use wait
"""
SURE = frozenset(_SURE.split())
"""Verbs that are nothing else, so that any word behind them is their object."""
MOVES = SURE | frozenset(_ALSO_OTHER.split())
LOOKS = frozenset({"check", "confirm", "ensure", "verify"})
"""Verbs that take a list of things: `Check doors and lock pins`."""
OF_FLYING = frozenset(_OF_FLYING.split())
"""How the aircraft is flown or handled, which a notice may well say."""

_OBJECT = re.compile(
    r"(?:the|an?|all|both|your|it|them|each|every|this|that|these)\b|\{|\d",
    re.IGNORECASE,
)
_TURNED = frozenset({"switch", "turn", "shut", "cut", "pull", "push"})
_PARTICLE = re.compile(r"(?:on|in|off|out|down|up)\b", re.IGNORECASE)
_NO_OBJECT = re.compile(r"(?:of|in|is|are|was|has|takes|and|or)\b|$", re.IGNORECASE)
_THINGS = r"power|speed|airspeed|throttle|mixture|fuel|engine|master|magnetos|ignition|propeller|brakes?|flaps?|gear"
_BARE = {
    **dict.fromkeys(("advance", "close", "cut", "increase", "open", "pull", "push", "raise", "release", "reset",
                     "shut", "feather"), re.compile(rf"(?:{_THINGS})\b", re.IGNORECASE)),
    "lower": re.compile(r"(?:flaps?|gear|nose)\b", re.IGNORECASE),
    "set": re.compile(r"(?:throttle|flaps?|power|mixture|trim)\b", re.IGNORECASE),
    "adjust": re.compile(r"(?:throttle|power|mixture|trim|speed)\b", re.IGNORECASE),
    "start": re.compile(r"engine\b", re.IGNORECASE),
    "stop": re.compile(r"engine\b", re.IGNORECASE),
}  # fmt: skip
"""What may stand behind a verb without an article. `Lower power`, `Start fuel` are something else."""
_AT_ONCE = re.compile(r"(?:immediately|at once|now|without delay|as soon as)\b", re.IGNORECASE)
_SENTENCE = re.compile(r"(?:[^.;!?]|[.;!?](?=\S))+")
_LEAD = re.compile(
    r"(?:if|when|before|after|at|in|on|with|to|once|below|above|then|as soon as|for|while|until)\b"
    r"[^,:]*,\s*(?:then\s+)?",
    re.IGNORECASE,
)
_WORD = re.compile(r"[A-Za-z]+")
_URGED = re.compile(
    r"(?:(?:you|the pilot|pilots?)\s+(?:must|should|shall|have to|need to)\s+"
    r"|(?:always|immediately|now|first|then|next|please|quickly|slowly|gently|carefully),?\s+)+",
    re.IGNORECASE,
)
_MANUAL = re.compile(r"\b(?:manual|handbook|book|card|section|page|chapter|chart|table|supplement)s?\b", re.IGNORECASE)


def sentences(text: str) -> Iterator[tuple[int, str]]:
    """The sentences of a text with the offset of each, without the spaces around them."""
    for found in _SENTENCE.finditer(text):
        sentence = found[0].strip()
        if sentence:
            yield found.start() + len(found[0]) - len(found[0].lstrip()), sentence


def clauses(sentence: str) -> Iterator[str]:
    """What may begin with an instruction: the sentence, what follows its leading condition, what follows a colon."""
    for part in sentence.split(": "):
        yield part.strip()
        lead = _LEAD.match(part)
        if lead is not None:
            yield part[lead.end() :]


def first_word(text: str) -> tuple[str, str]:
    """The first word of a text in small letters, and what follows it."""
    found = _WORD.match(text)
    return (found[0].lower(), text[found.end() :].lstrip()) if found else ("", text)


def orders(text: str) -> bool:
    """Whether a clause begins with the verb of an action that has an object: `Close the valve`, `Reduce power`."""
    urged = _URGED.match(text)
    verb, rest = first_word(text[urged.end() :] if urged else text)
    if verb not in MOVES:
        return (verb == "land" and _AT_ONCE.match(rest) is not None) or (verb == "make" and rest.startswith("sure"))
    if verb in LOOKS and _MANUAL.search(rest):
        return False  # `Check the manual of the engine` sends to a book
    if _OBJECT.match(rest) is not None or (verb in _TURNED and _PARTICLE.match(rest) is not None):
        return True
    if verb in SURE:
        return _NO_OBJECT.match(rest) is None
    bare = _BARE.get(verb)
    return bare is not None and bare.match(rest) is not None
