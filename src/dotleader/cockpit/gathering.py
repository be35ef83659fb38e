"""What the items of a card meet, gathered over all the states in which they are met."""

from __future__ import annotations

from dotleader.cockpit.moving import Happening, Outcome
from dotleader.cockpit.state import State
from dotleader.cockpit.timeline import LineRun, Met
from dotleader.cockpit.walking import Origin
from dotleader.handbook.cards import Item


class _Line:
    """What one item meets, gathered over the states."""

    __slots__ = ("item", "met", "states")

    def __init__(self, item: Item) -> None:
        self.item, self.states = item, 0
        self.met: dict[Happening, tuple[State, Origin, int]] = {}

    def see(self, state: State, origin: Origin, found: list[Outcome]) -> None:
        self.states += 1
        said: dict[Happening, int] = {}
        for outcome in found:
            for what in outcome.met:
                said[what] = said.get(what, 0) + 1
        for what, times in said.items():
            before = self.met.get(what)
            first = (state, origin) if before is None or _better(origin, before[1]) else before[:2]
            self.met[what] = (*first, (before[2] if before else 0) + (times >= len(found)))

    def done(self) -> LineRun:
        met = (Met(what, state, origin, times == self.states) for what, (state, origin, times) in self.met.items())
        return LineRun(self.item, tuple(met), self.states)


class Gathered:
    """The lines of one card's items, in the order in which they were first met."""

    def __init__(self) -> None:
        self.lines: dict[int, _Line] = {}

    def see(self, item: Item, state: State, origin: Origin, found: list[Outcome]) -> None:
        line = self.lines.get(id(item))
        if line is None:
            line = self.lines[id(item)] = _Line(item)
        line.see(state, origin, found)

    def done(self) -> tuple[LineRun, ...]:
        return tuple(line.done() for line in self.lines.values())


def _better(witness: Origin, known: Origin) -> bool:
    """Whether a state tells more than the first in which something was met."""
    return known.only_begun and not witness.only_begun
