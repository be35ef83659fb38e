"""A flight flown one way, by an interpreter that knows nothing of the run: plain dictionaries, one throw of dice for
each choice. What it comes to has to be among what the run says can be.

Handbooks here are data of their own, written out as text for the run; the interpreter never sees that text.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from random import Random
from typing import TypeAlias

State: TypeAlias = dict[str, str]


@dataclass(frozen=True)
class Switch:
    """Every switch has positions P and Q, some have R. `needs` are (position or "", alternatives)."""

    name: str
    positions: tuple[str, ...]
    parked: str
    needs: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = ()
    turned: tuple[tuple[str, str, str], ...] = ()
    springs: tuple[tuple[str, str], ...] = ()

    def text(self) -> str:
        rows = [f"  {self.name} .... {', '.join(self.positions)}"]
        rows += [f"    parked .... {self.parked}"] if self.parked else []
        for moved_to, some in self.needs:
            head = f"needs for {moved_to}" if moved_to else "needs"
            rows.append(f"    {head} .... {' or '.join(' '.join(one) for one in some)}")
        rows += [f"    turned {at} .... {other} {to}" for at, other, to in self.turned]
        rows += [f"    springs .... {start} to {end}" for start, end in self.springs]
        rows += ["    means .... EITHER: P or Q", "    means .... OTHER: the other of P or Q"]
        return "\n".join(rows)


@dataclass(frozen=True)
class Do:
    """`ways` are the ways that a response goes, each a row of positions, EITHER or OTHER; `stays` moves nothing."""

    switches: tuple[str, ...]
    ways: tuple[tuple[str, ...], ...] = ()
    stays: str = ""
    option: str = ""

    def text(self) -> Iterator[str]:
        said = [" then ".join(way) for way in self.ways]
        response = f"STAYS {self.stays}" if self.stays else said[0]
        if len(said) > 1:
            response += " if damp" + (f", otherwise {said[1]}" if said[1] else "")
        yield f"{' + '.join(self.switches)} .... {response}" + (f" [{self.option} ice]" if self.option else "")


@dataclass(frozen=True)
class Fork:
    """Arms of a condition, (switch, position, negated) or None for free words, and steps; then what is otherwise."""

    arms: tuple[tuple[tuple[str, str, bool] | None, tuple[Step, ...]], ...]
    otherwise: tuple[Step, ...] = ()

    def text(self) -> Iterator[str]:
        for number, (condition, steps) in enumerate(self.arms):
            words = "it is so"
            if condition is not None:
                words = f"{condition[0]} {'is not ' if condition[2] else ''}{condition[1]}"
            yield f"{'or if' if number else 'if'} {words}"
            yield from below(steps)
        if self.otherwise:
            yield "otherwise"
            yield from below(self.otherwise)


@dataclass(frozen=True)
class Block:
    """`head` is ``group Some``, ``one of`` or ``repeat until done``."""

    head: str
    steps: tuple[Step, ...]

    def text(self) -> Iterator[str]:
        yield self.head
        yield from below(self.steps)


@dataclass(frozen=True)
class Leave:
    """`end`, or a `go to` a card."""

    card: str = ""

    def text(self) -> Iterator[str]:
        yield f"go to {self.card}" if self.card else "end"


Step: TypeAlias = Do | Fork | Block | Leave


def below(steps: tuple[Step, ...]) -> Iterator[str]:
    for step in steps:
        yield from ("  " + line for line in step.text())


@dataclass(frozen=True)
class Book:
    """`main` are titles that are phases, in their order; `off` are emergency cards, called for in cruise."""

    switches: tuple[Switch, ...]
    main: dict[str, tuple[Step, ...]]
    off: dict[str, tuple[Step, ...]]

    def text(self) -> str:
        parts = ["equipment", *(switch.text() for switch in self.switches)]
        for title, steps in self.main.items():
            parts += [f"normal {title}", "  when ready", *below(steps)]
        for title, steps in self.off.items():
            parts += [f"emergency {title}", "  when it burns", "  during cruise", *below(steps)]
        return "\n".join(parts) + "\n"


class Left(Exception):  # noqa: N818  # it is the way out of a card, and no error
    def __init__(self, card: str) -> None:
        self.card = card


@dataclass
class Flier:
    """Does steps one way. `refused` are the (switch, position) that moved while a need of theirs was not so."""

    switches: dict[str, Switch]
    dice: Random
    state: State
    after_item: Callable[[State], None] = lambda _: None
    refused: set[tuple[str, str]] = field(default_factory=set)
    touched: list[str] = field(default_factory=list)

    def card(self, steps: tuple[Step, ...]) -> str:
        """Do a card; the title of the card to which it leads, `""` where it simply ends."""
        try:
            self.steps(steps)
        except Left as left:
            return left.card
        return ""

    def steps(self, steps: tuple[Step, ...]) -> None:
        for step in steps:
            if isinstance(step, Do):
                self.do(step)
            elif isinstance(step, Fork):
                self.steps(self.chosen(step))
            elif isinstance(step, Leave):
                raise Left(step.card)
            elif step.head == "one of":
                self.steps((self.dice.choice(step.steps),))
            else:
                times = self.dice.randint(1, 4) if step.head.startswith("repeat") else 1
                for _ in range(times):
                    self.steps(step.steps)

    def chosen(self, fork: Fork) -> tuple[Step, ...]:
        for condition, steps in fork.arms:
            stands = self.state[condition[0]] if condition is not None else ""
            holds = self.dice.random() < 0.5
            if condition is not None and stands:
                holds = (stands == condition[1]) is not condition[2]
            if holds:
                return steps
        return fork.otherwise

    def do(self, item: Do) -> None:
        if item.option:
            self.state["[ice]"] = self.state["[ice]"] or self.dice.choice(("with", "without"))
        if not item.option or self.state["[ice]"] == item.option:
            self.touched = []
            way = self.dice.choice(item.ways) if item.ways else ()
            for name in item.switches:
                for word in way:
                    self.move(self.switches[name], self.position(name, word))
            self.let_go()
        self.after_item(self.state)

    def position(self, name: str, word: str) -> str:
        if word == "EITHER":
            return self.dice.choice("PQ")
        if word == "OTHER":
            return {"P": "Q", "Q": "P"}.get(self.state[name]) or self.dice.choice("PQ")
        return word

    def move(self, switch: Switch, to: str) -> None:
        self.touched.append(switch.name)
        if self.state[switch.name] == to:
            return
        if self.works(switch, to):
            self.bring(switch.name, to, ())
        else:
            self.refused.add((switch.name, to))
            self.state[switch.name] = to

    def works(self, switch: Switch, to: str) -> bool:
        return all(
            any(self.state[other] in ("", position) for other, position in some)
            for moved_to, some in switch.needs
            if moved_to in ("", to)
        )

    def bring(self, name: str, to: str, chain: tuple[str, ...]) -> None:
        if self.state[name] == to or name in chain:
            return
        self.touched.append(name)
        self.state[name] = to
        self.turn(name, to, chain)

    def turn(self, name: str, to: str, chain: tuple[str, ...]) -> None:
        for at, other, position in self.switches[name].turned:
            if at == to:
                self.bring(other, position, (*chain, name))

    def let_go(self) -> None:
        for name in list(dict.fromkeys(self.touched)):
            switch = self.switches[name]
            for start, end in switch.springs:
                if self.state[name] == start:
                    self.state[name] = end
                    if self.works(switch, end):
                        self.turn(name, end, ())
                    break
