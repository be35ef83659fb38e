"""A breaker or fuse that lets the wire burn first."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.wiring_reading import wire_name
from dotleader.rules.electrical.circuits import has_circuits
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_BOOK = """\
equipment
  Fuel pump .... OFF, ON
    draws ...... 3.5 A
    breaker .... {breaker}
    wire ....... AWG 20, 2.4 m

normal Before takeoff
  when holding short
  Fuel pump .... ON
"""

BAD = Example(_BOOK.format(breaker="10 A"), (("breaker-above-wire", "10 A"),))
GOOD = Example(_BOOK.format(breaker="7.5 A"))


def check(subject: Subject) -> Iterator[Finding]:
    if not has_circuits(subject.handbook):
        return
    # Only a handbook that asks for it pays for these imports.
    from dotleader.cockpit.circuits import WireUnprotected, misfits  # noqa: PLC0415
    from dotleader.cockpit.electric_words import rating  # noqa: PLC0415

    for found in misfits(subject.handbook):
        if isinstance(found, WireUnprotected):
            word, wire = found.protector.word, wire_name(found.wire.gauge)
            yield Finding(
                RULE.name,
                found.protector.spot,
                f"The {word} of `{found.control.name}` opens at {rating(found.protector.amps)}, and {wire} is "
                f"protected by at most {rating(found.most)}.",
                f"Fit a {word} of {rating(found.most)} or less, or a thicker wire.",
                (Related(found.wire.spot, "This is the wire that it protects."),),
            )


RULE = Rule(
    name="breaker-above-wire",
    severity=Severity.WARNING,
    family="electrical",
    what=(
        "A `breaker` or `fuse` that is larger than table 11-3 has for the `wire`. A size between two of the table "
        "counts as the thinner one; a size that is thicker than all in it is not asked about."
    ),
    why="In a short circuit the wire glows before the breaker opens, in a bundle with all the others.",
    source="FAA AC 43.13-1B (CHG 1) par. 11-48 and table 11-3, page 11-15",
    mend=(
        "Fit a smaller breaker or fuse, or a thicker wire. By the table's own note a single wire in free air may have "
        "the next larger breaker: where that is so, allow the finding and say it."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
