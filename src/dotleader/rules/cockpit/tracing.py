"""Where in a run a control was moved, and when something is met, in words."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable
from functools import partial

from dotleader.cockpit.certain import Certain
from dotleader.cockpit.moving import Change
from dotleader.cockpit.state import State
from dotleader.cockpit.timeline import Mover, Occasion, Run
from dotleader.handbook.cards import Arm, Branch, Card, Group, Item, Memory, OneOf, Repeat, Step
from dotleader.handbook.model import Control, Handbook
from dotleader.source.record import record
from dotleader.syntax.plain import folded


def last_moved(done: Run, occasion: Occasion, control: str) -> Mover | None:
    """What moved a control last before the line of an occasion: on its card, or before it on the main line."""
    found = None
    for line in occasion.ran.lines:
        if line is occasion.line:
            break
        if any(isinstance(met.what, Change) and met.what.control == control for met in line.met):
            found = line.item
    if found is not None:
        return Mover(occasion.place, occasion.ran.card, found)
    movers = done.occasions.movers.get(control, ())
    at = bisect_left(movers, occasion.place, key=lambda mover: mover.place)
    return movers[at - 1] if at > 0 else None


@record
class Moment:
    """When something is met, in words: in a state, always or only in some cases.

    `phase` is that in which a card is called for; `""` on other cards.
    """

    words: str
    state: State
    phase: str = ""


def moment(certain: Certain, occasion: Occasion, handbook: Handbook) -> Moment | None:
    """When an item meets something; None where that is only a moment in which nobody would be at that line.

    On the main line and side lines any way counts. A card that is called for has to meet it throughout a phase, one
    that is led to however the `go to` is reached.
    """
    ran, line, met = occasion.ran, occasion.line, occasion.met
    if not occasion.called:
        return Moment("" if met.always else " in some cases", met.state)
    if met.origin.came_by is not None:
        state = certain.whole_way(ran, line, met)
        card = handbook.by_key.get(met.origin.came_by[1])
        return Moment(f", coming from `{card.title if card else met.origin.came_by[1]}`", state) if state else None
    found = certain.whole_phase(ran, line, met.what)
    return Moment(f", at whichever moment of {found[0]} it is called for", found[1], found[0]) if found else None


def conditions(item: Item, card: Card) -> frozenset[str]:
    """The conditions under which an item is done, folded: those of the branches around it and of its response."""
    around = _around(item, card.steps) or ()
    said = item.response.written.partition(" if ")[2].partition(",")[0] if item.response is not None else ""
    return frozenset(folded(text) for text in (*around, said) if text)


def _around(item: Item, steps: Iterable[Step]) -> tuple[str, ...] | None:
    for step in steps:
        match step:
            case Item() if step is item:
                return ()
            case Group(steps=inner) | Memory(steps=inner) | OneOf(steps=inner) | Repeat(steps=inner):
                found = _around(item, inner)
            case Branch(arms):
                found = next(filter(lambda one: one is not None, map(partial(_in_arm, item), arms)), None)
            case _:
                found = None
        if found is not None:
            return found
    return None


def _in_arm(item: Item, arm: Arm) -> tuple[str, ...] | None:
    found = _around(item, arm.steps)
    if found is None or arm.condition is None:
        return found
    return (arm.condition.written, *found)


def alternatives(needs: Iterable[tuple[str, str]], controls: dict[str, Control]) -> str:
    """What is needed, `Battery 1 ON` or `Battery 2 ON`, as declared."""
    return " or ".join(f"`{controls[key].name} {position}`" for key, position in needs)
