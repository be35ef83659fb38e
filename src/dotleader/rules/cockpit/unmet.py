"""Needs that do not hold where an item moves a control: the findings of two rules."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator

from dotleader.cockpit.certain import Certain
from dotleader.cockpit.moving import Unmet
from dotleader.cockpit.timeline import Mover, Occasion, Run
from dotleader.handbook.model import Handbook
from dotleader.handbook.phases import ORDER
from dotleader.rules.cockpit.tracing import Moment, alternatives, conditions, last_moved, moment
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related
from dotleader.source.record import record

_SHOWN = 3  # further lines that a finding names


@record
class _Case:
    """A need that does not hold, and when."""

    occasion: Occasion
    what: Unmet
    when: Moment


def unmet(subject: Subject, rule: str, *, by_go_to: bool) -> Iterator[Finding]:
    """A finding for each thing that is needed and not so, on cards that are called for or, `by_go_to`, are led to.

    What is at hand only before the first item of a phase is left out: nothing of the phase has been done then. A
    switch that nobody has put ON is one fault, however many lines need it.
    """
    done = subject.run()
    faults: dict[object, list[_Case]] = {}
    for case in _cases(done, subject.handbook, by_go_to=by_go_to):
        faults.setdefault(_cause(done, case), []).append(case)
    for first, *further in faults.values():
        yield _finding(rule, done, first, further, subject.handbook)


def _cases(done: Run, handbook: Handbook, *, by_go_to: bool) -> Iterator[_Case]:
    certain = Certain(done)
    for occasion in done.occasions.unmet:
        what, met = occasion.met.what, occasion.met
        if not isinstance(what, Unmet) or (met.origin.came_by is not None) != by_go_to:
            continue
        when = moment(certain, occasion, handbook)
        if when is not None and not _under_one_condition(done, occasion, what):
            yield _Case(occasion, what, when)


def _under_one_condition(done: Run, occasion: Occasion, what: Unmet) -> bool:
    """Whether what is needed was seen to under the same condition: `ON if cold` goes with an earlier `if cold`."""
    if occasion.met.always:
        return False
    here = conditions(occasion.line.item, occasion.ran.card)
    for key, _ in what.need.alternatives:
        mover = last_moved(done, occasion, key)
        if mover is not None and not here.isdisjoint(conditions(mover.item, mover.card)):
            return True
    return False


def _cause(done: Run, case: _Case) -> object:
    """What two cases have in common that follow from one fault: what is needed, and what has made it not so."""
    came_by = case.occasion.met.origin.came_by
    phase = case.when.phase or (case.occasion.ran.card.phase if case.occasion.place < 0 else "")  # of a side line
    made: list[object] = [id(came_by[0])] if came_by is not None else []
    for key, _ in case.what.need.alternatives:
        mover = last_moved(done, case.occasion, key) or _moved_before(done, key, phase)
        made.append(id(mover.item) if mover is not None else None)
    return case.what.need.alternatives, tuple(made)


def _moved_before(done: Run, control: str, phase: str) -> Mover | None:
    """What moved a control last up to the end of the phase in which a card is called for."""
    movers = done.occasions.movers.get(control, ()) if phase else ()
    at = bisect_right(movers, ORDER.get(phase, 0), key=lambda mover: ORDER[done.main[mover.place].phase])
    return movers[at - 1] if at > 0 else None


def _finding(rule: str, done: Run, case: _Case, further: list[_Case], handbook: Handbook) -> Finding:
    occasion, what, when = case.occasion, case.what, case.when
    name = handbook.controls[what.control].name
    needed = alternatives(what.need.alternatives, handbook.controls)
    now = " and ".join(
        f"`{handbook.controls[key].name}` is {occasion.ran.cockpit.position(when.state, key)}"
        for key in dict.fromkeys(key for key, _ in what.need.alternatives)
    )
    related = [Related(what.need.spot, f"`{name}` needs {needed}.")]
    for key, _ in what.need.alternatives:
        mover = last_moved(done, occasion, key)
        if mover is not None:
            words = f"`{handbook.controls[key].name}` is moved here, by `{short(mover.item.challenge)}`."
            related.append(Related(mover.item.spot, words))
    if occasion.met.origin.came_by is not None:
        related.append(Related(occasion.met.origin.came_by[0].spot, "From here the card is led to."))
    here = occasion.line.item.spot
    others = {other.occasion.line.item.spot: other.what for other in further}
    others.pop(here, None)  # an item over two controls
    for spot, other in list(others.items())[:_SHOWN]:
        words = f"`{handbook.controls[other.control].name}` does not go to `{other.position}` here either."
        related.append(Related(spot, words))
    many = f" So it is with {len(others)} further line{'s' if len(others) > 1 else ''}." if others else ""
    return Finding(
        rule,
        here,
        f"`{name}` does not go to `{what.position}` here{when.words}: it needs {needed}, and {now}.{many}",
        f"Move this line to where {needed} holds, or see to that before it; or put right what `{name}` "
        f"needs{_in_one_position(what, handbook)}.",
        tuple(related),
    )


def _in_one_position(what: Unmet, handbook: Handbook) -> str:
    """How to say that a control can be put back without what it needs, where that is the likely mistake."""
    control = handbook.controls[what.control]
    others = [position for position in control.positions if position != control.parked]
    if what.need.moved_to or what.position != control.parked or len(others) != 1:
        return ""
    return f": where `{what.position}` needs nothing, write `needs for {others[0]}`"
