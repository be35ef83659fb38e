"""A maneuvering speed at which the wing does not stall before it is overloaded."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from math import isqrt

from dotleader.handbook.amounts.numerals import number_text
from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Exact, Range
from dotleader.handbook.amounts.units import UNITS
from dotleader.handbook.model import Handbook
from dotleader.rules.numbers.known_speeds import Speed, known_speeds, out_of_order
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.thresholds import shown
from dotleader.source.finding import Finding, Related, Severity
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded

BAD_1 = Example(
    """\
speeds
  VS1 .... 51 KIAS  unverified
  VA .... 115 KIAS  unverified
""",
    (("maneuvering-speed-high", "VA"),),
)

BAD_2 = Example(
    """\
speeds
  VS1 .... 70 KIAS  unverified
  VA .... 147 KIAS  unverified

values
  load factor .... 3.8  unverified
""",
    (("maneuvering-speed-high", "VA"),),
)

BAD_3 = Example(
    """\
handbook Ostrel Two flight handbook
  categories .... normal, aerobatic

speeds
  VS1 .... 50 KIAS  unverified
  VA .... 103 KIAS  unverified
""",
    (("maneuvering-speed-high", "VA"),),
)

GOOD = Example(
    """\
speeds
  VS1 .... 51 KIAS  unverified
  VA .... {VS1} * root of ({load factor}) rounded down to 1 KIAS
  VA at 1,200 lb .... 84 KIAS  unverified

values
  load factor .... 4.4  unverified
"""
)

GOOD_AEROBATIC = Example(
    """\
handbook Ostrel Two flight handbook
  categories .... aerobatic

speeds
  VS1 .... 51 KIAS  unverified
  VA .... 124 KIAS  unverified
"""
)

GOOD_OTHER_BASIS = Example(
    """\
speeds
  VS1 .... 44 KIAS  unverified
  VA .... 99 KCAS  unverified
"""
)

_NORMAL = Fraction(19, 5)
_USUAL = (
    ("normal", _NORMAL),
    ("utility", Fraction(22, 5)),
    ("aerobatic", Fraction(6)),
    ("acrobatic", Fraction(6)),
)
"""The lowest first: of an aircraft in two categories the lower one holds at the weight that VS1 is given for."""
_GLIDER = re.compile(r"\b(?:motor ?|power(?:ed)? )?(?:glider|sailplane|soaring)s?\b|\btmg\b")
_SAILPLANE = Fraction(53, 10)
_BRAKES = ("airbrakes", "air brakes", "airbrake", "dive brakes", "spoilers")


def check(subject: Subject) -> Iterator[Finding]:
    slack = subject.limits.exact("maneuvering-speed-high") * UNITS["KIAS"].factor
    for by_symbol in known_speeds(subject.handbook).values():
        if "VS1" not in by_symbol or "VA" not in by_symbol:
            continue
        if any(speed.symbol in ("VS1", "VA") for wrong in out_of_order(by_symbol) for speed in wrong.all):
            continue
        factor, where = load_factor(subject.handbook)
        stall = max(by_symbol["VS1"], key=lambda speed: speed.amount)
        for speed in by_symbol["VA"]:
            least = speed.amount - slack
            if least > 0 and least * least > stall.amount * stall.amount * factor:
                yield _finding(speed, stall, factor, where)


def load_factor(handbook: Handbook) -> tuple[Fraction, Spot | None]:
    """The limit load factor and where it is declared; else that of the category, 3.8 where there is none."""
    declared = handbook.values.get("load factor")
    if declared is not None:
        match declared.shape:
            case Exact(quantity) | AtMost(quantity) | AtLeast(quantity) | Range(_, quantity):
                if quantity.number > 0:
                    return quantity.number, declared.spot
            case _:
                pass
    categories = folded(handbook.fact("categories"))
    usual = next((factor for word, factor in _USUAL if word in categories), _NORMAL)
    return (max(usual, _SAILPLANE) if is_glider(handbook) else usual), None


def is_glider(handbook: Handbook) -> bool:
    """Whether an aircraft soars: it says so, or has what keeps one from soaring on."""
    said = folded(f"{handbook.fact('categories')} {handbook.title} {handbook.fact('aircraft')}")
    return _GLIDER.search(said) is not None or any(key in handbook.controls for key in _BRAKES)


def _finding(speed: Speed, stall: Speed, factor: Fraction, where: Spot | None) -> Finding:
    square = (stall.amount / speed.unit.factor) ** 2 * factor * 100
    highest = Fraction(isqrt(square.numerator // square.denominator), 10)
    said = "" if where is not None else ", taken because `load factor` is not declared"
    related = [Related(stall.declared.spot, "The stalling speed that it rests on.")]
    if where is not None:
        related.append(Related(where, "The load factor."))
    name, unit = speed.declared.name, speed.unit.symbol
    return Finding(
        RULE.name,
        speed.declared.spot,
        f"`{name}`, {speed.declared.shown}, is above {number_text(highest)} {unit}: `{stall.declared.name}`, "
        f"{stall.declared.shown}, times the root of {shown(factor)}{said}.",
        f"Let it follow: `{name} .... {{{stall.declared.name}}} * root of ({{load factor}}) rounded down to 1 {unit}`.",
        tuple(related),
    )


RULE = Rule(
    name="maneuvering-speed-high",
    severity=Severity.WARNING,
    family="numbers",
    what=(
        "A VA that is more than 1 kt above VS1 times the root of the limit load factor, both speeds of one basis. The "
        "load factor is the value `load factor`; where it is not declared 3.8 is taken, 4.4 where the handbook's "
        "`categories` say utility, 6 where they say aerobatic (of several the lowest), and 5.3 for a glider with an "
        "engine. Of several rows of VS1 the highest counts."
    ),
    why="Up to VA a full pull stalls the wing before it breaks, and above that root it breaks first.",
    source=(
        "14 CFR 23.335(c) and 23.1507, as before amendment 23-64 (read as quoted in a preamble of the FAA); the load "
        "factors of gliders are those of CS-22 (from memory)"
    ),
    mend="Declare the load factor with its source and let VA be worked out, rounded down.",
    bad=(BAD_1, BAD_2, BAD_3),
    good=(GOOD, GOOD_AEROBATIC, GOOD_OTHER_BASIS),
    check=check,
)
