"""A typed number that contradicts the declared one that its line names."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.numbers.typed import Otherwise
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_DECLARED = """\
speeds
  VG .... 82 KIAS  unverified
  VFE at 10 deg .... 100 KIAS  unverified
  VNE .... 160 KIAS  unverified

values
  climb rpm .... 2,500 rpm  unverified
  baggage limit .... at most 60 lb  unverified
  tyre pressure .... 36 +/- 2 psi  unverified

"""

BAD = Example(
    _DECLARED
    + """\
emergency Forced landing
  when no engine and no runway in reach
  memory
    Airspeed .... BEST GLIDE, 80 KIAS
  Seat belts .... TIGHT
  end

normal Climb
  when clear of the ground
  Climb rpm .... 2,400 rpm
  Baggage limit .... 70 lb
  Airspeed .... VG IS 85 KIAS
""",
    (
        ("typed-otherwise", "80 KIAS"),
        ("typed-otherwise", "2,400 rpm"),
        ("typed-otherwise", "70 lb"),
        ("typed-otherwise", "85 KIAS"),
    ),
)

GOOD = Example(
    _DECLARED
    + """\
emergency Forced landing
  when no engine and no runway in reach
  memory
    Airspeed .... BEST GLIDE, {VG}
  Airspeed .... VG PLUS 10 KIAS
    Into a strong wind.
  Airspeed .... 75 KIAS
    Never exceed 87 KIAS with the canopy open.
  Baggage limit .... 50 lb WITH FULL TANKS
  Tyre pressure .... 37 psi
  Airspeed .... BEST GLIDE, 94 mph
  Best glide .... FOR 2 min
  Climb .... NOT ABOVE 2,400 rpm
  end
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    for found in subject.typed():
        if isinstance(found, Otherwise):
            value = found.value
            yield Finding(
                RULE.name,
                found.spot,
                f"`{' '.join(found.spot.text.split())}` is typed where the line names `{value.name}`, which is "
                f"declared as {value.shown}.",
                f"Write `{{{value.name}}}`, or say whose number this is.",
                (Related(value.spot, "It is declared here."),),
            )


RULE = Rule(
    name="typed-otherwise",
    severity=Severity.WARNING,
    family="numbers",
    what=(
        "A typed number on a line that names a declared value (by its name, its symbol, or what the symbol means, as "
        "in `BEST GLIDE, 80 KIAS`) and contradicts it: another number, one above what is `at most`, or one outside "
        "its range. Not where something is added to the value (`VG PLUS 10 KIAS`), and not where it is referred to as "
        "well."
    ),
    why=(
        "The book says two things of one number; the FAA tells of a bought list that had lost steps and a caution of "
        "the maker's, and of the landing gear that collapsed."
    ),
    source="FAA SAFO 17006 (2017), that lists are compared line by line with the maker's list and placards (read)",
    mend="Look up which of the two is right, correct the declaration if it is the wrong one, and refer to it.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
