"""In which positions the controls stand. A state is plain data, so that equal states are one."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from operator import itemgetter
from typing import TypeAlias

from dotleader.handbook.cards import Item
from dotleader.handbook.model import Control, Handbook
from dotleader.handbook.walking import every_step
from dotleader.source.record import record

State: TypeAlias = tuple[str, ...]
"""A position, as declared, for each place of a `Cockpit`; `""` where nobody knows."""

FITTED, MISSING = "with", "without"

MOST_STATES = 10_000
"""States beyond this many are not followed; where that was is said."""

MOST_WAYS = 10 * MOST_STATES
"""Ways that one item can go from all states together, and states at hand in one phase: more are left, and said, too."""


@record
class Cockpit:
    """`places` says where in a state a control (by its key) or an option (by its name in brackets) stands.

    `parked` is the state in which the aircraft is left; options, of which nobody knows whether they are fitted, are
    `""` in it until the first line that asks.
    """

    controls: dict[str, Control]
    places: dict[str, int]
    parked: State

    def position(self, state: State, control: str) -> str:
        """Where a control stands in a state; `""` where nobody knows, also of one that is not looked at."""
        place = self.places.get(control)
        return state[place] if place is not None else ""


def option(name: str) -> str:
    """The place of an option of this aircraft. No control has such a key, because a bracket ends no challenge."""
    return f"[{name}]"


def cockpit_of(handbook: Handbook) -> Cockpit:
    """All controls and options of a handbook."""
    options = {
        option(name)
        for card in handbook.cards
        for step in every_step(card.steps)
        if isinstance(step, Item)
        for _, name in step.only
    }
    keys = [*handbook.controls, *sorted(options)]
    parked = (*(control.parked for control in handbook.controls.values()), *("" for _ in options))
    return Cockpit(handbook.controls, {key: place for place, key in enumerate(keys)}, parked)


def narrowed(cockpit: Cockpit, keys: Iterable[str]) -> tuple[Cockpit, Callable[[State], State]]:
    """A cockpit of these places alone, in their order, and what makes its states of those of `cockpit`."""
    wanted = set(keys)
    kept = [key for key in cockpit.places if key in wanted]
    at = [cockpit.places[key] for key in kept]
    cut: Callable[[State], State]
    if len(at) > 1:
        cut = itemgetter(*at)
    elif at:
        cut = lambda state: (state[at[0]],)  # noqa: E731  # an itemgetter of one gives no tuple
    else:
        cut = lambda _: ()  # noqa: E731
    return Cockpit(cockpit.controls, {key: place for place, key in enumerate(kept)}, cut(cockpit.parked)), cut
