"""Cards off the main line: where they are called for, and what comes of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from dotleader.cockpit.gathering import Gathered
from dotleader.cockpit.state import MOST_STATES, Cockpit, State, narrowed
from dotleader.cockpit.timeline import CardRun
from dotleader.cockpit.walking import Origin, States, Walk, joined
from dotleader.handbook.cards import Card, GoTo
from dotleader.source.text import Spot


class Call:
    """A card off the main line: the states in which it begins, and what its items met in them so far.

    `after` leads to the cards that begin where this one ends.
    """

    def __init__(self, card: Card, cockpit: Cockpit, keys: Iterable[str], after: Sequence[GoTo] = ()) -> None:
        self.card, self.after = card, after
        self.keys = tuple(keys)
        self.cockpit, self.cut = narrowed(cockpit, self.keys)
        self.book = Gathered()
        self.begun: States = {}
        self.new: States = {}
        self.out: States = {}
        self.left: dict[int, tuple[GoTo, States]] = {}
        self.full: list[Spot] = []

    def take(self, states: States, cut: Callable[[State], State]) -> None:
        for state, origin in states.items():
            mine = cut(state)
            if mine in self.begun:
                continue
            known = self.new.get(mine)
            if known is None and len(self.begun) + len(self.new) >= MOST_STATES:
                self.full.append(self.card.spot)
                break
            if known is None or known.only_begun:
                self.new[mine] = origin

    def arrive(self, go_to: GoTo, card: str, cockpit: Cockpit, states: States) -> None:
        """From another card, which looks at all that this one looks at."""
        _, cut = narrowed(cockpit, self.keys)
        self.take({state: Origin(came_by=(go_to, card, origin)) for state, origin in states.items()}, cut)

    def work(self) -> list[tuple[GoTo, str, Cockpit, States]]:
        """Work through what is new; what leaves for other cards."""
        states, self.new = self.new, {}
        self.begun |= states
        walk = Walk(self.cockpit, self.book.see)
        out = joined((walk.steps(self.card.steps, states), walk.ends))
        self.out = joined((self.out, out))
        self.full += walk.full
        for go_to, leaving in walk.leaps:
            known = self.left.get(id(go_to), (go_to, {}))[1]
            self.left[id(go_to)] = go_to, joined((known, leaving))
        led = [*walk.leaps, *((begins, out) for begins in self.after)]
        return [(go_to, self.card.key, self.cockpit, leaving) for go_to, leaving in led]

    def done(self) -> CardRun:
        leaps = tuple((go_to, tuple(states)) for go_to, states in self.left.values())
        begun, out = tuple(self.begun), tuple(self.out)
        return CardRun(self.card, "", self.cockpit, begun, self.book.done(), out, leaps)
