"""The circuit of one control: whether its load, its breaker or fuse and its wire fit one another.

The breaker or fuse opens before the wire is harmed, and carries the load (FAA AC 43.13-1B par. 11-47 and 11-48). Of
several things that one change would mend only the first is told: each wrong number is one fault.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TypeAlias

from dotleader.cockpit.loads import amps_of, is_unclear
from dotleader.cockpit.wires import FOR_MOMENTS, allowed_drop, carried, drop, largest_protector, thick_enough
from dotleader.handbook.model import Control, Handbook
from dotleader.handbook.wiring import Draw, Protector, Wire
from dotleader.source.record import record


@record
class OpensAtLoad:
    """A breaker or fuse that the load of its control makes open."""

    control: Control
    draw: Draw
    amps: Fraction
    protector: Protector


@record
class WireUnprotected:
    """A breaker or fuse that lets more through than its wire can take; `most` is the largest for that wire."""

    control: Control
    protector: Protector
    wire: Wire
    most: Fraction


@record
class WireTooThin:
    """A load that lasts, and is more than the wire carries; `column` is that of the table, in degrees Celsius."""

    control: Control
    draw: Draw
    amps: Fraction
    wire: Wire
    carries: Fraction
    column: int


@record
class LostOnTheWay:
    """A wire along which more volts are lost than is allowed; `enough` is the thinnest with which it is not so."""

    control: Control
    draw: Draw
    amps: Fraction
    wire: Wire
    volts: Fraction
    allowed: Fraction
    enough: int | None


Misfit: TypeAlias = OpensAtLoad | WireUnprotected | WireTooThin | LostOnTheWay


def misfits(handbook: Handbook) -> Iterator[Misfit]:
    """What does not fit, control by control."""
    for control in handbook.controls.values():
        if control.wiring.protector is not None or control.wiring.wire is not None:
            yield from _misfits(control, handbook)


def doubtful_loads(handbook: Handbook) -> frozenset[str]:
    """The keys of controls whose load would open their own breaker or fuse: one of the two numbers is not right."""
    return frozenset(found.control.key for found in misfits(handbook) if isinstance(found, OpensAtLoad))


def _misfits(control: Control, handbook: Handbook) -> Iterator[Misfit]:
    protector, wire = control.wiring.protector, control.wiring.wire
    largest = _largest(control, handbook, moments=True)
    if protector is not None and largest is not None and largest[1] > protector.amps:
        yield OpensAtLoad(control, *largest, protector)
        return
    if wire is None:
        return
    most = largest_protector(protector.word, wire.gauge) if protector is not None else None
    if protector is not None and most is not None and protector.amps > most:
        yield WireUnprotected(control, protector, wire, most)
        return
    lasting = _largest(control, handbook, moments=False)
    if lasting is not None:
        rated = wire.rated
        if rated is None and handbook.electrical is not None:
            rated = handbook.electrical.wires_rated
        carries, column = carried(wire.gauge, rated)
        if carries is not None and lasting[1] > carries:
            yield WireTooThin(control, *lasting, wire, carries, column)
            return
    yield from _lost(control, handbook, wire)


def _lost(control: Control, handbook: Handbook, wire: Wire) -> Iterator[LostOnTheWay]:
    """The first load of which too much is lost; nothing where the length or the system's volts are not known."""
    volts = handbook.electrical.volts if handbook.electrical is not None else None
    allowed = allowed_drop(volts) if volts is not None else None
    if allowed is None or wire.length is None:
        return
    for draw, amps in _each(control, handbook):
        lost = drop(wire.gauge, wire.length, amps)
        most = allowed * FOR_MOMENTS if _for_moments(draw, control) else allowed
        if lost is not None and lost > most:
            enough = thick_enough(wire.length, amps, most)
            yield LostOnTheWay(control, draw, amps, wire, lost, most, enough)
            return


def _largest(control: Control, handbook: Handbook, *, moments: bool) -> tuple[Draw, Fraction] | None:
    """The largest load; without `moments` of those that last."""
    found = [each for each in _each(control, handbook) if moments or not _for_moments(each[0], control)]
    return max(found, key=lambda each: each[1], default=None)


def _each(control: Control, handbook: Handbook) -> Iterator[tuple[Draw, Fraction]]:
    """The loads in amperes, without that of a position which springs back, such as a starter's."""
    springing = {start for start, _ in control.springs}
    for draw in control.wiring.draws:
        amps = amps_of(draw, handbook.electrical)
        if amps is not None and draw.position not in springing:
            yield draw, amps


def _for_moments(draw: Draw, control: Control) -> bool:
    """Whether a load lasts only while something moves; so it is taken where it is not said when it draws."""
    return draw.moving or is_unclear(draw, control)
