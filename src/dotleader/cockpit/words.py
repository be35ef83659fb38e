"""What a run says in words: how a control moved, where it was so already, and how the cockpit stands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

from dotleader.cockpit.moving import Already, Astray, Change, Unmet
from dotleader.cockpit.state import Cockpit, State
from dotleader.cockpit.timeline import CardRun, LineRun, Met
from dotleader.source.record import record

UNKNOWN = "anywhere"
"""Where a control stands of which nobody knows it."""


@record
class Said:
    """What happened to one control at an item. `moved` where it changed its place at least once, `amiss` where
    something is not as the item has it."""

    control: str
    words: str
    moved: bool
    amiss: bool = False


def said(line: LineRun, cockpit: Cockpit, arrow: str = "→") -> Iterator[Said]:
    """What an item did, a line for each control, in the order in which it came to them."""
    by_control: dict[str, list[Met]] = {}
    for met in line.met:
        by_control.setdefault(met.what.control, []).append(met)
    for key, some in by_control.items():
        name = cockpit.controls[key].name
        changes = [met for met in some if isinstance(met.what, Change)]
        already = [met for met in some if isinstance(met.what, Already) and not met.what.first]
        if changes:
            yield Said(name, _moved(changes, already, arrow), True)
        elif already:
            yield Said(name, f"{_either(str(_already(met).position) for met in already)} already", False)
        for met in some:
            match met.what:
                case Unmet(position=position, need=need):
                    names = [f"{cockpit.controls[other].name} {wanted}" for other, wanted in need.alternatives]
                    yield Said(name, f"{position} needs {_either(names)}, which is not so{_seldom(met)}", False, True)
                case Astray(said=words, stands=stands):
                    yield Said(name, f"is said to stay {words} and stands at {stands}{_seldom(met)}", False, True)
                case Already(position=position, first=True):
                    yield Said(name, f"{position} already, before it is moved{_seldom(met)}", False)
                case _:
                    pass


def _already(met: Met) -> Already:
    assert isinstance(met.what, Already)
    return met.what


def _moved(changes: list[Met], already: list[Met], arrow: str) -> str:
    steps = [(met.what.before, met.what.after) for met in changes if isinstance(met.what, Change)]
    if all(met.always for met in changes) and all(one[1] == next_[0] for one, next_ in pairwise(steps)):
        return f" {arrow} ".join([steps[0][0] or UNKNOWN, *(after for _, after in steps)])
    ways: dict[str, list[str]] = {}
    for before, after in steps:
        ways.setdefault(before, []).append(after)
    to: dict[str, list[str]] = {}  # from where, by where to
    for before, afters in ways.items():
        to.setdefault(_either(afters), []).append(before or UNKNOWN)
    words = "; ".join(f"{_either(befores)} {arrow} {after}" for after, befores in to.items())
    if already:
        return f"{words}; or {_either(_already(met).position for met in already)} already"
    return words if all(met.always for met in changes) or len(steps) > 1 else f"{words}, or not at all"


def _either(words: Iterable[str]) -> str:
    return " or ".join(dict.fromkeys(words))


def _seldom(met: Met) -> str:
    return "" if met.always else " (not always)"


def standing(states: Iterable[State], cockpit: Cockpit) -> Iterator[tuple[str, str]]:
    """Each control that is not known to be parked, with where it may stand; options are none."""
    states = tuple(states)
    for key, place in cockpit.places.items():
        if key not in cockpit.controls:
            continue
        positions = dict.fromkeys(state[place] for state in states)
        if list(positions) not in ([cockpit.parked[place]], [""]):
            yield cockpit.controls[key].name, _either(position or UNKNOWN for position in positions)


def unknown(states: Iterable[State], cockpit: Cockpit) -> Iterator[tuple[str, bool]]:
    """Each control of which nobody knows where it stands, and whether it is declared where it is parked."""
    states = tuple(states)
    for key, place in cockpit.places.items():
        if key in cockpit.controls and not any(state[place] for state in states):
            yield cockpit.controls[key].name, bool(cockpit.controls[key].parked)


def ends_with(ran: CardRun) -> tuple[State, ...]:
    """The states in which a card is left, by its end and by every `go to`."""
    found = dict.fromkeys(ran.after)
    for _, states in ran.leaps:
        found |= dict.fromkeys(states)
    return tuple(found)
