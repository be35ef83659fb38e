"""A warning that is read when what it warns of has been done."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import assert_never

from dotleader.handbook.cards import (
    Branch,
    Card,
    End,
    GoTo,
    Group,
    Item,
    Memory,
    Notice,
    OneOf,
    Repeat,
    Step,
    Unread,
)
from dotleader.handbook.model import Control
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.rules.wording.verbs import clauses, orders, sentences
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

_CONTROLS = """\
equipment
  Starter .... OFF, ENGAGED
    springs .... ENGAGED to OFF
  Master switch .... OFF, ON
  Flaps .... UP, 40 deg

"""

BAD = Example(
    _CONTROLS
    + """\
normal Engine start
  when clear
  Starter .... ENGAGED
  caution The starter overheats after ten seconds.
  Master switch .... ON
  warning Nobody may stand near the propeller.
""",
    (
        ("notice-late", "The starter overheats after ten seconds."),
        ("notice-late", "Nobody may stand near the propeller."),
    ),
)

GOOD = Example(
    _CONTROLS
    + """\
normal Engine start
  when clear
  warning Nobody may stand near the propeller.
  Master switch .... ON
  caution The starter overheats after ten seconds.
  Starter .... ENGAGED
  warning With the flaps down the aircraft does not climb.
  group Climb
    Throttle .... FULL

emergency Engine fire in flight
  when flames come from the cowling
  memory
    Land .... AT ONCE
  Master switch .... OFF
  note The starter is of no use now.
  if the fire is out
    warning An engine that is started after a fire burns again.
    go to Forced landing
  caution The flaps need the master switch.
  # allow action-in-notice: it is found there, and only there
  caution Open the master switch guard.
  Flaps .... 40 deg
  end

emergency Forced landing
  when no power is left
  Seat belts .... TIGHT
  end
"""
)

_SETTING = re.compile(
    r"\b(?:with|when|while|if|once|until|after|before|without|as|unless)\s+(?:the\s+|a\s+|an\s+|your\s+)?$"
)
"""What makes a name the circumstance of a warning, and not what it is about."""


def check(subject: Subject) -> Iterator[Finding]:
    seen: set[int] = set()
    for card, notice in subject.lines().notices:
        if notice.word != "note" and id(card) not in seen:
            seen.add(id(card))
            yield from _Reading(card, subject.handbook.controls).findings()


class _Reading:
    """One card read in its order: where each control was last touched, and what is still to come."""

    def __init__(self, card: Card, controls: Mapping[str, Control]) -> None:
        self.card = card
        self.controls = controls
        self.notices: list[tuple[Notice, int, bool]] = []  # with its place among the items, and whether one follows
        self.items: list[Item] = []

    def findings(self) -> Iterator[Finding]:
        self._read(self.card.steps, followed=False)
        for notice, place, followed in self.notices:
            if not followed:
                yield self._last(notice)
            else:
                above = self._only_above(notice, place)
                if above is not None and not _is_step(notice):
                    yield self._below(notice, above)

    def _read(self, steps: Sequence[Step], *, followed: bool) -> None:
        """`followed` is whether something is done after all of these steps."""
        for at, step in enumerate(steps):
            match step:
                case Notice(word):
                    if word != "note":
                        self.notices.append((step, len(self.items), _is_followed(steps[at + 1 :], followed)))
                case Item():
                    self.items.append(step)
                case Group(steps=inner) | Memory(steps=inner) | OneOf(steps=inner):
                    self._read(inner, followed=_is_followed(steps[at + 1 :], followed))
                case Repeat(steps=inner):
                    self._read(inner, followed=True)
                case Branch(arms):
                    after = _is_followed(steps[at + 1 :], followed)
                    for arm in arms:
                        self._read(arm.steps, followed=after)
                case GoTo() | End() | Unread():
                    pass
                case _ as never:
                    assert_never(never)

    def _only_above(self, notice: Notice, place: int) -> Item | None:
        """The item above that is for a control which the notice is about; None where one below is, too."""
        text = folded(notice.phrase.text)
        below = {key for item in self.items[place:] for key in _controls(item)}
        found: Item | None = None
        for item in reversed(self.items[:place]):
            for key in _controls(item):
                name = self.controls[key].name
                spoken = _spoken_of(text, folded(name))
                if spoken is not None and key in below:
                    return None
                if spoken and found is None:
                    found = item
        if found is None or any(_spoken_of(text, folded(self.controls[key].name)) is not None for key in below):
            return None
        return found

    def _last(self, notice: Notice) -> Finding:
        return Finding(
            RULE.name,
            notice.phrase.spot,
            f"No step comes after this {notice.word}, which ends what is done here.",
            "Put it above the step that it is about; what is only worth knowing is a `note`.",
            (Related(self.card.spot, f"`{short(self.card.title)}` is the card."),),
        )

    def _below(self, notice: Notice, item: Item) -> Finding:
        return Finding(
            RULE.name,
            notice.phrase.spot,
            f"This {notice.word} stands below `{short(item.challenge)}`, which it is about.",
            f"Put it on the line above `{short(item.challenge)}`.",
            (Related(item.spot, "The step is done here, before the words are read."),),
        )


def _is_step(notice: Notice) -> bool:
    """Whether a notice says what to do: that is a finding of its own, and an item has to be made of it anyway."""
    return any(orders(part) for _, sentence in sentences(notice.phrase.spot.text) for part in clauses(sentence))


def _controls(item: Item) -> Iterator[str]:
    return (challenge.control for challenge in item.challenges if challenge.control)


def _spoken_of(text: str, name: str) -> bool | None:
    """Whether a text is about what has that name; None where it is not in it, False where it is a circumstance."""
    found = re.search(rf"\b{re.escape(name)}\b", text) if name in text else None
    return None if found is None else _SETTING.search(text[: found.start()]) is None


def _is_followed(rest: Sequence[Step], followed: bool) -> bool:
    """Whether something is done after a place: an item in the rest of its block, or another card."""
    for step in rest:
        match step:
            case Item() | GoTo() | Unread():
                return True
            case Group(steps=inner) | Memory(steps=inner) | OneOf(steps=inner) | Repeat(steps=inner):
                if _is_followed(inner, False):
                    return True
            case Branch(arms):
                if any(_is_followed(arm.steps, False) for arm in arms):
                    return True
            case End():
                return False
            case Notice():
                pass
            case _ as never:
                assert_never(never)
    return followed


RULE = Rule(
    name="notice-late",
    severity=Severity.WARNING,
    family="safety",
    what=(
        "A caution or a warning after which nothing is done any more, or one about a control whose item stands only "
        "above it. A control that is the circumstance (`With the flaps down ...`) is not what it is about. A `go to` "
        "counts as a step, and a note may stand anywhere."
    ),
    why=(
        "Whoever reads and does line by line reads a warning below its step too late; FAA SAFO 17006 tells of a list "
        "that had dropped a caution, and of a landing gear that collapsed."
    ),
    source=(
        "Manual guidance for continuing airworthiness, warnings and cautions before the text they bear on (read in a "
        "reprint); NUREG-0899 on the same (from memory)"
    ),
    mend="Put it on the line above its step. A remark on what was done is a `note`, or the detail of its item.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
