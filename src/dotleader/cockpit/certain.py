"""Whether something is met wherever a card begins, or only at some moments of a phase.

A card off the main line is worked through from many moments at once, and not every one of them is a moment in which
somebody would call for it: an engine that was stopped on purpose does not fail. What a rule finds there has to be so
at every moment of a phase, or after every way to a `go to`.
"""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.cockpit.moving import Already, Happening, Outcome, Unmet
from dotleader.cockpit.state import State, narrowed
from dotleader.cockpit.timeline import CardRun, LineRun, Met, Run
from dotleader.cockpit.walking import Origin, States, Walk
from dotleader.handbook.cards import Item
from dotleader.handbook.phases import AIRBORNE


def whole_phase(done: Run, ran: CardRun, line: LineRun, what: Happening) -> tuple[str, State] | None:
    """The first phase in which a card meets something at whichever moment it is called for, with a state there.

    The moment at which a phase has begun and nothing of it has been done counts only where nothing is to be done.
    """
    _, cut = narrowed(done.cockpit, ran.cockpit.places)
    for phase in ran.card.during or AIRBORNE:
        begun = done.by_phase.get(phase, {})
        moments = {state: origin for state, origin in begun.items() if not origin.only_begun} or begun
        states = {cut(state): origin for state, origin in moments.items()}
        state = _everywhere(ran, line.item, what, states)
        if state is not None:
            return phase, state
    return None


def whole_way(done: Run, ran: CardRun, line: LineRun, met: Met) -> State | None:
    """A state in which a card meets something that it meets however the `go to` that led to it is reached."""
    if met.origin.came_by is None:
        return None
    go_to, card, _ = met.origin.came_by
    idle = _where_nothing_moves(ran, met.what)
    for before in done.cards:
        for leap, states in before.leaps:
            if before.card.key == card and leap is go_to:
                return _everywhere(ran, line.item, met.what, _carried(before, ran, states), idle)
    return None


def _carried(before: CardRun, ran: CardRun, states: Iterable[State]) -> States:
    _, cut = narrowed(before.cockpit, ran.cockpit.places)
    return {cut(state): Origin() for state in states}


def _where_nothing_moves(ran: CardRun, what: Happening) -> Happening | None:
    """What an item meets where its control is there already, and so needs nothing; None where that says all is well.

    Flaps that are down already need no power, and are no reason to lead to a card that lowers them without. What is
    put back to where it is parked, such as a pump that is put OFF, is mostly there.
    """
    if not isinstance(what, Unmet) or what.position == ran.cockpit.controls[what.control].parked:
        return None
    return Already(what.control, what.position, False)


def _everywhere(
    ran: CardRun, item: Item, what: Happening, states: States, idle: Happening | None = None
) -> State | None:
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
