"""Needs that do not hold where an item moves a control: the findings of two rules."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.moving import Unmet
from dotleader.cockpit.timeline import CardRun, LineRun, Met
from dotleader.handbook.model import Handbook
from dotleader.rules.cockpit.tracing import Moment, alternatives, conditions, last_moved, last_moved_at, moment
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related


def unmet(subject: Subject, rule: str, *, by_go_to: bool) -> Iterator[Finding]:
    """A finding for each need that does not hold, on cards that are called for or, `by_go_to`, are led to.

    What is at hand only before the first item of a phase is left out: nothing of the phase has been done then.
    """
    done = subject.run()
    for ran in done.cards:
        on_line = ran in done.main
        before = done.main[: done.main.index(ran)] if on_line else ()
        for line in ran.lines:
            for met in line.met:
                if not isinstance(met.what, Unmet) or (met.origin.came_by is not None) != by_go_to:
                    continue
                when = moment(done, ran, line, met, subject.handbook)
                if when is not None and not _under_one_condition((*before, ran), line, met, met.what):
                    yield _finding(rule, (*before, ran), line, met, met.what, when, subject.handbook)


def _under_one_condition(cards: tuple[CardRun, ...], line: LineRun, met: Met, what: Unmet) -> bool:
    """Whether what is needed was seen to under the same condition: `ON if cold` goes with an earlier `if cold`."""
    if met.always:
        return False
    here = conditions(line.item, cards[-1].card)
    for key, _ in what.need.alternatives:
        mover = last_moved_at(cards, key, line.item)
        if mover is not None and not here.isdisjoint(conditions(mover[1], mover[0])):
            return True
    return False


def _finding(
    rule: str,
    cards: tuple[CardRun, ...],
    line: LineRun,
    met: Met,
    what: Unmet,
    when: Moment,
    handbook: Handbook,
) -> Finding:
    ran = cards[-1]
    name = handbook.controls[what.control].name
    needed = alternatives(what.need.alternatives, handbook.controls)
    now = " and ".join(
        f"`{handbook.controls[key].name}` is {ran.cockpit.position(when.state, key)}"
        for key in dict.fromkeys(key for key, _ in what.need.alternatives)
    )
    related = [Related(what.need.spot, f"`{name}` needs {needed}.")]
    for key, _ in what.need.alternatives:
        mover = last_moved(cards, key, line.item)
        if mover is not None:
            related.append(
                Related(mover.spot, f"`{handbook.controls[key].name}` is moved here, by `{short(mover.challenge)}`.")
            )
    if met.origin.came_by is not None:
        related.append(Related(met.origin.came_by[0].spot, "From here the card is led to."))
    return Finding(
        rule,
        line.item.spot,
        f"`{name}` does not go to `{what.position}` here{when.words}: it needs {needed}, and {now}.",
        f"Move this line to where {needed} holds, or see to that before it; or put right what `{name}` needs.",
        tuple(related),
    )
