"""Which controls and options matter to a card: what it moves and what that asks, turns and leads to."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.state import option
from dotleader.handbook.cards import Branch, Card, GoTo, Item
from dotleader.handbook.model import Handbook
from dotleader.handbook.walking import every_step


class Mattering:
    def __init__(self, handbook: Handbook) -> None:
        self.handbook = handbook
        self.own: dict[str, frozenset[str]] = {}
        self.targets: dict[str, tuple[str, ...]] = {}
        after: dict[str, list[str]] = {}
        for card in handbook.cards:
            if card.after:
                after.setdefault(card.after, []).append(card.key)
        for card in handbook.cards:
            self.own[card.key] = frozenset(self._taken_along(_touched(card)))
            led = (step.target for step in every_step(card.steps) if isinstance(step, GoTo) and step.target)
            self.targets[card.key] = (*led, *after.get(card.key, ()))

    def of(self, card: Card) -> frozenset[str]:
        """The keys that matter to a card and to all cards that it leads to."""
        seen = {card.key}
        waiting = [card.key]
        while waiting:
            for target in self.targets.get(waiting.pop(), ()):
                if target not in seen:
                    seen.add(target)
                    waiting.append(target)
        return frozenset().union(*(self.own[key] for key in seen if key in self.own))

    def _taken_along(self, keys: Iterator[str]) -> set[str]:
        """Keys with those of what they turn, and of what moving any of them asks."""
        found: set[str] = set()
        waiting = list(keys)
        while waiting:
            key = waiting.pop()
            if key in found:
                continue
            found.add(key)
            control = self.handbook.controls.get(key)
            if control is not None:
                waiting += [effect.control for effect in control.effects]
        for key in tuple(found):
            control = self.handbook.controls.get(key)
            if control is not None:
                found.update(other for need in control.needs for other, _ in need.alternatives)
        return found


def _touched(card: Card) -> Iterator[str]:
    for step in every_step(card.steps):
        match step:
            case Item():
                yield from (move.control for move in step.moves)
                yield from (option(name) for _, name in step.only)
            case Branch(arms):
                yield from (arm.over.control for arm in arms if arm.over is not None)
            case _:
                pass
