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
        if len(found) == 1:  # nearly always there is one way
            met = found[0].met
            for what in dict.fromkeys(met) if len(met) > 1 else met:
                self._add(what, state, origin, True)
            return
        said: dict[Happening, int] = {}
        for outcome in found:
            for what in outcome.met:
                said[what] = said.get(what, 0) + 1
        for what, times in said.items():
            self._add(what, state, origin, times >= len(found))

    def _add(self, what: Happening, state: State, origin: Origin, in_every_way: bool) -> None:
        before = self.met.get(what)
        if before is None:
            self.met[what] = state, origin, int(in_every_way)
            return
        first, came, times = before
        if came.only_begun and not origin.only_begun:  # it tells more than the first state in which it was met
            first, came = state, origin
        self.met[what] = first, came, times + in_every_way

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
