"""A card to its outline: numbering, levels, how branches end, and where a page may be turned."""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from dotleader.handbook.cards import (
    Arm,
    Branch,
    Card,
    End,
    GoTo,
    Group,
    Item,
    Kind,
    Memory,
    Notice,
    OneOf,
    Phrase,
    Repeat,
    Step,
    Unread,
    is_gate,
)
from dotleader.page.drawn import Font
from dotleader.page.lay.endings import ending_of
from dotleader.page.lay.openings import openings
from dotleader.page.lay.outline import (
    Completion,
    Condition,
    Ending,
    Gate,
    Heading,
    Hold,
    ItemLine,
    Leave,
    MemoryBox,
    MemoryEdge,
    NoticeLine,
    Outline,
    Part,
    Rail,
    Sign,
    What,
)
from dotleader.page.type.words import Words, followed, joined_words, plain_words, word, words_of

# fmt: off
PLACING = frozenset((
    "above", "after", "at", "before", "below", "beyond", "between", "by", "during", "in", "inside", "on", "over",
    "under", "with", "within", "without",
))
# fmt: on
"""A gate's condition that begins with one of these stands by itself (`Below 1,000 ft`), any other after `If`."""

_UNREAD = "Not understood:"


def outline_of(card: Card, symbols: frozenset[str]) -> Outline:
    writer = _Writer(symbols)
    writer.steps(card.steps, 0)
    if card.kind is Kind.NORMAL:
        said = completion(card.title)
        writer.keep = True
        writer.add(Completion(plain_words(said, Font.BOLD)), 0, Hold.STEP, said)
    return Outline(tuple(writer.parts), tuple(writer.rails), tuple(writer.boxes), writer.number, writer.depth)


def completion(title: str) -> str:
    """The line that ends a normal card (CR-177549, A(6)): its own name, and `checklist` only once."""
    if not title:
        return "Checklist complete"
    return f"{title} complete" if "checklist" in title.casefold().split() else f"{title} checklist complete"


