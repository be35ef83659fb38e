"""When the most is on: card by card through a flight, against what the alternator gives."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from dotleader.cockpit.loads import Loads, On
from dotleader.cockpit.state import State
from dotleader.cockpit.timeline import CardRun, Run
from dotleader.cockpit.walking import Origin, States, Walk
from dotleader.handbook.cards import Card, Item
from dotleader.source.record import record


@record
class Peak:
    """The most that is on while a card is done: after which item (None where it begins so), and how much.

    `fed` where the alternator feeds; of a card on which it never does it is the most that the battery gives.
    """

    card: Card
    phase: str
    item: Item | None
    on: tuple[On, ...]
    amps: Fraction
    fed: bool


def peaks(loads: Loads, run: Run) -> tuple[Peak, ...]:
    """One for each normal card on the main line and the side lines, in their order."""
    return tuple(_peak(loads, ran) for ran in (*run.main, *run.side) if ran.before)


def most(found: Iterable[Peak]) -> Peak | None:
    """The first of the highest on the alternator."""
    return max((peak for peak in found if peak.fed), key=lambda peak: peak.amps, default=None)


def _peak(loads: Loads, ran: CardRun) -> Peak:
    best: tuple[bool, Fraction] | None = None
    at: tuple[Item | None, State] = None, ran.before[0]
    for item, state in _moments(ran):
        now = loads.alternator_feeds(state), loads.total(state)
        if best is None or now > best:
            best, at = now, (item, state)
    assert best is not None
    return Peak(ran.card, ran.phase, at[0], loads.on(at[1]), best[1], best[0])


def _moments(ran: CardRun) -> Iterator[tuple[Item | None, State]]:
    """Every state that a card can pass through, with the item that was done last."""
    found: dict[State, Item | None] = dict.fromkeys(ran.before)

    def see(item: Item, states: States) -> None:
        for state in states:
            found.setdefault(state, item)

    walk = Walk(ran.cockpit, lambda *_: None, see)
    walk.steps(ran.card.steps, dict.fromkeys(ran.before, Origin()))
    for state, item in found.items():
        yield item, state
