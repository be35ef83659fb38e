"""A reading that has two colours."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from dotleader.handbook.gauges import end_text
from dotleader.handbook.model import Band, Gauge
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

BAD_1 = Example(
    """\
gauge Oil pressure in psi from unverified
  red .... below 30
  yellow .... 25 to 55
  green .... 50 to 95
""",
    (("bands-overlap", "yellow"), ("bands-overlap", "green")),
)

BAD_2 = Example(
    """\
gauge Engine speed in rpm from unverified
  green .... 600 to 2700
  red .... 2600
""",
    (("bands-overlap", "red"),),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  red .... below 25
  yellow .... 25 to 55
  green .... 55 to 95
  yellow .... 95 to 115
  red .... above 115

gauge Engine speed in rpm from unverified
  green .... 600 to 2700
  red .... 1900 to 2100
  red .... 2700

gauge Airspeed in KIAS from unverified
  white .... 46 to 87
  green .... 51 to 128
  blue .... 80

gauge Left fuel in US gal from unverified
  red .... 0
  yellow .... 0 to 4
"""
)

_BESIDE = ("white", "blue")
"""These lie beside the others: the flap range, and a climb speed with one engine."""
_BARRED = ("red", "yellow")
"""What may interrupt a wider arc: a range that is barred, or passed through quickly."""


def check(subject: Subject) -> Iterator[Finding]:
    for gauge in subject.handbook.gauges.values():
        bands = [band for band in gauge.bands if folded(band.colour) not in _BESIDE]
        told: set[int] = set()
        for at, (one, other) in enumerate(combinations(bands, 2)):
            later = other if other.spot.start >= one.spot.start else one
            if (
                id(later) not in told
                and _overlap(one, other)
                and not (_interrupts(one, other) or _interrupts(other, one))
            ):
                told.add(id(later))
                yield _finding(gauge, one if later is other else other, later, at)


def _ends(one: Band, other: Band) -> tuple[Fraction | None, Fraction | None]:
    """The range that both cover; None is an open end."""
    lows = [band.low for band in (one, other) if band.low is not None]
    highs = [band.high for band in (one, other) if band.high is not None]
    return max(lows, default=None), min(highs, default=None)


def _overlap(one: Band, other: Band) -> bool:
    low, high = _ends(one, other)
    if low is None or high is None or low < high:
        return not _is_line(one) and not _is_line(other)
    if low > high or _is_line(one) == _is_line(other):
        return low == high and _is_line(one) and (one.colour, one.low) == (other.colour, other.low)
    line, arc = (one, other) if _is_line(one) else (other, one)
    inside = (arc.low is None or arc.low < low) and (arc.high is None or low < arc.high)
    return inside and folded(line.colour) == "red" and folded(arc.colour) == "green"


def _is_line(band: Band) -> bool:
    return band.low is not None and band.low == band.high


def _interrupts(inner: Band, outer: Band) -> bool:
    if inner.low is None or inner.high is None or _is_line(inner) or folded(inner.colour) not in _BARRED:
        return False
    return (outer.low is None or outer.low < inner.low) and (outer.high is None or inner.high < outer.high)


def _finding(gauge: Gauge, first: Band, later: Band, rank: int) -> Finding:
    low, high = _ends(first, later)
    if low == high and low is not None:
        where = f"At {end_text(low, gauge.unit)}"
    elif low is None:
        where = f"Below {end_text(high, gauge.unit)}" if high is not None else "Everywhere"
    elif high is None:
        where = f"Above {end_text(low, gauge.unit)}"
    else:
        where = f"Between {end_text(low, None)} and {end_text(high, gauge.unit)}"
    return Finding(
        RULE.name,
        later.spot,
        f"{where} `{gauge.name}` is both {first.colour} ({first.shown}) and {later.colour} ({later.shown}).",
        "Let one end where the other begins; a border that both have is right.",
        (Related(first.spot, f"{first.colour.capitalize()} here."),),
        rank=rank,
    )


RULE = Rule(
    name="bands-overlap",
    severity=Severity.WARNING,
    family="numbers",
    what=(
        "Two coloured ranges of a gauge that share more than a border, or a red line inside the green. White and blue "
        "lie beside the others, and a red or yellow range that lies wholly inside another interrupts it: these are "
        "right."
    ),
    why="A needle that stands in two colours at once says nothing, and one of the two numbers is wrong.",
    source=(
        "14 CFR 25.1549 and 27.1549 (a) to (d), of which 23.1549 has the like: the normal range is never past the "
        "safe limits, and a barred range is a red arc (the two read, the last from memory)"
    ),
    mend="Compare the ranges with the engine's manual and with the face of the gauge.",
    bad=(BAD_1, BAD_2),
    good=(GOOD,),
    check=check,
)
