"""The symbols of speeds: what each usually means, and to which side a rounded one stays safe.

Symbols as in 14 CFR 1.2, with some of 14 CFR part 23 (VO, VSSE, VXSE, VYSE, VMCA) and of the trade (VG).
The list of 1.2 is from memory; the meanings are in our own words. Sides: a speed that must not be exceeded
goes down, one that must not be gone below goes up, and every other one goes to the nearest.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import NamedTuple

from dotleader.handbook.amounts.rounding import Side


class SpeedSymbol(NamedTuple):
    symbol: str
    meaning: str
    side: Side
    in_part_1: bool = True


_UP, _DOWN, _NEAREST = Side.UP, Side.DOWN, Side.NEAREST

SPEED_SYMBOLS: MappingProxyType[str, SpeedSymbol] = MappingProxyType(
    {
        row.symbol: row
        for row in (
            SpeedSymbol("V1", "takeoff decision speed", _NEAREST),
            SpeedSymbol("V2", "takeoff safety speed", _UP),
            SpeedSymbol("V2MIN", "least takeoff safety speed", _UP),
            SpeedSymbol("VA", "maneuvering speed", _DOWN),
            SpeedSymbol("VB", "design speed for strongest gusts", _NEAREST),
            SpeedSymbol("VC", "design cruising speed", _NEAREST),
            SpeedSymbol("VD", "design diving speed", _DOWN),
            SpeedSymbol("VDF", "diving speed shown in flight", _DOWN),
            SpeedSymbol("VEF", "engine failure speed assumed for takeoff", _NEAREST),
            SpeedSymbol("VF", "design flap speed", _DOWN),
            SpeedSymbol("VFC", "greatest speed for stability", _DOWN),
            SpeedSymbol("VFE", "greatest speed, flaps extended", _DOWN),
            SpeedSymbol("VFTO", "final takeoff speed", _NEAREST),
            SpeedSymbol("VG", "best glide", _NEAREST, False),
            SpeedSymbol("VH", "level flight at greatest continuous power", _NEAREST),
            SpeedSymbol("VLE", "greatest speed, landing gear extended", _DOWN),
            SpeedSymbol("VLO", "greatest speed to move the landing gear", _DOWN),
            SpeedSymbol("VLOF", "lift-off", _NEAREST),
            SpeedSymbol("VMC", "least speed for control, critical engine failed", _UP),
            SpeedSymbol("VMCA", "least speed for control in the air, critical engine failed", _UP, False),
            SpeedSymbol("VMCG", "least speed for control on the ground, critical engine failed", _UP, False),
            SpeedSymbol("VMO", "greatest operating speed", _DOWN),
            SpeedSymbol("VMU", "least speed to leave the ground", _UP),
            SpeedSymbol("VNE", "never exceed", _DOWN),
            SpeedSymbol("VNO", "greatest speed in other than smooth air", _DOWN),
            SpeedSymbol("VO", "operating maneuvering speed", _DOWN, False),
            SpeedSymbol("VR", "rotation", _NEAREST),
            SpeedSymbol("VREF", "landing reference speed", _UP),
            SpeedSymbol("VS", "stalling speed", _UP),
            SpeedSymbol("VS0", "stalling speed, landing configuration", _UP),
            SpeedSymbol("VS1", "stalling speed, stated configuration", _UP),
            SpeedSymbol("VSR", "reference stalling speed", _UP),
            SpeedSymbol("VSR0", "reference stalling speed, landing configuration", _UP),
            SpeedSymbol("VSR1", "reference stalling speed, stated configuration", _UP),
            SpeedSymbol("VSSE", "least speed to fail an engine on purpose", _UP, False),
            SpeedSymbol("VSW", "stall warning", _UP),
            SpeedSymbol("VTOSS", "takeoff safety speed, rotorcraft", _UP),
            SpeedSymbol("VX", "best angle of climb", _NEAREST),
            SpeedSymbol("VXSE", "best angle of climb, one engine", _NEAREST, False),
            SpeedSymbol("VY", "best rate of climb", _NEAREST),
            SpeedSymbol("VYSE", "best rate of climb, one engine", _NEAREST, False),
        )
    }
)

# The subscript is a zero in `VS0` and a letter in `VO`, and both are typed either way.
_TYPED_OTHERWISE = {"VSO": "VS0", "VSRO": "VSR0", "V0": "VO"}


def speed_symbol(name: str) -> SpeedSymbol | None:
    """The symbol that a name begins with, in any case: `VFE at 10 deg`, `VLO (wheels in motion)`."""
    words = name.replace("(", " ").split()
    symbol = words[0].upper() if words else ""
    return SPEED_SYMBOLS.get(_TYPED_OTHERWISE.get(symbol, symbol))


def safe_side(name: str) -> Side:
    """To which side a speed of that name is rounded; to the nearest for a name without a known symbol."""
    known = speed_symbol(name)
    return known.side if known else Side.NEAREST
