"""A challenge that calls a control by another name than its label."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity, swapped
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
    for _, item in subject.lines().printed:
        for challenge in item.challenges:
            written = challenge.phrase.written
            if challenge.control and not challenge.gauge and folded(written) != challenge.control:
                control = controls[challenge.control]
                yield Finding(
                    RULE.name,
                    challenge.phrase.spot,
                    f"`{written}` is another name of `{control.name}`.",
                    f"Write `{control.name}`, the name that stands beside it.",
                    (Related(control.spot, f"`{control.name}` is declared here, with its other names."),),
                    fix=swapped(challenge.phrase.spot, control.name, safe=False),
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
    fix="unsafe",
)
