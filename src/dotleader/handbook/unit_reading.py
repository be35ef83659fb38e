"""Units as written, and what is said of one that is none or does not say which."""

from __future__ import annotations

from dotleader.handbook.amounts.units import AmbiguousUnit, Unit, UnknownUnit, find_unit
from dotleader.handbook.ledger import Ledger
from dotleader.source.finding import swapped
from dotleader.source.text import Spot
from dotleader.syntax.near_keywords import near_source_word


def read_unit(text: str, spot: Spot, ledger: Ledger) -> Unit | None:
    """The unit that a text names; said and None where it names none or does not say which."""
    match find_unit(text):
        case UnknownUnit(_) if _source_slip(spot, ledger):
            return None
        case UnknownUnit(written, suggestions):
            near = " or ".join(f"`{unit.symbol}`" for unit in suggestions)
            ledger.say(
                "unknown-unit",
                spot,
                f"`{written}` is no unit.",
                f"Did you mean {near}?" if near else "Units are written as on the instrument: `KIAS`, `psi`, `US gal`.",
                fix=swapped(spot, suggestions[0].symbol, safe=False)
                if len(suggestions) == 1 and " ".join(spot.text.split()) == written
                else None,
            )
            return None
        case AmbiguousUnit(written, choices):
            names = " or ".join(f"`{unit.symbol}`" for unit in choices)
            ledger.say("ambiguous-unit", spot, f"`{written}` does not say which unit it is.", f"Write {names}.")
            return None
        case unit:
            return unit


def _source_slip(spot: Spot, ledger: Ledger) -> bool:
    """Whether what stands for a unit has a misspelt `from` or `unverified` in it, which is then said."""
    start, end, right = near_source_word(spot.text)
    if not right or "{" in spot.text:  # in a reference stands no source
        return False
    ledger.say(
        "unknown-unit",
        Spot(spot.source, spot.start + start, spot.start + end),
        f"`{spot.text[start:end]}` is no unit, and does not say where the number comes from.",
        f"Did you mean `{right}{spot.text[end:].rstrip()}`?",
        fix=swapped(Spot(spot.source, spot.start + start, spot.start + end), right, safe=False),
    )
    return True
