"""How long the battery lasts when the alternator has failed, with what the card for that turns off.

Worked as phases: what is on in cruise until the card is done, what it leaves on until the landing, and what the
normal cards turn on again for the landing. The method is that of an installation manual's emergency-power example
(doc. 190-02246-10 rev. 11, page 3-38); it takes three quarters of the capacity that stands on the battery, because a
battery ages and is not always full.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dotleader.cockpit.loads import Loads, On, off_position
from dotleader.cockpit.state import State
from dotleader.cockpit.timeline import Run
from dotleader.cockpit.walking import Origin, States, Walk, joined
from dotleader.handbook.cards import Card, Item
from dotleader.handbook.model import Electrical, Handbook
from dotleader.source.record import record

_CRUISING = ("cruise", "climb", "descent", "approach", "takeoff", "landing")
"""Where a failure begins: the first of these phases in which the alternator feeds."""
_DOWN = ("descent", "approach", "landing")
_LANDING = ("approach", "landing")


@record
class Stage:
    """What is on for a time, and for how long, in minutes; None where that is what is left."""

    minutes: Fraction | None
    on: tuple[On, ...]

    @property
    def amps(self) -> Fraction:
        return sum((one.amps for one in self.on), Fraction(0))


@record
class Lasting:
    """`minutes` in all; None where the battery is flat before the landing is over. `endless` where nothing draws."""

    minutes: Fraction | None
    endless: bool = False

    @property
    def rank(self) -> tuple[int, Fraction]:
        """Longer ones are greater."""
        return (2 if self.endless else 0 if self.minutes is None else 1, self.minutes or Fraction(0))

    def reaches(self, minutes: Fraction) -> bool:
        return self.endless or (self.minutes is not None and self.minutes >= minutes)


@record
class Offer:
    """A control that could be OFF as well, and the minutes that this buys; None where it then lasts for ever."""

    control: str
    minutes: Fraction | None


@record
class Endurance:
    """The worst that may come of a card for a failed alternator. `capacity` in ampere minutes, as it is taken.

    `offers` could be off from the card to the landing, `for_landing` stay off in it.
    """

    card: Card
    capacity: Fraction
    before: Stage
    shed: Stage
    landing: Stage
    lasting: Lasting
    offers: tuple[Offer, ...]
    for_landing: tuple[Offer, ...]


def lasting(
    capacity: Fraction, before: tuple[Fraction, Fraction], between: Fraction, landing: tuple[Fraction, Fraction]
) -> Lasting:
    """How long `capacity` (ampere minutes, as it is taken) lasts: minutes and amperes until loads are shed and for the
    landing, and the amperes between."""
    left = capacity - before[0] * before[1] - landing[0] * landing[1]
    if left < 0:
        return Lasting(None)
    if not between:
        return Lasting(None, endless=True)
    return Lasting(before[0] + left / between + landing[0])


def endurances(
    handbook: Handbook, run: Run, share: Fraction, without: frozenset[str] = frozenset()
) -> tuple[Endurance, ...]:
    """One for each card that is declared for a failed alternator and can be worked through.

    `share` is what is taken of the battery's capacity; controls in `without` are taken to draw nothing.
    """
    electrical = handbook.electrical
    if electrical is None or electrical.battery is None or electrical.alternator is None:
        return ()
    loads = Loads(electrical, run.cockpit, without)
    failing = _Failing(handbook, run, electrical, loads, electrical.battery.amount * 60 * share)
    found = (failing.worst(handbook.by_key[key]) for key in electrical.when_it_fails if key in handbook.by_key)
    return tuple(one for one in found if one is not None)


class _Failing:
    def __init__(self, handbook: Handbook, run: Run, electrical: Electrical, loads: Loads, capacity: Fraction) -> None:
        self.handbook, self.run, self.electrical, self.loads = handbook, run, electrical, loads
        self.capacity = capacity
        self.down = [(ran.card, ran.phase in _LANDING) for ran in run.main if ran.phase in _DOWN]
        self.landings: dict[State, Stage] = {}

    def worst(self, card: Card) -> Endurance | None:
        found: tuple[tuple[int, Fraction], State, State] | None = None
        for states in self._beginnings(card):
            first = next(iter(states))
            for end in self._left_on(self._through(card, states, (card.key,))):
                rank = self._lasting(first, end).rank
                if found is None or rank < found[0]:
                    found = rank, first, end
        if found is None:
            return None
        _, first, end = found
        return Endurance(
            card,
            self.capacity,
            Stage(self.electrical.shed_after, self.loads.on(first)),
            Stage(None, self.loads.on(end)),
            self._landing(end),
            self._lasting(first, end),
            tuple(self._offers(first, end)),
            tuple(self._for_landing(first, end)),
        )

    def _beginnings(self, card: Card) -> list[States]:
        """The states in which the failure may come, those with equal loads together, and of these the heaviest."""
        for phase in _CRUISING:
            if card.during and phase not in card.during:
                continue
            groups: dict[State, States] = {}
            for state, origin in self.run.by_phase.get(phase, {}).items():
                if self.loads.alternator_feeds(state):
                    groups.setdefault(self.loads.part(state), {})[state] = origin
            if groups:
                heaviest = self._heaviest(next(iter(states)) for states in groups.values())
                return [groups[self.loads.part(state)] for state in heaviest]
        return []

    def _heaviest(self, states: Iterable[State]) -> list[State]:
        """The states in which not all that is on is on in another one of them, too: nothing worse comes of those."""
        kept: list[tuple[frozenset[On], State]] = []
        for on, state in sorted(
            ((frozenset(self.loads.on(one)), one) for one in states), key=lambda each: -len(each[0])
        ):
            if not any(on <= other for other, _ in kept):
                kept.append((on, state))
        return [state for _, state in kept]

    def _through(self, card: Card, states: States, chain: tuple[str, ...]) -> States:
        """The states in which a card is left, with the cards that it leads to."""
        walk = Walk(self.run.cockpit, lambda *_: None)
        out = joined((walk.steps(card.steps, states), walk.ends))
        for go_to, leaving in walk.leaps:
            further = self.handbook.by_key.get(go_to.target)
            if further is None or further.key in chain:
                out = joined((out, leaving))
            else:
                out = joined((out, self._through(further, leaving, (*chain, further.key))))
        return out

    def _left_on(self, states: States) -> Iterable[State]:
        """The heaviest states in which the alternator stays off.

        Where a card never turns it off nobody can tell the end at which it works again from the one at which it
        does not; there it is the end with the least load.
        """
        off = {self.loads.part(state): state for state in states if not self.loads.alternator_feeds(state)}
        if off or not states:
            return self._heaviest(off.values())
        return [min(states, key=self.loads.total)]

    def _lasting(
        self, first: State, end: State, between: Fraction | None = None, spared: Fraction = Fraction(0)
    ) -> Lasting:
        """With other amperes between, or some spared in the landing."""
        return lasting(
            self.capacity,
            (self.electrical.shed_after, self.loads.total(first)),
            self.loads.total(end) if between is None else between,
            (self.electrical.landing_takes, self._landing(end).amps - spared),
        )

    def _landing(self, end: State) -> Stage:
        """The most that is on when the normal cards for descent, approach and landing follow."""
        part = self.loads.part(end)
        if part not in self.landings:
            highest = end

            def see(_: Item, states: States) -> None:
                nonlocal highest
                highest = max((highest, *states), key=self.loads.total)

            states: States = {end: Origin()}
            for card, lands in self.down:
                walk = Walk(self.run.cockpit, lambda *_: None, see if lands else None)
                out = joined((walk.steps(card.steps, states), walk.ends, *(leaving for _, leaving in walk.leaps)))
                states = out or states
            self.landings[part] = Stage(self.electrical.landing_takes, self.loads.on(highest))
        return self.landings[part]

    def _offers(self, first: State, end: State) -> list[Offer]:
        """What else could be off until the landing, the longest gain first."""
        now, total = self._lasting(first, end), self.loads.total(end)
        found: list[Offer] = []
        for key, place in self.run.cockpit.places.items():
            control = self.run.cockpit.controls.get(key)
            off = off_position(control) if control is not None else ""
            if not off or end[place] in ("", off) or key in self.loads.battery_chain:
                continue
            less = self.loads.total((*end[:place], off, *end[place + 1 :]))
            if less >= total:
                continue
            then = self._lasting(first, end, less)
            if then.minutes is None:
                found += [Offer(key, None)] if then.endless else []
            elif now.minutes is not None:
                found.append(Offer(key, then.minutes - now.minutes))
        return sorted(found, key=lambda offer: (offer.minutes is not None, -(offer.minutes or 0)))

    def _for_landing(self, first: State, end: State) -> list[Offer]:
        """What the normal cards turn on for the landing, and what it would buy to leave it off."""
        left = {one.control for one in self.loads.on(end)}
        found: list[Offer] = []
        now = self._lasting(first, end)
        for one in self._landing(end).on:
            then = self._lasting(first, end, spared=one.amps)
            if one.control not in left and then.minutes is not None:
                found.append(Offer(one.control, then.minutes - (now.minutes or 0)))
        return sorted(found, key=lambda offer: -(offer.minutes or 0)) if now.minutes is not None else []
