"""How a step is named in a message, and where a finding of it is marked."""

from __future__ import annotations

from typing import assert_never

from dotleader.handbook.cards import Branch, End, GoTo, Group, Item, Memory, Notice, OneOf, Repeat, Step, Unread
from dotleader.source.text import Spot

_LONGEST = 50


def short(text: str) -> str:
    """A text that a message can hold."""
    return text if len(text) <= _LONGEST else text[: _LONGEST - 1].rstrip() + "…"


def name_of(step: Step) -> str:
    """What a reader knows a step by: a challenge, or the words of its line."""
    match step:
        case Item():
            return short(step.challenge)
        case Notice(word, phrase):
            return short(f"{word} {phrase.written}")
        case Group(title):
            return short(f"group {title.written}")
        case Memory():
            return "memory"
        case Branch(arms):
            condition = arms[0].condition
            return short(f"{arms[0].word} {condition.written}" if condition else arms[0].word)
        case OneOf():
            return "one of"
        case Repeat(until):
            return short(f"repeat until {until.written}")
        case GoTo(title):
            return short(f"go to {title}")
        case End():
            return "end"
        case Unread(phrase):
            return short(phrase.written)
        case _ as never:
            assert_never(never)


def place_of(step: Step) -> Spot:
    """The line of a step; of a branch the line that opens it."""
    return step.arms[0].spot if isinstance(step, Branch) else step.spot
