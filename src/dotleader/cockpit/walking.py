"""The steps of a card done in turn, from all the states in which it can begin at once.

States that have become equal are one from there on, so that branches share what follows them. Of each state it is
kept how it came to be, by the first way that led there.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeAlias, assert_never

from dotleader.cockpit.moving import Outcome, outcomes
from dotleader.cockpit.state import MOST_STATES, MOST_WAYS, Cockpit, State
from dotleader.handbook.cards import (
    Arm,
    Branch,
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
from dotleader.source.record import record
from dotleader.source.text import Spot


@record
class Origin:
    """How a state came to be: the phase, the card and the item after which a card was called for.

    `card` is `""` at the beginning of a phase; `came_by` is the `go to` that led to this card, with where that began.
    """

    phase: str = ""
    card: str = ""
    item: Item | None = None
    came_by: tuple[GoTo, str, Origin] | None = None

    @property
    def only_begun(self) -> bool:
        """Whether a state is at hand only where a phase has begun and nothing of it has been done."""
        return self.item is None and self.came_by is None and bool(self.phase)


States: TypeAlias = dict[State, Origin]
"""States, each with how the first way came there."""

Seen: TypeAlias = Callable[[Item, State, Origin, list[Outcome]], None]


class Walk:
    """Goes through the steps of one card. `leaps` are the states that leave by a `go to`, `ends` those that `end`.

    `seen` is told every item with each state in which it is met; `after_item` all states after each item.
    """

    def __init__(self, cockpit: Cockpit, seen: Seen, after_item: Callable[[Item, States], None] | None = None) -> None:
        self.cockpit, self.seen, self.after_item = cockpit, seen, after_item
        self.leaps: list[tuple[GoTo, States]] = []
        self.ends: States = {}
        self.full: list[Spot] = []

    def steps(self, steps: Iterable[Step], states: States) -> States:
        """The states that come out below."""
        for step in steps:
            if not states:
                break
            states = self.step(step, states)
            if len(states) > MOST_STATES:
                self.full.append(step.spot)
                states = dict(list(states.items())[:MOST_STATES])
        return states

    def step(self, step: Step, states: States) -> States:
        match step:
            case Item():
                return self._item(step, states)
            case Notice() | Unread():
                return states
            case Group(steps=inner) | Memory(steps=inner):
                return self.steps(inner, states)
            case Repeat():
                return self._repeated(step, states)
            case OneOf(inner):
                ways = [self.step(one, states) for one in inner if not isinstance(one, Notice | Unread)]
                return joined(ways) if ways else states
            case Branch(arms):
                return self._branch(arms, states)
            case GoTo():
                self.leaps.append((step, states))
                return {}
            case End():
                self.ends = joined((self.ends, states))
                return {}
            case _ as never:
                assert_never(never)

    def _item(self, item: Item, states: States) -> States:
        reached: States = {}
        ways = 0
        for state, origin in states.items():
            found = outcomes(self.cockpit, item, state)
            self.seen(item, state, origin, found)
            ways += len(found)
            for outcome in found:
                reached.setdefault(outcome.state, origin)
            if ways > MOST_WAYS or len(found) > MOST_STATES:
                self.full.append(item.spot)
                break
        if self.after_item is not None:
            self.after_item(item, reached)
        return reached

    def _repeated(self, repeat: Repeat, states: States) -> States:
        """At least once, and again from every state that it newly leads to."""
        out: States = {}
        begun: States = {}
        while states:
            begun = joined((begun, states))
            if len(begun) > MOST_STATES:
                self.full.append(repeat.spot)
                break
            reached = self.steps(repeat.steps, states)
            out = joined((out, reached))
            states = {state: origin for state, origin in reached.items() if state not in begun}
        return out

    def _branch(self, arms: tuple[Arm, ...], states: States) -> States:
        """Each arm from the states in which its condition may hold; what is left passes by."""
        ways: list[States] = []
        for arm in arms:
            holds = {state: origin for state, origin in states.items() if self._may(arm, state, True)}
            ways.append(self.steps(arm.steps, holds))
            states = {state: origin for state, origin in states.items() if self._may(arm, state, False)}
        return joined((states, *ways))

    def _may(self, arm: Arm, state: State, hold: bool) -> bool:
        """Whether a condition may hold in a state, or may not hold."""
        if arm.condition is None:
            return hold
        if arm.over is None:
            return True
        stands = self.cockpit.position(state, arm.over.control)
        return not stands or ((stands == arm.over.position) != arm.over.negated) == hold


def joined(ways: Iterable[States]) -> States:
    """All these states; of equal ones the first."""
    found: States = {}
    for states in ways:
        for state, origin in states.items():
            found.setdefault(state, origin)
    return found
