"""Memory items on a normal card."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Kind, Memory
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
normal Before takeoff
  when holding short of the runway
  memory
    Fuel pump .... ON
    Trim .... TAKEOFF MARK
""",
    (("memory-on-normal-card", "memory"),),
)

GOOD = Example(
    """\
normal Before takeoff
  when holding short of the runway
  Fuel pump .... ON
  Trim .... TAKEOFF MARK
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        if card.kind is not Kind.NORMAL:
            continue
        for step in every_step(card.steps):
            if isinstance(step, Memory):
                yield Finding(
                    RULE.name,
                    step.spot,
                    f"`{card.title}` is a normal card and has memory items.",
                    "Take the `memory` line out and indent its items like the others. A drill that cannot wait for "
                    "the card is an `emergency` or `abnormal` card.",
                )


RULE = Rule(
    name="memory-on-normal-card",
    severity=Severity.ERROR,
    family="form",
    what="A `memory` block on a normal card.",
    why=(
        "Normal checklists are there so that nobody relies on memory; a box of memory items says that they "
        "may be done without the card."
    ),
    source=(
        "FAA P-8740-29, that normal lists are not to be memorised and the immediate-action items of "
        "emergencies are; 14 CFR 121.315(c), that procedures must not rely on memory"
    ),
    mend="Take the `memory` line out; make an emergency or abnormal card of what has to be done at once.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
