"""The cards of a handbook worked through, from the parked aircraft to the parked aircraft.

The main line are the normal cards in the order of the phases. Cards off it are worked through from the state in each
phase in which they can be called for: at its beginning, and after each of its items. Of a card off the main line only
the controls that matter to it are looked at, so that the many states of a flight are few for it.
"""

from __future__ import annotations

from dotleader.cockpit.calls import Call
from dotleader.cockpit.gathering import Gathered
from dotleader.cockpit.mattering import Mattering
from dotleader.cockpit.occasions import occasions_of
from dotleader.cockpit.state import MOST_WAYS, Cockpit, State, cockpit_of
from dotleader.cockpit.timeline import CardRun, Run
from dotleader.cockpit.walking import Origin, States, Walk, joined
from dotleader.handbook.cards import Card, GoTo, Item, Kind
from dotleader.handbook.model import Handbook
from dotleader.handbook.phases import AIRBORNE, ORDER, PHASES
from dotleader.source.text import Spot


def run(handbook: Handbook) -> Run:
    """Every card of a handbook worked through. Never raises on anything that was resolved."""
    return _Running(handbook).run()


class _Running:
    def __init__(self, handbook: Handbook) -> None:
        self.handbook = handbook
        self.cockpit = cockpit_of(handbook)
        self.mattering = Mattering(handbook)
        self.by_phase: dict[str, States] = {phase: {} for phase in PHASES}
        self.ended: dict[str, States] = {}
        self.full: list[Spot] = []
        self.places: dict[str, int] = {}  # of the cards on the main line
        self.leaping: list[tuple[GoTo, str, Cockpit, States]] = []

    def run(self) -> Run:
        main = self._main_line()
        side = self._side_lines()
        called = self._called()
        found = occasions_of(main, side, called)
        return Run(self.cockpit, tuple(main), tuple(side), tuple(called), tuple(self.full), self.by_phase, found)

    def _main_line(self) -> list[CardRun]:
        cards: dict[str, list[Card]] = {}
        for card in self.handbook.cards:
            if on_main_line(card):
                cards.setdefault(card.phase, []).append(card)
        order = [card.key for phase in PHASES for card in cards.get(phase, ())]
        self.places = {key: place for place, key in enumerate(order)}
        ahead: dict[str, States] = {}
        states: States = {self._beginning(order): Origin()}
        done = []
        for phase in PHASES:
            self._at_hand(phase, "", None, states)
            for card in cards.get(phase, ()):
                led_here = ahead.pop(card.key, {})
                self._at_hand(phase, "", None, led_here)
                states = joined((states, led_here))
                walk, ran = self._walked(card, phase, states)
                done.append(ran)
                left = joined((dict.fromkeys(ran.after, Origin()),))
                self._sort_leaps(walk, card, ahead)
                if left or not walk.leaps:
                    states = left or states
                elif not any(self.places[key] > self.places[card.key] for key in ahead):
                    states = joined(leaving for _, leaving in walk.leaps)  # the flight goes on somehow
                else:
                    states = {}
        return done

    def _beginning(self, order: list[str]) -> State:
        """The parked aircraft; but nobody knows how it stands where the cards begin later than that."""
        first = self.handbook.by_key[order[0]].phase if order else ""
        if first and ORDER[first] <= ORDER["engine start"]:
            return self.cockpit.parked
        return ("",) * len(self.cockpit.parked)

    def _sort_leaps(self, walk: Walk, card: Card, ahead: dict[str, States]) -> None:
        """A `go to` a later card of the main line is the main line; others are worked through with their cards."""
        here = self.places.get(card.key)
        for go_to, states in walk.leaps:
            if here is not None and self.places.get(go_to.target, -1) > here:
                ahead[go_to.target] = joined((ahead.get(go_to.target, {}), states))
            else:
                self.leaping.append((go_to, card.key, self.cockpit, states))

    def _walked(self, card: Card, phase: str, states: States) -> tuple[Walk, CardRun]:
        """A card on the main line or a side line, in the whole cockpit."""
        book = Gathered()
        walk = Walk(self.cockpit, book.see, lambda item, now: self._at_hand(phase, card.key, item, now))
        out = joined((walk.steps(card.steps, states), walk.ends))
        self.full += walk.full
        self.ended[card.key] = joined((out, *(leaving for _, leaving in walk.leaps)))
        return walk, CardRun(card, phase, self.cockpit, tuple(states), book.done(), tuple(out), _leaps(walk))

    def _at_hand(self, phase: str, card: str, item: Item | None, states: States) -> None:
        """States in which a card may be called for in a phase."""
        origin = Origin(phase, card, item)
        known = self.by_phase.get(phase)
        if known is None:  # a side line
            return
        for state in states:
            before = known.get(state)
            if before is None and len(known) >= MOST_WAYS:
                if item is not None:  # the states at a beginning are fewer
                    self.full.append(item.spot)
                break
            if before is None or before.only_begun:
                known[state] = origin

    def _side_lines(self) -> list[CardRun]:
        """The cards that begin after another one; a card may follow one that itself begins so."""
        waiting = [card for card in self.handbook.cards if card.after and card.kind is Kind.NORMAL]
        done = []
        while waiting:
            ready = [card for card in waiting if card.after in self.ended]
            if not ready:  # they begin after cards off the main line, or after each other
                break
            waiting = [card for card in waiting if card.after not in self.ended]
            for card in ready:
                walk, ran = self._walked(card, "", dict.fromkeys(self.ended[card.after], Origin("", card.after)))
                self._sort_leaps(walk, card, {})
                done.append(ran)
        return done

    def _calls(self) -> dict[str, Call]:
        """Every card as one that is called for, with the cards that begin where it ends."""
        after: dict[str, list[GoTo]] = {}
        for card in self.handbook.cards:
            if card.after and card.kind is Kind.NORMAL and card.key not in self.ended:
                after.setdefault(card.after, []).append(GoTo(card.title, card.key, card.spot))
        return {
            card.key: Call(card, self.cockpit, self.mattering.of(card), after.get(card.key, ()))
            for card in self.handbook.cards
        }

    def _called(self) -> list[CardRun]:
        """Cards off the main line, from everywhere they can be called for and from every `go to` that leads there."""
        calls = self._calls()
        on_line = set(self.ended)
        at_hand: dict[tuple[str, ...], States] = {}
        for call in calls.values():
            if call.card.key in on_line or (call.card.after and call.card.kind is Kind.NORMAL):
                continue
            phases = call.card.during or AIRBORNE
            if phases not in at_hand:
                at_hand[phases] = joined(self.by_phase[phase] for phase in phases if phase in self.by_phase)
            call.take(at_hand[phases], call.cut)
        while True:
            for go_to, card, cockpit, states in self.leaping:
                if go_to.target in calls:
                    calls[go_to.target].arrive(go_to, card, cockpit, states)
            self.leaping = []
            waiting = [call for call in calls.values() if call.new]
            if not waiting:
                break
            for call in waiting:
                self.leaping += call.work()
        for call in calls.values():
            self.full += call.full
        return [call.done() for call in calls.values() if call.begun]


def _leaps(walk: Walk) -> tuple[tuple[GoTo, tuple[State, ...]], ...]:
    return tuple((go_to, tuple(states)) for go_to, states in walk.leaps)


def on_main_line(card: Card) -> bool:
    """Whether a card is one of the normal cards that follow one another through a flight."""
    return card.kind is Kind.NORMAL and bool(card.phase) and not card.during and not card.after