class _Writer:
    def __init__(self, symbols: frozenset[str]) -> None:
        self.symbols = symbols
        self.parts: list[Part] = []
        self.rails: list[Rail] = []
        self.boxes: list[MemoryBox] = []
        self.number = 0
        self.depth = 0
        self.block = 0
        self.boxed = False
        self.keep = False  # the next part stays with the one before it

    def add(self, what: What, level: int, hold: int, *says: str) -> None:
        if self.boxed:
            hold = Hold.MEMORY
        elif self.keep:
            hold = Hold.KEEP
        else:
            hold += level * Hold.LEVEL
        self.keep = isinstance(what, Condition | Heading | NoticeLine)
        self.depth = max(self.depth, level)
        indent = "  " * (level + self.boxed)
        self.parts.append(Part(what, level, hold, self.boxed, tuple(indent + line for line in says)))

    def phrase(self, phrase: Phrase, font: Font) -> Words:
        return words_of(phrase, font, self.symbols)

    def counted(self) -> str:
        self.number += 1
        return str(self.number)

    def steps(self, steps: Sequence[Step], level: int, choice: bool = False, inside: bool = False) -> None:
        """The steps of one container; each of them an alternative where `choice`."""
        self.block += 1
        at = 0
        while at < len(steps):
            step = steps[at]
            if isinstance(step, Item):
                end = at + 1
                while end < len(steps) and isinstance(steps[end], Item):
                    end += 1
                self.run([item for item in steps[at:end] if isinstance(item, Item)], level, choice)
                at = end
                continue
            if isinstance(step, Branch) and is_gate(step) and self.after_memory():
                self.gate(step.arms[0], level)
            else:
                self.step(step, level, choice, inside)
            at += 1

    def step(self, step: Step, level: int, choice: bool, inside: bool) -> None:
        match step:
            case Item():
                self.item(step, level, choice, False)
            case Notice():
                words = self.phrase(step.phrase, Font.REGULAR)
                self.add(NoticeLine(step.word, words), level, Hold.STEP, f"{step.word}: {step.phrase.text}")
            case Group():
                heading = Heading(self.phrase(step.title, Font.BOLD), choice)
                self.add(heading, level, Hold.GROUP, step.title.text)
                self.steps(step.steps, level, inside=inside)
                self.block += 1
            case Memory():
                self.memory(step, level, inside)
            case Branch():
                self.branch(step, level, choice)
            case OneOf():
                self.one_of(step, level, choice)
            case Repeat():
                self.repeat(step, level, choice)
            case GoTo():
                self.keep = inside or self.keep
                leave = Leave(plain_words(step.title, Font.BOLD, self.symbols), step.target, inside, choice)
                self.add(leave, level, Hold.STEP, f"go to {step.title}")
            case End():
                self.keep = True
                self.add(Sign(plain_words("END", Font.BOLD)), level, Hold.STEP, "END")
            case Unread():
                said = f"{_UNREAD} {step.phrase.text}"
                words = plain_words(_UNREAD, Font.BOLD) + self.phrase(step.phrase, Font.REGULAR)
                self.add(NoticeLine("note", words), level, Hold.STEP, said)
            case _:
                assert_never(step)

    def run(self, items: Sequence[Item], level: int, choice: bool) -> None:
        opened = frozenset[int]() if choice else openings(items)
        for at, item in enumerate(items):
            self.item(item, level, choice, at in opened)

    def item(self, item: Item, level: int, choice: bool, opened: bool) -> None:
        number = "" if choice else self.counted()
        fitted = _fitted(item.only)
        line = ItemLine(
            number,
            choice,
            plain_words(fitted, Font.REGULAR),
            joined_words((one.phrase for one in item.challenges), Font.REGULAR, self.symbols),
            self.phrase(item.response, Font.BOLD) if item.response else (),
            tuple(self.phrase(one, Font.REGULAR) for one in item.detail),
            item.critical,
            opened,
            self.block,
        )
        said = " ".join((number, item.challenge, "____" if item.critical else "....")).strip()
        said = f"{said} {item.response.text if item.response else ''}"
        details = (f"  {one.text}" for one in item.detail)
        hold = Hold.OPENED if opened else Hold.STEP
        self.add(line, level, hold, f"[{fitted}] {said}" if fitted else said, *details)

    def memory(self, memory: Memory, level: int, inside: bool) -> None:
        if self.boxed:  # a box in a box says nothing more
            self.steps(memory.steps, level, inside=inside)
            return
        first = len(self.parts)
        self.add(MemoryEdge.TOP, level, Hold.STEP, "MEMORY ITEMS")
        self.boxed = True
        self.steps(memory.steps, level, inside=inside)
        self.add(MemoryEdge.FOOT, level, Hold.STEP)
        self.boxed = False
        self.boxes.append(MemoryBox(first, len(self.parts) - 1, level))
        self.block += 1

    def after_memory(self) -> bool:
        """Whether a gate may stand here: after the memory items of a card, or after a gate that does."""
        last = self.parts[-1] if self.parts else None
        return last is not None and not last.level and (last.what is MemoryEdge.FOOT or isinstance(last.what, Gate))

    def gate(self, arm: Arm, level: int) -> None:
        leave = arm.steps[0]
        assert isinstance(leave, GoTo)
        text = arm.condition.text if arm.condition else ""
        words = self.phrase(arm.condition, Font.BOLD) if arm.condition else ()
        if words and words[0].text.casefold() in PLACING:
            words = _capital(words)
        else:
            words = plain_words("If", Font.BOLD) + words
        self.keep = True
        gate = Gate(words, plain_words(leave.title, Font.BOLD, self.symbols), leave.target)
        self.add(gate, level, Hold.STEP, f"if {text}: go to {leave.title}")

    def branch(self, branch: Branch, level: int, choice: bool) -> None:
        nested = False
        for at, arm in enumerate(branch.arms):
            words, said = self.condition(branch.arms[:at], arm, nested)
            head = len(self.parts)
            self.add(Condition(words, "", choice and not at), level, Hold.BRANCH, said)
            self.steps(arm.steps, level + 1, inside=True)
            self.rail(head, level, ending_of(arm.steps), words)
            nested = nested or any(isinstance(step, Branch) for step in arm.steps)
        self.block += 1

    def condition(self, before: Sequence[Arm], arm: Arm, nested: bool) -> tuple[Words, str]:
        """The line that opens an arm. An `otherwise` after a nested branch says to which condition it belongs."""
        opening = plain_words(arm.word.capitalize(), Font.BOLD)
        if arm.condition is not None:
            said = f"{arm.word.capitalize()} {arm.condition.text}"
            return opening + self.phrase(arm.condition, Font.BOLD), said
        if not nested:
            return opening, arm.word.capitalize()
        others = [other.condition for other in before if other.condition]
        said = f"{arm.word.capitalize()} ({', '.join(f'NOT if {other.text}' for other in others)})"
        for at, other in enumerate(others):
            lead = plain_words("NOT if" if at else "(NOT if", Font.BOLD)
            last = at == len(others) - 1
            opening += followed(lead + self.phrase(other, Font.BOLD), ")" if last else ",")
        return opening, said

    def one_of(self, choices: OneOf, level: int, choice: bool) -> None:
        words = plain_words("One of these", Font.BOLD)
        number = self.counted()
        self.add(Condition(words, number, choice), level, Hold.BRANCH, f"{number} One of these")
        self.steps(choices.steps, level + 1, choice=True)
        self.block += 1

    def repeat(self, repeat: Repeat, level: int, choice: bool) -> None:
        words = plain_words("Until", Font.BOLD) + self.phrase(repeat.until, Font.BOLD)
        head, first = len(self.parts), self.number + 1
        self.add(Condition(words, "", choice), level, Hold.BRANCH, f"Until {repeat.until.text}")
        self.steps(repeat.steps, level + 1, inside=True)
        said = f"REPEAT from {first}" if self.number >= first else "REPEAT"
        self.keep = True
        self.add(Sign(plain_words(said, Font.BOLD)), level + 1, Hold.STEP, said)
        self.rail(head, level, Ending.BACK, words)
        self.block += 1

    def rail(self, head: int, level: int, ending: Ending, words: Words) -> None:
        last = len(self.parts) - 1
        if last > head:
            self.rails.append(Rail(head, last, level, ending, words))


def _fitted(only: Sequence[tuple[str, str]]) -> str:
    said = "; ".join(f"if fitted: {name}" if word == "with" else f"without {name}" for word, name in only)
    return said[:1].upper() + said[1:]


def _capital(words: Words) -> Words:
    if not words or len(words[0].pieces) > 1 or not words[0].text:
        return words
    first = words[0].text
    return (word(first[0].upper() + first[1:], words[0].font), *words[1:])
