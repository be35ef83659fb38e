"""What a run gives: card by card what its items did, in all the states in which they were met. Data only."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from dotleader.cockpit.moving import Happening
from dotleader.cockpit.state import Cockpit, State
from dotleader.cockpit.walking import Origin, States
from dotleader.handbook.cards import Card, GoTo, Item
from dotleader.source.record import record
from dotleader.source.text import Spot


@record
class Met:
    """Something that an item met in at least one state: the first such state and how it came to be.

    `always` where every state in which the item was met had it.
    """

    what: Happening
    state: State
    origin: Origin
    always: bool


@record
class LineRun:
    """An item and what it met, in the order in which it was first met. `states` is in how many states it was met."""

    item: Item
    met: tuple[Met, ...]
    states: int


@record
class CardRun:
    """A card worked through. `before` and `after` are the states in which it can begin and end, each kind once.

    `after` has no states that left by a `go to`. Positions of a state stand in the order of `cockpit.places`: of a
    card off the main line only those of controls that matter to it. Items that no state reached have no line.
    """

    card: Card
    phase: str
    cockpit: Cockpit
    before: tuple[State, ...]
    lines: tuple[LineRun, ...]
    after: tuple[State, ...]
    leaps: tuple[tuple[GoTo, tuple[State, ...]], ...]


@record
class Occasion:
    """Where something was met: the card, the line, and what. `place` is the card's on the main line, -1 off it."""

    ran: CardRun
    line: LineRun
    met: Met
    place: int
    called: bool


@record
class Mover:
    """An item on the main line that moves a control, or takes it along; `place` is that of its card there."""

    place: int
    card: Card
    item: Item


@record
class Occasions:
    """What was met on all cards, in their order, by kind. `first` are positions that an item goes through first and
    in which the control stands already; `movers` are by the control's key, in the order of the flight.
    """

    unmet: tuple[Occasion, ...] = ()
    astray: tuple[Occasion, ...] = ()
    first: tuple[Occasion, ...] = ()
    movers: Mapping[str, Sequence[Mover]] = MappingProxyType({})


@record
class Run:
    """`main` are the normal cards in the order of the phases, `side` those that begin `after` another card, `called`
    all that are off the main line. `full` are the places where there were more states than are followed.

    `by_phase` are the states in which a card may be called for in each phase, each with the first moment of it.
    `occasions` has what was met by kind, for those who look for one kind.
    """

    cockpit: Cockpit
    main: tuple[CardRun, ...]
    side: tuple[CardRun, ...]
    called: tuple[CardRun, ...]
    full: tuple[Spot, ...]
    by_phase: dict[str, States]
    occasions: Occasions

    @property
    def cards(self) -> tuple[CardRun, ...]:
        return (*self.main, *self.side, *self.called)
