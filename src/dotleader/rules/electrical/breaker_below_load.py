"""A breaker or fuse that opens at the load it is there for."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.electrical.circuits import has_circuits
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_BOOK = """\
equipment
  Pitot heat .... OFF, ON
    draws ....... 7.5 A
    breaker ..... {breaker}

normal Before takeoff
  when holding short
  Pitot heat .... ON
"""

BAD = Example(_BOOK.format(breaker="5 A"), (("breaker-below-load", "5 A"),))
GOOD = Example(_BOOK.format(breaker="10 A"))


def check(subject: Subject) -> Iterator[Finding]:
    if not has_circuits(subject.handbook):
        return
    # Only a handbook that asks for it pays for these imports.
    from dotleader.cockpit.circuits import OpensAtLoad, misfits  # noqa: PLC0415
    from dotleader.cockpit.electric_words import load, rating  # noqa: PLC0415

    for found in misfits(subject.handbook):
        if isinstance(found, OpensAtLoad):
            word = found.protector.word
            yield Finding(
                RULE.name,
                found.protector.spot,
                f"The {word} of `{found.control.name}` opens at {rating(found.protector.amps)}, and "
                f"{load(found.amps)} are drawn through it.",
                f"Check both numbers. A larger {word} may ask for a thicker wire.",
                (Related(found.draw.spot, "This is what it draws."),),
            )


RULE = Rule(
    name="breaker-below-load",
    severity=Severity.WARNING,
    family="electrical",
    what="A `breaker` or `fuse` with a smaller number than what its control `draws`.",
    why="It opens in normal use, and a pilot who has learnt to push it back does so on the day when there is a fault.",
    source="FAA AC 43.13-1B (CHG 1) par. 11-47 and 11-48, page 11-15",
    mend="Check what is drawn, and choose the breaker or fuse above that and within what its wire can take.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
