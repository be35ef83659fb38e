"""Whether something is met wherever a card begins, or only at some moments of a phase.

A card off the main line is worked through from many moments at once, and not every one of them is a moment in which
somebody would call for it: an engine that was stopped on purpose does not fail. What a rule finds there has to be so
at every moment of a phase, or after every way to a `go to`.
"""

from __future__ import annotations

from typing import TypeAlias

from dotleader.cockpit.gathering import Gathered
from dotleader.cockpit.moving import Already, Happening, Outcome, Unmet
from dotleader.cockpit.state import State, narrowed
from dotleader.cockpit.timeline import CardRun, LineRun, Met, Run
from dotleader.cockpit.walking import Origin, States, Walk
from dotleader.handbook.cards import GoTo, Item
from dotleader.handbook.phases import AIRBORNE

_Always: TypeAlias = dict[tuple[int, Happening], State]
"""What an item, by its id, meets in every state and in every way, with the first state in which it is met."""


class Certain:
    """Asked about one run. A card is worked through once for each phase and each `go to`, whatever is asked of it."""

    def __init__(self, done: Run) -> None:
        self.done = done
        self._moments: dict[str, States] = {}
        self._always: dict[tuple[int, str | int], _Always] = {}
        self._leaps: dict[int, tuple[CardRun, tuple[State, ...]]] = {}
        for ran in done.cards:
            for go_to, states in ran.leaps:
                self._leaps.setdefault(id(go_to), (ran, states))

    def whole_phase(self, ran: CardRun, line: LineRun, what: Happening) -> tuple[str, State] | None:
        """The first phase in which a card meets something at whichever moment it is called for, with a state there.

        The moment at which a phase has begun and nothing of it has been done counts only where nothing is to be done.
        """
        for phase in ran.card.during or AIRBORNE:
            state = self._in_phase(ran, phase).get((id(line.item), what))
            if state is not None:
                return phase, state
        return None

    def whole_way(self, ran: CardRun, line: LineRun, met: Met) -> State | None:
        """A state in which a card meets something that it meets however the `go to` that led to it is reached."""
        if met.origin.came_by is None:
            return None
        go_to, idle = met.origin.came_by[0], _where_nothing_moves(ran, met.what)
        if idle is None:
            return self._after(ran, go_to).get((id(line.item), met.what))
        return _but_for(ran, line.item, met.what, idle, self._carried(ran, go_to))

    def _in_phase(self, ran: CardRun, phase: str) -> _Always:
        found = self._always.get((id(ran), phase))
        if found is None:
            _, cut = narrowed(self.done.cockpit, ran.cockpit.places)
            states = {cut(state): origin for state, origin in self._at_hand(phase).items()}
            found = self._always[id(ran), phase] = _always(ran, states)
        return found

    def _at_hand(self, phase: str) -> States:
        if phase not in self._moments:
            begun = self.done.by_phase.get(phase, {})
            done = {state: origin for state, origin in begun.items() if not origin.only_begun}
            self._moments[phase] = done or begun
        return self._moments[phase]

    def _after(self, ran: CardRun, go_to: GoTo) -> _Always:
        found = self._always.get((id(ran), id(go_to)))
        if found is None:
            found = self._always[id(ran), id(go_to)] = _always(ran, self._carried(ran, go_to))
        return found

    def _carried(self, ran: CardRun, go_to: GoTo) -> States:
        """The states in which a card begins after a `go to`."""
        if id(go_to) not in self._leaps:
            return {}
        before, states = self._leaps[id(go_to)]
        _, cut = narrowed(before.cockpit, ran.cockpit.places)
        return {cut(state): Origin() for state in states}


def _always(ran: CardRun, states: States) -> _Always:
    book = Gathered()
    Walk(ran.cockpit, book.see).steps(ran.card.steps, states)
    return {(id(line.item), met.what): met.state for line in book.done() for met in line.met if met.always}


def _where_nothing_moves(ran: CardRun, what: Happening) -> Happening | None:
    """What an item meets where its control is there already, and so needs nothing; None where that says all is well.

    Flaps that are down already need no power, and are no reason to lead to a card that lowers them without. What is
    put back to where it is parked, such as a pump that is put OFF, is mostly there.
    """
    if not isinstance(what, Unmet) or what.position == ran.cockpit.controls[what.control].parked:
        return None
    return Already(what.control, what.position, False)


def _but_for(ran: CardRun, item: Item, what: Happening, idle: Happening, states: States) -> State | None:
    """The first state in which an item is met from these, if in every such state it meets something in every way.

    States in which it meets `idle` in every way are not counted.
    """
    met: list[State] = []
    spared: list[State] = []

    def seen(one: Item, state: State, origin: Origin, found: list[Outcome]) -> None:
        if one is item:
            if all(what in outcome.met for outcome in found):
                met.append(state)
            elif not all(idle in outcome.met for outcome in found):
                spared.append(state)

    walk = Walk(ran.cockpit, seen)
    walk.steps(ran.card.steps, states)
    return met[0] if met and not spared else None
