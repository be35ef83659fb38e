"""A challenge that calls a control by another name than its label."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Item
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.walking import every_step
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

BAD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
    also called .... boost pump

normal Before takeoff
  when holding short of the runway
  Boost pump .... ON
""",
    (("alias-used", "Boost pump"),),
)

GOOD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
    also called .... boost pump

normal Before takeoff
  when holding short of the runway
  Fuel pump .... ON
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    controls = subject.handbook.controls
    for card in subject.handbook.cards:
        for step in every_step(card.steps):
            for challenge in step.challenges if isinstance(step, Item) else ():
                written = challenge.phrase.written
                if not challenge.control or challenge.gauge or folded(written) == challenge.control:
                    continue
                control = controls[challenge.control]
                yield Finding(
                    RULE.name,
                    challenge.phrase.spot,
                    f"`{written}` is another name of `{control.name}`.",
                    f"Write `{control.name}`, the name that stands beside it.",
                    (Related(control.spot, f"`{control.name}` is declared here, with its other names."),),
                )


RULE = Rule(
    name="alias-used",
    severity=Severity.WARNING,
    family="wording",
    what="A challenge that names a control by one of its `also called` names.",
    why="Under stress the eye looks for the word that the card says, and the panel shows another.",
    source="FAA AC 120-71B (2017) 5.4, that the challenge copies the panel label (read in a summary)",
    mend="Write the declared name. Where the panel says the other word, declare the control by that one.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
