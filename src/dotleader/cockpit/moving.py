"""What one item does to a state: each way that it can go, what moved, what was so already, and what cannot be yet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from dotleader.cockpit.state import FITTED, MISSING, Cockpit, State, option
from dotleader.handbook.cards import Aim, Item, Move
from dotleader.handbook.model import Control, Need
from dotleader.source.record import record, replace


@record
class Change:
    """A control went from one position to another; `by` is the control that took it along, `""` where it was moved."""

    control: str
    before: str
    after: str
    by: str = ""


@record
class Already:
    """A control was where it was to go. `first` where the item has further positions for it (`OFF then ON`)."""

    control: str
    position: str
    first: bool


@record
class Unmet:
    """A need that does not hold when a control is moved to a position."""

    control: str
    position: str
    need: Need


@record
class Astray:
    """A control is said to stay in a position and stands in another."""

    control: str
    said: str
    stands: str


Happening: TypeAlias = Change | Already | Unmet | Astray


@record
class Outcome:
    """One way that an item can go from a state: what it meets in turn, and the state in which it ends."""

    state: State
    met: tuple[Happening, ...] = ()


def outcomes(cockpit: Cockpit, item: Item, state: State) -> list[Outcome]:
    """Every way that an item can go from a state. An item for an option goes both ways, once for the whole flight."""
    if not item.moves:
        return [Outcome(state)]
    found = [Outcome(state)]
    done: list[Outcome] = []
    for word, name in item.only:
        found, left = _fitted(cockpit, found, word, name)
        done += left
    for move in item.moves:
        found = [further for outcome in found for further in _moved(cockpit, move, outcome)]
    springing = [cockpit.controls[move.control] for move in item.moves if cockpit.controls[move.control].springs]
    if springing:
        found = [_sprung(cockpit, springing, outcome) for outcome in found]
    return found + done


def _fitted(cockpit: Cockpit, found: list[Outcome], word: str, name: str) -> tuple[list[Outcome], list[Outcome]]:
    """The outcomes in which an item is done, and those in which its option is not as it says."""
    place = cockpit.places[option(name)]
    other = MISSING if word == FITTED else FITTED
    on, off = [], []
    for outcome in found:
        known = outcome.state[place]
        if known in ("", word):
            on.append(replace(outcome, state=_put(outcome.state, place, word)))
        if known in ("", other):
            off.append(replace(outcome, state=_put(outcome.state, place, other)))
    return on, off


def _moved(cockpit: Cockpit, move: Move, outcome: Outcome) -> Iterator[Outcome]:
    if not move.ways:
        stands = cockpit.position(outcome.state, move.control)
        if move.stays and stands and stands != move.stays:
            outcome = replace(outcome, met=(*outcome.met, Astray(move.control, move.stays, stands)))
        yield outcome
        return
    control = cockpit.controls[move.control]
    for way in move.ways:
        reached = [outcome]
        for at, aim in enumerate(way):
            more = at < len(way) - 1
            reached = [further for one in reached for further in _aimed(cockpit, control, aim, one, more)]
        yield from reached


def _aimed(cockpit: Cockpit, control: Control, aim: Aim, outcome: Outcome, more: bool) -> Iterator[Outcome]:
    stands = cockpit.position(outcome.state, control.key)
    positions = aim.positions or (aim.words,)
    if aim.other and stands in positions:
        positions = tuple(position for position in positions if position != stands)
    for position in positions:
        yield _put_there(cockpit, control, position, outcome, more)


def _put_there(cockpit: Cockpit, control: Control, position: str, outcome: Outcome, more: bool) -> Outcome:
    """`more` where the item has further positions for the control."""
    state = outcome.state
    stands = state[cockpit.places[control.key]]
    if stands == position:
        if not position:
            return outcome
        return replace(outcome, met=(*outcome.met, Already(control.key, position, more)))
    unmet = tuple(
        Unmet(control.key, position, need)
        for need in control.needs
        if position and need.moved_to in ("", position) and not _holds(cockpit, need, state)
    )
    met = [*outcome.met, *unmet]
    if unmet:  # what it works on does not come about; that the control itself was moved is taken for granted
        met.append(Change(control.key, stands, position))
        state = _put(state, cockpit.places[control.key], position)
    else:
        state = _taken_along(cockpit, control, position, (), state, met)
    return Outcome(state, tuple(met))


def _taken_along(
    cockpit: Cockpit, control: Control, position: str, chain: tuple[str, ...], state: State, met: list[Happening]
) -> State:
    """The state after a control came into a position, with what that turns.

    `chain` are the controls that led to it. Each moves once in a chain, so that effects in a circle come to an end.
    """
    place = cockpit.places[control.key]
    if state[place] == position or control.key in chain:
        return state
    met.append(Change(control.key, state[place], position, chain[-1] if chain else ""))
    state = _put(state, place, position)
    for effect in control.effects:
        if effect.position == position and effect.control in cockpit.places:
            further = cockpit.controls[effect.control]
            state = _taken_along(cockpit, further, effect.to, (*chain, control.key), state, met)
    return state


def _holds(cockpit: Cockpit, need: Need, state: State) -> bool:
    """Whether one of the alternatives holds; so it is taken where nobody knows, or nothing was understood."""
    if not need.alternatives:
        return True
    stands = [(cockpit.position(state, control), position) for control, position in need.alternatives]
    return any(now in ("", position) for now, position in stands)


def _sprung(cockpit: Cockpit, controls: list[Control], outcome: Outcome) -> Outcome:
    state, met = outcome.state, list(outcome.met)
    for control in controls:
        place = cockpit.places[control.key]
        for start, end in control.springs:
            if state[place] == start:
                met.append(Change(control.key, start, end, control.key))
                state = _put(state, place, end)
                break
    return Outcome(state, tuple(met))


def _put(state: State, place: int, position: str) -> State:
    return (*state[:place], position, *state[place + 1 :])
