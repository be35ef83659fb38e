"""A gauge that is declared and on no card."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

gauge Oil temperature in degC from unverified
  green .... 38 to 110

normal Run-up
  Oil pressure .... IN GREEN
""",
    (("gauge-on-no-card", "Oil temperature"),),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

gauge Oil temperature in degC from unverified
  green .... 38 to 110

normal Run-up
  Oil pressure .... IN GREEN
  Oil temperature .... AT LEAST {Oil temperature green low}
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    if handbook.loose and not handbook.cards:
        return  # declarations to be included somewhere: their cards are not at hand
    named = {mention.key for mention in handbook.mentions if mention.kind == "gauge"}
    for key, gauge in handbook.gauges.items():
        if key not in named:
            yield Finding(
                RULE.name,
                gauge.spot,
                f"`{gauge.name}` is declared and on no card.",
                f"Write an item for it where it is read, or refer to its ranges: `{{{gauge.name} green}}`.",
            )


RULE = Rule(
    name="gauge-on-no-card",
    severity=Severity.WARNING,
    family="references",
    what="A gauge that no item, reference or `read on` row names.",
    why="Its ranges were declared to be held to, and no card asks anybody to look.",
    source=NO_SOURCE,
    mend="Write an item for it where it is read, or refer to its ranges: `{Oil pressure green}`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
