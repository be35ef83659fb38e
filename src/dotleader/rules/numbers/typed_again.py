"""A declared number that is typed on a card once more."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.amounts.quantity import Exact
from dotleader.rules.numbers.typed import Again
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity, swapped

_DECLARED = """\
speeds
  VG .... 82 KIAS  unverified
  VY .... 80 KIAS  unverified
  VNO .... 120 KIAS  unverified

values
  maximum weight .... at most 1,650 lb  unverified
  run-up rpm .... 1,800 rpm  unverified
  pump height .... 1,000 ft  unverified
  landing flaps .... 40 deg  unverified
  starter rest .... 60 s  unverified

gauge Oil pressure in psi from unverified
  red .... below 25
  green .... 55 to 95

equipment
  Flaps .... UP, 40 deg

"""

BAD = Example(
    _DECLARED
    + """\
normal Run-up
  when clear of others
  Throttle .... 1,800 rpm
  Oil pressure .... AT LEAST 55 psi

normal Descent
  when on the way down
  Airspeed .... 82 KIAS
    Or 80 KIAS in the climb.
  Loaded weight .... AT MOST 1,650 lb
""",
    (
        ("typed-again", "1,800 rpm"),
        ("typed-again", "55 psi"),
        ("typed-again", "82 KIAS"),
        ("typed-again", "80 KIAS"),
        ("typed-again", "1,650 lb"),
    ),
)

GOOD = Example(
    _DECLARED
    + """\
normal Climb
  when above 1,000 ft
  Airspeed .... {VY}
  Flaps .... 40 deg
  Throttle .... 1,800 rpm
  Starter .... REST, 60 s
  Wind .... BELOW 80 kt
  Airspeed .... 120 KIAS OR MORE
  Visibility .... 82 km
  Oil pressure .... 60 psi
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    for found in subject.typed():
        if not isinstance(found, Again):
            continue
        text = " ".join(found.spot.text.split())
        if found.gauge is not None:
            said = f"`{text}` is an end of a range of `{found.gauge.name}`, typed once more."
            related: tuple[Related, ...] = (Related(found.gauge.spot, "The gauge is declared here."),)
        else:
            names = " and ".join(f"`{value.name}`" for value in found.values)
            said = f"`{text}` is declared as {names}, and typed here once more."
            related = tuple(Related(value.spot, f"`{value.name}` is declared here.") for value in found.values)
        wanted = f"`{{{found.reference}}}`" if found.reference else "the one that is meant, in braces"
        exact = found.reference and found.values and isinstance(found.values[0].shape, Exact)
        yield Finding(
            RULE.name,
            found.spot,
            said,
            f"Write {wanted}, so that it changes with its declaration. If it is another number that happens to be "
            "equal, give it a name of its own, or allow this.",
            related,
            fix=swapped(found.spot, f"{{{found.reference}}}", safe=False) if exact else None,
        )


RULE = Rule(
    name="typed-again",
    severity=Severity.WARNING,
    family="numbers",
    what=(
        "A number with its unit on a card that equals a declared value of which the line speaks: an airspeed with its "
        "basis, or after the challenge `Airspeed`, and a round one only with a word of its name or meaning; any other "
        "where the line, with the title of its card, has the words of the value's name; an end of a range where the "
        "line names the gauge. Times, bare numbers and positions of controls are not looked at."
    ),
    why=(
        "When a test flight moves the number it is changed in its row and stays wrong on the card, and from then on "
        "the book says both."
    ),
    source=(
        "Common practice, no source; FAA SAFO 17006 (2017) asks that lists are compared line by line with the maker's "
        "list and the placards (read)"
    ),
    mend="Put the value's name in braces into its place.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
    fix="unsafe",
)
