"""What one item does to a state: each way that it can go, what moved, what was so already, and what cannot be yet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from dotleader.cockpit.state import FITTED, MISSING, MOST_STATES, Cockpit, State, option
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
    """Every way that an item can go from a state, up to one more than `MOST_STATES`.

    An item for an option goes both ways, once for the whole flight.
    """
    if not item.moves:
        return [Outcome(state)]
    begun = [Outcome(state)]
    done: list[Outcome] = []
    for word, name in item.only:
        begun, left = _fitted(cockpit, begun, word, name)
        done += left
    for moves in _courses(item.moves):
        found = begun
        for move in moves:
            found = [further for outcome in found for further in _moved(cockpit, move, outcome)]
            if len(found) > MOST_STATES:
                del found[MOST_STATES + 1 :]
        done += [_sprung(cockpit, outcome) for outcome in found]
    return done


def _courses(moves: tuple[Move, ...]) -> list[tuple[Move, ...]]:
    """The ways of a response go together for all controls of an item: a condition holds for both or for neither."""
    count = len(moves[0].ways)
    if len(moves) == 1 or count < 2 or any(len(move.ways) != count for move in moves):
        return [moves]
    return [tuple(replace(move, ways=(move.ways[at],)) for move in moves) for at in range(count)]


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
            if len(reached) > MOST_STATES:
                del reached[MOST_STATES + 1 :]
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
    unmet = tuple(Unmet(control.key, position, need) for need in _unmet(cockpit, control, position, state))
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
    return _turned(cockpit, control, position, chain, _put(state, place, position), met)


def _turned(
    cockpit: Cockpit, control: Control, position: str, chain: tuple[str, ...], state: State, met: list[Happening]
) -> State:
    """The state after what a control turns in the position into which it has come."""
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


def _sprung(cockpit: Cockpit, outcome: Outcome) -> Outcome:
    """What was moved, or taken along, into a position that it does not keep falls back, with what that turns."""
    controls = cockpit.controls
    springing = [what.control for what in outcome.met if controls[what.control].springs and type(what) is not Astray]
    if not springing:
        return outcome
    state, met = outcome.state, list(outcome.met)
    for key in dict.fromkeys(springing):
        control, place = cockpit.controls[key], cockpit.places[key]
        end = next((end for start, end in control.springs if state[place] == start), "")
        if end:
            met.append(Change(key, state[place], end, key))
            state = _put(state, place, end)
            if not any(_unmet(cockpit, control, end, state)):
                state = _turned(cockpit, control, end, (), state, met)
    return Outcome(state, tuple(met))


def _unmet(cockpit: Cockpit, control: Control, position: str, state: State) -> Iterator[Need]:
    for need in control.needs:
        if position and need.moved_to in ("", position) and not _holds(cockpit, need, state):
            yield need


def _put(state: State, place: int, position: str) -> State:
    return (*state[:place], position, *state[place + 1 :])
