"""Limiting speeds and stalling speeds that contradict one another."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.numbers.known_speeds import known_speeds, out_of_order
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

BAD_1 = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VS1 .... 51 KIAS  unverified
  VFE .... 87 KIAS  unverified
  VA .... 99 KIAS  unverified
  VNO .... 82 KIAS  unverified
  VNE .... 160 KIAS  unverified
""",
    (("speeds-out-of-order", "VNO"),),
)

BAD_2 = Example(
    """\
speeds
  VS0 .... 64 KIAS  unverified
  VS1 .... 51 KIAS  unverified
""",
    (("speeds-out-of-order", "VS0"),),
)

BAD_3 = Example(
    """\
speeds
  VFE at 10 deg .... 87 KIAS  unverified
  VFE at 40 deg .... 100 KIAS  unverified
""",
    (("speeds-out-of-order", "VFE at 40 deg"),),
)

BAD_4 = Example(
    """\
speeds
  VS1 .... 130 KIAS  unverified
  VA .... {VS1} * root of (3.8) rounded down to 1 KIAS
  VNO .... 125 KIAS  unverified
  VNE .... 158 KIAS  unverified
""",
    (("speeds-out-of-order", "VS1"),),
)

GOOD = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VS1 .... 46 KIAS  unverified
  VFE at 10 deg .... 130 KIAS  unverified
  VFE at 40 deg .... 87 KIAS  unverified
  VA at 1,650 lb .... 99 KIAS  unverified
  VA at 1,200 lb .... 84 KIAS  unverified
  VNO .... 128 KIAS  unverified
  VNE .... 160 KIAS  unverified
"""
)

GOOD_OTHER_BASIS = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VS1 .... 44 KCAS  unverified
  VNE .... 150 mph IAS  unverified
  VNO .... 130 KCAS  unverified
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    for by_symbol in known_speeds(subject.handbook).values():
        for wrong in out_of_order(by_symbol):
            name, shown = wrong.speed.declared.name, wrong.speed.declared.shown
            others = [f"below `{high.declared.name}`, {high.declared.shown}" for high in wrong.not_below]
            others += [f"above `{low.declared.name}`, {low.declared.shown}" for low in wrong.not_above]
            yield Finding(
                RULE.name,
                wrong.speed.declared.spot,
                f"`{name}`, {shown}, does not stand {'; nor '.join(others)}.",
                "One of them is a slip, or was measured with another instrument. Look each up in its source.",
                tuple(
                    Related(other.declared.spot, f"{other.declared.shown} here.")
                    for other in (*wrong.not_below, *wrong.not_above)
                ),
            )


RULE = Rule(
    name="speeds-out-of-order",
    severity=Severity.WARNING,
    family="numbers",
    what=(
        "Declared speeds that are not in the order of their meaning: VS0, VS1, VA, VNO, VNE upwards, VFE above VS0, "
        "and the lowest VFE not above VNO. Speeds of one basis are compared, KIAS with KIAS; of several rows with one "
        "symbol, for two weights or two flap settings, the one that fits best. VS0 and VS1 may be equal. And a VFE "
        "`at` more degrees that is above one at less."
    ),
    why=(
        "The arcs of the airspeed indicator are painted from these numbers, and one that is out of order makes a range "
        "in which the aircraft cannot be flown, or not safely."
    ),
    source=(
        "14 CFR 23.1545(b), as before amendment 23-64, of which arc ends at which speed, and the Pilot's Handbook of "
        "Aeronautical Knowledge (FAA-H-8083-25) on the airspeed indicator (both read)"
    ),
    mend="Compare the rows with the test cards and the kit manual, digit by digit.",
    bad=(BAD_1, BAD_2, BAD_3, BAD_4),
    good=(GOOD, GOOD_OTHER_BASIS),
    check=check,
)
