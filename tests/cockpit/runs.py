"""Short ways to a run in tests."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.cockpit.moving import Already, Astray, Change, Unmet
from dotleader.cockpit.running import run
from dotleader.cockpit.timeline import CardRun, Met, Run
from tests.handbook.texts import resolved


def ran(text: str) -> Run:
    """The run of a text that has nothing wrong with it."""
    handbook, findings = resolved(text)
    assert not findings, [(finding.rule, finding.message) for finding in findings]
    return run(handbook)


def card(done: Run, title: str) -> CardRun:
    return next(one for one in done.cards if one.card.title == title)


def told(one: CardRun) -> list[str]:
    """What the items of a card met, a line each: `Pump: OFF > ON`."""
    return [f"{line.item.challenge}: {', '.join(map(_said, line.met))}".rstrip(": ") for line in one.lines]


def _said(met: Met) -> str:
    sometimes = "" if met.always else "?"
    match met.what:
        case Change(control, before, after, by):
            return f"{control} {before or '-'} > {after}{f' by {by}' if by else ''}{sometimes}"
        case Already(control, position, first):
            return f"{control} is {position}{' first' if first else ''}{sometimes}"
        case Unmet(control, position):
            return f"{control} cannot be {position}{sometimes}"
        case Astray(control, said, stands):
            return f"{control} is not {said} but {stands}{sometimes}"


def stands(done: Run, states: Iterable[tuple[str, ...]], *controls: str) -> set[tuple[str, ...]]:
    """The positions of some controls in some states of the whole cockpit."""
    return {tuple(done.cockpit.position(state, control) for control in controls) for state in states}
