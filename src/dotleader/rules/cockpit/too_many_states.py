"""The cards leave more ways open than a run follows."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.state import MOST_STATES
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

_CONTROLS = "equipment\n" + "".join(f"  Switch {number} .... OFF, ON\n    parked .... OFF\n" for number in range(1, 15))
_ITEMS = "\nnormal Before start\n  when seated\n" + "".join(
    f"  Switch {number} .... ON{{how}}\n" for number in range(1, 15)
)

BAD = Example(_CONTROLS + _ITEMS.replace("{how}", " if wanted"), (("too-many-states", "Switch 14 .... ON if wanted"),))
GOOD = Example(_CONTROLS + _ITEMS.replace("{how}", ""))


def check(subject: Subject) -> Iterator[Finding]:
    for spot in dict.fromkeys(subject.run().full):
        yield Finding(
            RULE.name,
            spot,
            f"From here on the cockpit can stand in more than {MOST_STATES:,} ways, and not all of them are followed.",
            "Let conditions that belong together stand in one `if`, and let controls come together again before this.",
        )


RULE = Rule(
    name="too-many-states",
    severity=Severity.NOTE,
    family="cockpit",
    what=(
        f"A line after which the controls can stand in more than {MOST_STATES:,} ways, because conditions are many. "
        "The first so many are followed on; what is found in the cockpit from there on may be too little."
    ),
    why="Whoever relies on the run has to know where it did not look everywhere.",
    source=NO_SOURCE,
    mend="Put conditions that go together into one `if`, or let a card put the controls where they belong.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
