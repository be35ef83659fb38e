"""A reading between two arcs that has no colour."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from dotleader.handbook.gauges import end_text
from dotleader.handbook.model import Band
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

BAD = Example(
    """\
gauge Oil pressure in psi from unverified
  red .... below 25
  yellow .... 30 to 50
  green .... 55 to 95
""",
    (("gap-between-bands", "yellow"), ("gap-between-bands", "green")),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  red .... below 25
  yellow .... 25 to 55
  green .... 55 to 95
  red .... 100

gauge Battery in V from unverified
  red .... below 11.5
  green .... 12 to 14.4

gauge Engine speed in rpm from unverified
  green .... 600 to 2400
  red .... above 2550

gauge Propeller speed in rpm from unverified
  green .... 700 to 1000
  green .... 1800 to 2500

gauge Cabin height in ft from unverified
  white .... 0 to 5000
  yellow .... 8000 to 10000
"""
)

_ARCS = ("red", "yellow", "green")


def check(subject: Subject) -> Iterator[Finding]:
    for gauge in subject.handbook.gauges.values():
        arcs = [band for band in gauge.bands if folded(band.colour) in _ARCS]
        upwards = sorted(arcs, key=lambda band: (band.low is not None, band.low or 0, band.high or 0))
        for lower, upper in pairwise(upwards):
            if lower.high is None or upper.low is None or not lower.high < upper.low:
                continue
            if folded(lower.colour) == folded(upper.colour):
                continue  # two ranges of one kind, such as for idling and for cruise, need not meet
            if _is_arc(lower, upper) and _is_arc(upper, lower) and not _covered(arcs, lower, upper):
                first, later = sorted((lower, upper), key=lambda band: band.spot.start)
                yield Finding(
                    RULE.name,
                    later.spot,
                    f"Between {end_text(lower.high, None)} and {end_text(upper.low, gauge.unit)} `{gauge.name}` has no "
                    "colour.",
                    "Let one range begin where the other ends, as the face of the gauge has it.",
                    (Related(first.spot, f"{first.colour.capitalize()}, {first.shown}, here."),),
                )


def _is_arc(band: Band, neighbour: Band) -> bool:
    """Whether it reaches to its neighbour: a limit, which a line or an open range is, need not where that is green."""
    if band.low is not None and band.low == band.high:
        return False
    return (band.low is not None and band.high is not None) or folded(neighbour.colour) == "yellow"


def _covered(arcs: list[Band], lower: Band, upper: Band) -> bool:
    """Whether a wider arc lies over the gap, which is then no gap."""
    assert lower.high is not None
    assert upper.low is not None
    return any(
        (band.low is None or band.low <= lower.high) and (band.high is None or upper.low <= band.high)
        for band in arcs
        if band is not lower and band is not upper
    )


RULE = Rule(
    name="gap-between-bands",
    severity=Severity.NOTE,
    family="numbers",
    what=(
        "Two neighbouring red, yellow or green ranges of a gauge, of two colours, that leave readings between them "
        "without a colour. A limit, as a red line or as `below` and `above`, may stand apart from the green, but not "
        "from the yellow that leads to it."
    ),
    why="Nobody knows what a reading between two arcs means, and the gap is often a mistyped end.",
    source=(
        "14 CFR 25.1549 and 27.1549 (a) to (d) on what the colours mean (read); that arcs meet is common practice, no "
        "source"
    ),
    mend="Compare with the gauge; where its face has the gap, too, allow the note and say so.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
