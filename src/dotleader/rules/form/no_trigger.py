"""A card that does not say when it is called for."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
normal Descent
  Altimeter .... QNH, READ ALOUD
  Landing light .... ON
""",
    (("no-trigger", "Descent"),),
)

GOOD = Example(
    """\
normal Descent
  when ten minutes from the airfield
  Altimeter .... QNH, READ ALOUD
  Landing light .... ON
""",
)

_SAMPLES = {
    "normal": "when holding short of the runway, run-up complete",
    "abnormal": "when the oil temperature is above the green",
    "emergency": "when the engine stops or loses most of its power",
}


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        if card.when is None:
            yield Finding(
                RULE.name,
                card.spot,
                f"`{card.title}` does not say when it is called for.",
                f"Say below the title what is seen or heard then: `{_SAMPLES[card.kind.value]}`.",
            )


RULE = Rule(
    name="no-trigger",
    severity=Severity.WARNING,
    family="form",
    what="A card without a `when` line.",
    why="A checklist that no clear cue calls for is easily begun too late, or forgotten.",
    source="FAA AC 120-71B (2017) 5.1.5, that a checklist starts at a clear external cue (read in a summary)",
    mend="Say below the title what is seen or heard when the card is called for: `when holding short of the runway`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
