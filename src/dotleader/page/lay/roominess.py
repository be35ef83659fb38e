"""Whether a card stays on one face for certain, told without laying it out.

Most cards of most books are far from the limit. A lint asks this first and lays out only what may not fit. Every
measure here is on the safe side of the layout's own: a card of which this says yes is never continued (a property
test holds the two against each other); of one of which it says no nothing is known.
"""

from __future__ import annotations

from collections.abc import Sequence

from dotleader.handbook.cards import (
    Arm,
    Branch,
    Card,
    End,
    GoTo,
    Group,
    Item,
    Memory,
    Notice,
    OneOf,
    Phrase,
    Repeat,
    Step,
    Unread,
)
from dotleader.page.drawn import Font
from dotleader.page.laid import Frame
from dotleader.page.lay.measures import PITCHES, SLOT, TITLE, TRIGGER, grown, smallest_in
from dotleader.page.type.metrics import width

_RESPONSE, _CHALLENGE, _TEXT = 43, 37, 84
"""Per cent of the frame's width that responses, challenges and other texts have at least at the first level."""

_DEEPER = 6
"""And by how much less a level deeper: two levels of branches are all that a card has."""

_AROUND = {
    Group: 2.4, Memory: 2.0, OneOf: 2.0, Repeat: 3.0, Branch: 0.6, Notice: 1.2, Unread: 1.2, GoTo: 1.6, End: 1.4,
    Item: 0.4,
}  # fmt: skip
"""Lines that a step takes besides those of its text and of what stands below it."""

_COMPLETION = 2.4

_GENEROUS = 1.25
"""By how much the measures of steps are too large: on the example's cards they ask for 1.4 to 2.2 times as much."""

_SLOT = SLOT / PITCHES[-1]
"""Height of a line of text, in pitches."""


def surely_fits(card: Card, frame: Frame) -> bool:
    """Whether the card fits on one face at the smallest type size, beyond doubt."""
    size = smallest_in(frame)
    pitch = PITCHES[-1] * size * 254 // 720_000
    return needed(card, frame, size) * pitch <= frame.bottom - frame.top


def needed(card: Card, frame: Frame, size: int) -> float:
    """Lines that a card takes at a size, at most."""
    when = f"When {card.when.text}" if card.when else ""
    title, trigger = grown(TITLE, size), grown(TRIGGER, size)
    head = _SLOT * title / size * _lines(card.title, Font.BOLD, title, frame.width)
    head += _SLOT * trigger / size * _lines(when, Font.BOLD, trigger, frame.width)
    return head + _COMPLETION + _Room(frame, size).all(card.steps) / _GENEROUS


def _lines(text: str, font: Font, size: int, room: int) -> int:
    """Lines of a text that is broken wherever a line is full; one more where there are several, as the layout breaks
    by sense."""
    if width(text, font, size) <= room:
        return 1
    space = width(" ", font, size)
    lines, at = 1, 0
    for word in text.split():
        length = width(word, font, size)
        if at and at + space + length > room:
            lines, at = lines + 1, 0
        lines += 2 * (length // room)  # a word longer than a line is broken, too
        at += length + (space if at else 0)
    return lines + 1


class _Room:
    """What a level leaves at a size: `frame` less what stands left of it."""

    def __init__(self, frame: Frame, size: int, depth: int = 0) -> None:
        self.frame, self.size, self.depth = frame, size, depth

    def deeper(self) -> _Room:
        return _Room(self.frame, self.size, self.depth + 1)

    def lines(self, text: str, share: int, font: Font = Font.BOLD) -> int:
        return _lines(text, font, self.size, self.frame.width * (share - _DEEPER * self.depth) // 100)

    def phrase(self, phrase: Phrase | None) -> int:
        return self.lines(phrase.text, _TEXT) if phrase is not None else 0

    def all(self, steps: Sequence[Step]) -> float:
        return sum(self.height(step) for step in steps)

    def height(self, step: Step) -> float:
        """Lines that a step takes, at most."""
        own = _AROUND[type(step)]
        match step:
            case Item():
                return own + self.item(step)
            case Unread(phrase, _):
                return own + 1.1 * self.lines(f"Not understood: {phrase.text}", _TEXT - 25)
            case Notice(_, phrase, _):
                return own + 1.1 * self.lines(phrase.text, _TEXT - 25)
            case Group(title, steps, _):
                return own + 1.2 * self.phrase(title) + self.all(steps)
            case Repeat(until, steps, _):
                return own + self.phrase(until) + self.deeper().all(steps)
            case OneOf(steps, _):
                return own + self.deeper().all(steps)
            case Memory(steps, _):
                return own + self.all(steps)
            case Branch(arms, _):
                return own + sum(self.arm(arm) for arm in arms)
            case GoTo(title, _, _):
                return own + self.lines(title, _TEXT - 35)
            case End():
                return own

    def arm(self, arm: Arm) -> float:
        # `otherwise` may repeat the condition of the arm before it.
        condition = self.phrase(arm.condition) if arm.condition is not None else 3
        return 1.4 + condition + self.deeper().all(arm.steps)

    def item(self, item: Item) -> float:
        challenge = self.lines(item.challenge, _CHALLENGE, Font.REGULAR)
        response = self.lines(item.response.text, _RESPONSE) if item.response else 1
        details = sum(self.lines(phrase.text, _TEXT - 5, Font.REGULAR) for phrase in item.detail)
        return max(challenge, response) + len(item.only) + details
