"""A wire that carries less than is drawn through it."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.wiring_reading import wire_name
from dotleader.rules.electrical.circuits import has_circuits
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_BOOK = """\
equipment
  Pitot heat .... OFF, ON
    draws ....... 7.5 A
    breaker ..... 10 A
    wire ........ {wire}

normal Before takeoff
  when holding short
  Pitot heat .... ON
"""

BAD = Example(_BOOK.format(wire="AWG 18, 4.1 m, 105 degC"), (("wire-too-thin", "AWG 18, 4.1 m, 105 degC"),))
UNSAID = Example(_BOOK.format(wire="AWG 16, 4.1 m"), (("wire-too-thin", "AWG 16, 4.1 m"),))
GOOD = Example(_BOOK.format(wire="AWG 14, 4.1 m"))
RATED = Example(_BOOK.format(wire="AWG 16, 4.1 m, 150 degC"))


def check(subject: Subject) -> Iterator[Finding]:
    if not has_circuits(subject.handbook):
        return
    # Only a handbook that asks for it pays for these imports.
    from dotleader.cockpit.circuits import WireTooThin, misfits  # noqa: PLC0415
    from dotleader.cockpit.electric_words import load, rating  # noqa: PLC0415
    from dotleader.cockpit.wires import CARRIED  # noqa: PLC0415

    electrical = subject.handbook.electrical
    for found in misfits(subject.handbook):
        if not isinstance(found, WireTooThin):
            continue
        wire, column = wire_name(found.wire.gauge), found.column
        said = found.wire.rated is not None or (electrical is not None and electrical.wires_rated is not None)
        better = [
            heat for heat, row in CARRIED.items() if found.wire.gauge in row and row[found.wire.gauge] >= found.amps
        ]
        as_said = f"insulation for {column} °C" if said else f"insulation for {column} °C, the least in the table"
        if said or not better:
            help_ = "Fit a thicker wire; its breaker may stay."
        else:
            as_rated = f"`{found.wire.spot.text}, {better[0]} degC`"
            help_ = f"Fit a thicker wire; or, if it stands {better[0]} °C, say so: {as_rated}."
        yield Finding(
            RULE.name,
            found.wire.spot,
            f"`{found.control.name}` draws {load(found.amps)}, and in a bundle {wire} with {as_said}, carries "
            f"{rating(found.carries)}.",
            help_,
            (Related(found.draw.spot, "This is what it draws."),),
        )


RULE = Rule(
    name="wire-too-thin",
    severity=Severity.WARNING,
    family="electrical",
    what=(
        "A `wire` that by table 11-9 carries less than its control `draws` for long. The table has three temperatures "
        "that insulation stands; the lower of two counts, and 105 °C where neither the wire's row nor `wires rated` in "
        "the `electrical` block says one. A size between two of the table counts as the thinner one. Asked where the "
        "breaker or fuse fits both load and wire; what draws only while it moves is not asked about."
    ),
    why="It becomes too hot for its insulation whenever it is used, long before anything opens.",
    source=(
        "FAA AC 43.13-1B (CHG 1) table 11-9, page 11-23: tin-plated copper in a bundle of 33 wires and more (9 from "
        "AWG 8 up), 70 °C around it, a fifth of the bundle's capacity used"
    ),
    mend=(
        "Fit a thicker wire, or say what its insulation stands. The table is for large bundles: for a wire that lies "
        "alone the circular has figures that allow more; allow the finding with that reason."
    ),
    bad=(BAD, UNSAID),
    good=(GOOD, RATED),
    check=check,
    confidence="medium",
)
