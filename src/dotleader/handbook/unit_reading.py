"""Units as written, and what is said of one that is none or does not say which."""

from __future__ import annotations

from dotleader.handbook.amounts.units import AmbiguousUnit, Unit, UnknownUnit, find_unit
from dotleader.handbook.ledger import Ledger
from dotleader.source.text import Spot


def read_unit(text: str, spot: Spot, ledger: Ledger) -> Unit | None:
    """The unit that a text names; said and None where it names none or does not say which."""
    match find_unit(text):
        case UnknownUnit(written, suggestions):
            near = " or ".join(f"`{unit.symbol}`" for unit in suggestions)
            ledger.say(
                "unknown-unit",
                spot,
                f"`{written}` is no unit.",
                f"Did you mean {near}?" if near else "Units are written as on the instrument: `KIAS`, `psi`, `US gal`.",
            )
            return None
        case AmbiguousUnit(written, choices):
            names = " or ".join(f"`{unit.symbol}`" for unit in choices)
            ledger.say("ambiguous-unit", spot, f"`{written}` does not say which unit it is.", f"Write {names}.")
            return None
        case unit:
            return unit
