"""The ways through the steps of a card: where one stops without an ending, and what none reaches.

A branch takes one of its arms, or none where there is no `otherwise`. Of `one of` one alternative is done. What is
repeated is done at least once. A way ends at `end` or `go to`; an arm without either rejoins what follows the branch.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import zip_longest
from typing import assert_never

from dotleader.handbook.cards import (
    Arm,
    Branch,
    End,
    GoTo,
    Group,
    Item,
    Memory,
    Notice,
    OneOf,
    Repeat,
    Step,
    Unread,
)
from dotleader.rules.showing import short
from dotleader.source.record import record
from dotleader.source.text import Spot


@record
class Stop:
    """Where a way runs out of steps: its last line, and the conditions that lead there: `if the engine runs`."""

    spot: Spot
    conditions: tuple[str, ...] = ()


@record
class Ways:
    """What comes out at the lower end of some steps: nothing where every way has ended inside.

    `all_of_them` where none has ended inside, so that no condition matters.
    """

    stops: tuple[Stop, ...]
    all_of_them: bool


ENDED = Ways((), False)


def ways_through(steps: Iterable[Step], start: Spot) -> Ways:
    """The ways that come out of steps done in turn; `start` is the place of a way that meets no step."""
    out = Ways((Stop(start),), True)
    steps = [step for step in steps if not isinstance(step, Unread)]
    for step, behind in zip_longest(steps, steps[1:]):
        if isinstance(step, Item | Notice) and isinstance(behind, Item | Notice):
            continue  # every way through it goes on to the next one
        inner = ways_of(step)
        if not inner.stops:
            return ENDED
        above = () if out.all_of_them else min((stop.conditions for stop in out.stops), key=len)
        stops = tuple(Stop(stop.spot, above + stop.conditions) for stop in inner.stops)
        out = Ways(stops, out.all_of_them and inner.all_of_them)
    return out


def ways_of(step: Step) -> Ways:
    match step:
        case Item() | Notice() | Unread():
            return Ways((Stop(step.spot),), True)
        case End() | GoTo():
            return ENDED
        case Group(steps=inner) | Memory(steps=inner) | Repeat(steps=inner):
            return ways_through(inner, step.spot)
        case OneOf(inner):
            alternatives = [ways_of(one) for one in inner if not isinstance(one, Notice | Unread)]
            return _either([(ways, ()) for ways in alternatives]) if alternatives else Ways((Stop(step.spot),), True)
        case Branch(arms):
            return _either(_choices(arms))
        case _ as never:
            assert_never(never)


def _choices(arms: Sequence[Arm]) -> list[tuple[Ways, tuple[str, ...]]]:
    """The ways through each arm with what leads into it, and the one past them all where there is one."""
    choices: list[tuple[Ways, tuple[str, ...]]] = []
    asked: list[str] = []
    for arm in arms:
        if arm.condition is not None:
            asked.append(f"`{short(arm.condition.written)}`")
            into = f"if {asked[-1]}"
        else:
            into = f"unless {' or '.join(asked)}" if asked else f"in `{arm.word}`"
        choices.append((ways_through(arm.steps, arm.spot), (into,)))
    if arms[-1].word != "otherwise":
        past = Ways((Stop(arms[0].spot),), True)
        choices.insert(0, (past, (f"unless {' or '.join(asked) or 'it holds'}",)))
    return choices


def _either(choices: Sequence[tuple[Ways, tuple[str, ...]]]) -> Ways:
    """Several ways of which one is taken. Where all come out they are as one, which stops at the last line."""
    if all(ways.all_of_them for ways, _ in choices):
        return Ways((Stop(choices[-1][0].stops[-1].spot),), True)
    stops = tuple(Stop(stop.spot, into + stop.conditions) for ways, into in choices for stop in ways.stops)
    return Ways(stops, False)


def unreached(steps: Iterable[Step]) -> Iterator[tuple[Step, Step]]:
    """Of each run of steps that nothing reaches, the first, with the step that all ways end at before it."""
    ending: Step | None = None
    for step in steps:
        if isinstance(step, Unread):
            continue
        if ending is not None:
            yield step, ending
            return
        if isinstance(step, Item | Notice):
            continue
        for inner in _inside(step):
            yield from unreached(inner)
        if not ways_of(step).stops:
            ending = step


def _inside(step: Step) -> Iterator[Sequence[Step]]:
    """The runs of steps inside a step that are done in turn."""
    match step:
        case Group(steps=inner) | Memory(steps=inner) | Repeat(steps=inner):
            yield inner
        case OneOf(inner):
            yield from ((one,) for one in inner)
        case Branch(arms):
            yield from (arm.steps for arm in arms)
        case _:
            pass
