"""A wire so long and thin that too much voltage is lost along it."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.wiring_reading import wire_name
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_BOOK = """\
electrical
  system ........ 14 V

equipment
  Nav lights .... OFF, ON
    draws ....... 1.8 A
    breaker ..... 5 A
    wire ........ {wire}

normal Before takeoff
  when holding short
  Nav lights .... ON
"""

BAD = Example(_BOOK.format(wire="AWG 20, 9.5 m"), (("large-voltage-drop", "AWG 20, 9.5 m"),))
GOOD = Example(_BOOK.format(wire="AWG 18, 9.5 m"))

_SHORTER = "Fit a thicker wire, or a shorter one."


def check(subject: Subject) -> Iterator[Finding]:
    electrical = subject.handbook.electrical
    if electrical is None or electrical.volts is None:
        return
    # Only a handbook that asks for it pays for these imports.
    from dotleader.cockpit.circuits import LostOnTheWay, misfits  # noqa: PLC0415
    from dotleader.cockpit.electric_words import load, loss  # noqa: PLC0415

    for found in misfits(subject.handbook):
        if isinstance(found, LostOnTheWay):
            yield Finding(
                RULE.name,
                found.wire.spot,
                f"Along {wire_name(found.wire.gauge)} to `{found.control.name}` {load(found.amps)} lose "
                f"{loss(found.volts)}, and {loss(found.allowed)} may be lost.",
                f"Fit {wire_name(found.enough)}, or a shorter wire." if found.enough is not None else _SHORTER,
                (Related(found.draw.spot, "This is what is drawn through it."),),
            )


RULE = Rule(
    name="large-voltage-drop",
    severity=Severity.WARNING,
    family="electrical",
    what=(
        "A `wire` along which more than 0.5 V are lost in a system of 14 V, or 1 V in one of 28 V; twice as much for "
        "what draws only while it moves. Asked where the wire's length and the volts of the `system` are declared, "
        "and nothing else is wrong with the circuit. Resistance is that of table 11-9 at 20 °C, at most."
    ),
    why="A lamp burns dim, a motor turns slowly, and a radio falls silent while the battery still has power for it.",
    source=(
        "FAA AC 43.13-1B (CHG 1) tables 11-7 to 11-9 and page 11-26, read in part; that intermittent loads may lose "
        "twice as much is from memory"
    ),
    mend=(
        "Fit a thicker wire. The length is that of the wire out, and of the wire back where the current does not "
        "return through a metal airframe."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
