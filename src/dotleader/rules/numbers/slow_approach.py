"""An approach too close to the stall."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.numbers.known_speeds import Speed, known_speeds, out_of_order
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.thresholds import shown
from dotleader.source.finding import Finding, Related, Severity

BAD = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VREF .... 58 KIAS  unverified

normal Landing
  when on final
  Airspeed .... {VREF}
""",
    (("slow-approach", "VREF"),),
)

GOOD = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VREF .... 1.3 * {VS0} rounded up to 1 KIAS
  VREF flaps up .... 67 KIAS  unverified

normal Landing
  when on final
  Airspeed .... {VREF}
    Without flaps {VREF flaps up}.
"""
)

GOOD_OTHER_BASIS = Example(
    """\
speeds
  VS0 .... 50 KCAS  unverified
  VREF .... 60 KIAS  unverified

normal Landing
  when on final
  Airspeed .... {VREF}
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    least = subject.limits.exact("slow-approach")
    for by_symbol in known_speeds(subject.handbook).values():
        stall = stall_to_compare(by_symbol)
        if stall is None:
            continue
        for speed in by_symbol["VREF"]:
            if speed.amount < least * stall.amount:
                name = speed.declared.name
                yield Finding(
                    RULE.name,
                    speed.declared.spot,
                    f"`{name}`, {speed.declared.shown}, is less than {shown(least)} times `{stall.declared.name}`, "
                    f"{stall.declared.shown}.",
                    f"Let it follow: `{name} .... {shown(least)} * {{{stall.declared.name}}} rounded up to 1 "
                    f"{speed.unit.symbol}`.",
                    (Related(stall.declared.spot, "The stalling speed that it rests on."),),
                )


def stall_to_compare(by_symbol: dict[str, list[Speed]]) -> Speed | None:
    """The lowest VS0, where there is a VREF beside it and neither of them is out of order in itself."""
    if "VS0" not in by_symbol or "VREF" not in by_symbol:
        return None
    if any(speed.symbol in ("VS0", "VREF") for wrong in out_of_order(by_symbol) for speed in wrong.all):
        return None
    return min(by_symbol["VS0"], key=lambda speed: speed.amount)


RULE = Rule(
    name="slow-approach",
    severity=Severity.WARNING,
    family="numbers",
    what=(
        "A VREF, however it is called behind its symbol, below 1.3 times VS0, both of one basis; of several rows of "
        "VS0 the lowest counts."
    ),
    why="The margin to the stall is what a gust, a turn and a look at the runway take from.",
    source=(
        "14 CFR 23.73, as before amendment 23-64, VREF not below 1.3 VS0 (read in part); FAA AC 90-89A page 46, first "
        "approaches at 1.3 to 1.4 times the stall (read)"
    ),
    mend=(
        "Work it out from VS0 and round it up. Where a position error of the airspeed system is the reason, declare "
        "both speeds in KCAS."
    ),
    bad=(BAD,),
    good=(GOOD, GOOD_OTHER_BASIS),
    check=check,
)
