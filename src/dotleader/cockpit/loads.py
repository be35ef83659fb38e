"""What draws on the electrical system in a state of the cockpit, and what feeds it there."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from operator import itemgetter

from dotleader.cockpit.state import Cockpit, State
from dotleader.handbook.model import Control, Electrical, Need
from dotleader.handbook.wiring import OFF, Draw
from dotleader.source.record import record
from dotleader.syntax.plain import folded

ALWAYS_ON = ""
"""Stands for the key of a control in what is on without a switch."""


@record
class On:
    """Something that draws: the key of its control, and amperes."""

    control: str
    amps: Fraction


def off_position(control: Control) -> str:
    """The position in which a control draws nothing; `""` where it has none."""
    return next((position for position in control.positions if folded(position) == OFF), "")


def amps_of(draw: Draw, electrical: Electrical | None) -> Fraction | None:
    """A draw in amperes; None of one in watts where the volts of the system are not known."""
    if not draw.watts:
        return draw.amount
    return draw.amount / electrical.volts if electrical is not None and electrical.volts else None


def is_unclear(draw: Draw, control: Control) -> bool:
    """Whether it is not said when a control draws: it has no position OFF, and none is named in which it does."""
    return not draw.moving and not draw.position and not off_position(control)


class Loads:
    """Asked for states of one cockpit. What is not known to be on draws nothing; controls in `without` never do."""

    def __init__(self, electrical: Electrical, cockpit: Cockpit, without: frozenset[str] = frozenset()) -> None:
        self.electrical, self.cockpit = electrical, cockpit
        self.drawing = [key for key, control in cockpit.controls.items() if key not in without and self._draws(control)]
        battery = electrical.battery.needs if electrical.battery else ()
        alternator = electrical.alternator.needs if electrical.alternator else ()
        self.battery_chain = self._chain(battery)
        # A need for the alternator, or for the engine that turns it, says when something may be switched on. When
        # they stop the battery feeds it on, so that it goes on drawing.
        self.turning = self._chain(alternator) - self.battery_chain
        asked = {*self.drawing, *self.battery_chain, *self.turning}
        for key in self.drawing:
            asked |= self._chain(cockpit.controls[key].needs)
        places = [cockpit.places[key] for key in sorted(asked) if key in cockpit.places]
        self._cut = itemgetter(*places) if len(places) > 1 else None
        self._known: dict[State, tuple[tuple[On, ...], Fraction, bool]] = {}

    def on(self, state: State) -> tuple[On, ...]:
        """What draws in a state, in the order in which it is declared."""
        return self._worked_out(state)[0]

    def total(self, state: State) -> Fraction:
        return self._worked_out(state)[1]

    def alternator_feeds(self, state: State) -> bool:
        return self._worked_out(state)[2]

    def part(self, state: State) -> State:
        """The positions that the loads depend on; states in which these are equal have equal loads."""
        return self._cut(state) if self._cut is not None else state

    def _worked_out(self, state: State) -> tuple[tuple[On, ...], Fraction, bool]:
        part = self.part(state)
        found = self._known.get(part)
        if found is None:
            on = tuple(self._on(state))
            total = sum((one.amps for one in on), Fraction(0))
            found = self._known[part] = on, total, self._alternator_feeds(state)
        return found

    def _alternator_feeds(self, state: State) -> bool:
        supply = self.electrical.alternator
        return supply is not None and self._all_hold(supply.needs, state, frozenset(), ())

    def _battery_feeds(self, state: State) -> bool:
        """Also where no battery is declared: something feeds the starter."""
        supply = self.electrical.battery
        return supply is None or self._all_hold(supply.needs, state, frozenset(), ())

    def _on(self, state: State) -> Iterable[On]:
        if not self._battery_feeds(state) and not self._alternator_feeds(state):
            return
        if self.electrical.always_on:
            yield On(ALWAYS_ON, self.electrical.always_on)
        for key in self.drawing:
            position = self.cockpit.position(state, key)
            amps = self._drawn(self.cockpit.controls[key], position)
            if amps and self._fed(key, position, state, self.turning, ()):
                yield On(key, amps)

    def _drawn(self, control: Control, position: str) -> Fraction:
        if not position:
            return Fraction(0)
        draws = [draw for draw in control.wiring.draws if draw.position == position]
        if not draws and folded(position) != OFF and off_position(control):
            draws = [draw for draw in control.wiring.draws if not draw.position and not draw.moving]
        return sum((amps_of(draw, self.electrical) or Fraction(0) for draw in draws), Fraction(0))

    def _draws(self, control: Control) -> bool:
        return any(not draw.moving and not is_unclear(draw, control) for draw in control.wiring.draws)

    def _fed(self, key: str, position: str, state: State, but: frozenset[str], seen: tuple[str, ...]) -> bool:
        """Whether all holds that a control needs in a position, and all that this needs in turn."""
        control = self.cockpit.controls[key]
        needs = [need for need in control.needs if need.moved_to in ("", position)]
        return self._all_hold(needs, state, but, (*seen, key))

    def _all_hold(self, needs: Iterable[Need], state: State, but: frozenset[str], seen: tuple[str, ...]) -> bool:
        return all(not need.alternatives or self._holds(need, state, but, seen) for need in needs)

    def _holds(self, need: Need, state: State, but: frozenset[str], seen: tuple[str, ...]) -> bool:
        for key, wanted in need.alternatives:
            if key in but or key in seen:
                return True
            if self.cockpit.position(state, key) in ("", wanted) and self._fed(key, wanted, state, but, seen):
                return True
        return False

    def _chain(self, needs: Iterable[Need]) -> frozenset[str]:
        """All controls that needs name, and those that these need in turn."""
        found: set[str] = set()
        waiting = list(needs)
        while waiting:
            for key, _ in waiting.pop().alternatives:
                if key not in found:
                    found.add(key)
                    waiting += self.cockpit.controls[key].needs
        return frozenset(found)
