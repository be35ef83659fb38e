"""An accepted finding that is found no more."""

from __future__ import annotations

from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

_BOOK = """\
values
  fuel cap torque .... 12 N m  unverified

normal Preflight
  when before the first flight of the day
  Fuel caps .... {}
"""

BAD = Example(
    _BOOK.format("{fuel cap torque}"),
    (("baseline-unused", "value-never-used: fuel cap torque .... 12 N m unverified"),),
    baseline="in values\n  value-never-used: fuel cap torque .... 12 N m unverified\n",
)

GOOD = Example(
    _BOOK.format("TIGHT"),
    baseline="in values\n  value-never-used: fuel cap torque .... 12 N m unverified\n",
)


def finding(spot: Spot, rule: str, *, is_error: bool) -> Finding:
    """`spot` is the entry in the file, `rule` the name it begins with."""
    if is_error:
        return Finding(
            RULE.name,
            spot,
            f"`{rule}` is an error, and an error cannot be accepted.",
            "Mend what it says and take this entry out.",
        )
    return Finding(
        RULE.name,
        spot,
        f"`{rule}` is found no more on this line.",
        "Take this entry out, or run `dotleader baseline` again, which writes the file anew.",
    )


RULE = Rule(
    name="baseline-unused",
    severity=Severity.WARNING,
    family="suppressions",
    what=(
        "An entry of `baseline.txt`, in which `dotleader baseline` keeps the accepted findings of an old book, that no "
        "longer applies: the line was mended or changed, or stands on a card of another title."
    ),
    why="An entry that has outlived its cause would hide the next fault on a line that reads the same.",
    source=NO_SOURCE,
    mend="Take the entry out, or run `dotleader baseline` again.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="settling",
)
