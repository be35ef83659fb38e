"""An approach far above the stall."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.numbers.known_speeds import known_speeds
from dotleader.rules.numbers.slow_approach import stall_to_compare
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.thresholds import shown
from dotleader.source.finding import Finding, Related, Severity

BAD = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VREF .... 74 KIAS  unverified

normal Landing
  when on final
  Airspeed .... {VREF}
""",
    (("fast-approach", "VREF"),),
)

GOOD = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VREF (draggy biplane) .... 69 KIAS  unverified
  VREF flaps up .... 80 KIAS  unverified

normal Landing
  when on final
  Airspeed .... {VREF}
    Without flaps {VREF flaps up}.
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    most = subject.limits.exact("fast-approach")
    for by_symbol in known_speeds(subject.handbook).values():
        usual = [speed for speed in by_symbol.get("VREF", ()) if speed.plain]
        if not usual or stall_to_compare(by_symbol) is None:
            continue
        speed = min(usual, key=lambda each: each.amount)
        stall = max(by_symbol["VS0"], key=lambda each: each.amount)
        if speed.amount > most * stall.amount:
            yield Finding(
                RULE.name,
                speed.declared.spot,
                f"`{speed.declared.name}`, {speed.declared.shown}, is more than {shown(most)} times "
                f"`{stall.declared.name}`, {stall.declared.shown}.",
                "Look up which of them is meant for which flap setting, and whether VS0 has a large position error: "
                "then declare both in KCAS.",
                (Related(stall.declared.spot, "The stalling speed that it rests on."),),
            )


RULE = Rule(
    name="fast-approach",
    severity=Severity.NOTE,
    family="numbers",
    what=(
        "A VREF above 1.5 times VS0, both of one basis. A VREF with a setting behind its symbol (`VREF flaps up`) is "
        "not looked at; of several rows of VS0 the highest counts."
    ),
    why="Speed that is carried over the threshold is runway that is missing at its end.",
    source="FAA AC 90-89A page 46, 1.3 to 1.4 times the stall, 1.5 for biplanes with much drag (read)",
    mend="Correct the one that is wrong, or allow the note and say why the aircraft wants that speed.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
