"""Which card leads to which: every `go to` of a handbook as a graph."""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping

from dotleader.handbook.cards import GoTo
from dotleader.handbook.model import Handbook
from dotleader.handbook.walking import every_step


def leads(handbook: Handbook) -> dict[str, dict[str, GoTo]]:
    """For each card the cards that it leads to, each with the first `go to` that does."""
    graph: dict[str, dict[str, GoTo]] = {}
    for card in handbook.cards:
        out = graph.setdefault(card.key, {})
        for step in every_step(card.steps):
            if isinstance(step, GoTo) and step.target:
                out.setdefault(step.target, step)
    return graph


def circles(graph: Mapping[str, Mapping[str, GoTo]]) -> list[tuple[str, ...]]:
    """Circles of a graph: for each group of cards that lead back to each other the shortest through its first card."""
    found: list[tuple[str, ...]] = []
    known: set[str] = set()
    for key in graph:
        if key in known:
            continue
        way = shortest(graph, key, key)
        if way:
            found.append(way)
            known.update(other for other in _reached(graph, key) if key in _reached(graph, other))
    return found


def shortest(graph: Mapping[str, Mapping[str, GoTo]], start: str, end: str) -> tuple[str, ...]:
    """The cards on the shortest way from one card to another, without the last; empty where there is none."""
    before: dict[str, str] = {}
    waiting = deque([start])
    while waiting:
        key = waiting.popleft()
        for target in graph.get(key, ()):
            if target == end:
                way = [key]
                while way[-1] != start:
                    way.append(before[way[-1]])
                return tuple(reversed(way))
            if target not in before and target != start:
                before[target] = key
                waiting.append(target)
    return ()


def _reached(graph: Mapping[str, Mapping[str, GoTo]], start: str) -> set[str]:
    seen: set[str] = set()
    waiting = [start]
    while waiting:
        for target in graph.get(waiting.pop(), ()):
            if target not in seen:
                seen.add(target)
                waiting.append(target)
    return seen
