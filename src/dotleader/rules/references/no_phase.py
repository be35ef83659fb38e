"""A normal card that fits no phase of a flight."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Kind
from dotleader.rules.coverage.missing_phase import LISTS
from dotleader.rules.coverage.unplaced import unplaced
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
normal Mountain flying
  Oxygen .... ON
""",
    (("no-phase", "Mountain flying"),),
)

GOOD = Example(
    """\
normal Mountain flying
  phase cruise
  Oxygen .... ON

normal Go-around
  during approach, landing
  Throttle .... FULL
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    served = {card.phase for card in handbook.cards if card.kind is Kind.NORMAL}
    for card, between in unplaced(handbook):
        free = [phases[0] for phases, _ in LISTS.values() if phases[0] in between and served.isdisjoint(phases)]
        yield Finding(
            RULE.name,
            card.spot,
            f"`{card.title}` fits no phase of a flight.",
            f"Say the phase below the title, such as `phase {free[0] if len(free) == 1 else 'cruise'}`, "
            "or with `during` when it can be called for.",
        )


RULE = Rule(
    name="no-phase",
    severity=Severity.WARNING,
    family="references",
    what="A normal card whose title means no phase, and that has neither a `phase` nor a `during` line.",
    why="A card in no phase stands nowhere in the order of a flight, and nothing says when to take it in hand.",
    source=NO_SOURCE,
    mend=(
        "Say the phase below the title, `phase cruise`; or, for a card off the main line, with `during` the phases in "
        "which it can be called for. Titles that mean a phase by themselves are listed in docs/language.md."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
