"""Responses that cannot be read on the instrument that they are given for: an oil pressure in degrees."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from dotleader.handbook.amounts.numerals import NumberTrouble, read_number
from dotleader.handbook.amounts.units import Unit, find_unit, like
from dotleader.handbook.cards import Phrase
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Gauge
from dotleader.source.finding import Related
from dotleader.source.text import Spot

_BOUND = re.compile(r"(?:(?:at least|at most|above|below|not above|not below|in)\s+)?(?P<reading>.*)", re.IGNORECASE)
_LITERAL = re.compile(r"(?P<number>[-\N{MINUS SIGN}]?\d[\d.,]*)(?:\s+to\s+\S*\d)?\s*(?P<unit>[^\d\s].*)")


class Readings:
    """Compares responses with the instruments that they are read on.

    Only what is plainly another instrument's reading is said: words around a number may speak of anything
    (`RISES WITHIN 30 s`), and fuel may be counted in minutes.
    """

    def __init__(
        self, gauges: Mapping[str, Gauge], unit_of_value: Callable[[str], Unit | None], ledger: Ledger
    ) -> None:
        self.gauges, self.unit_of_value, self.ledger = gauges, unit_of_value, ledger

    def check(self, own: Sequence[Gauge], response: Phrase) -> None:
        """Say where a response names no reading of its `own` instruments but one of another."""
        units = [gauge.unit for gauge in own if gauge.unit is not None]
        if not units or len(units) < len(own):
            return
        unit = self._unit(response)
        if unit is not None and not _fits(unit, units) and self._is_anothers(unit):
            self._say(response.spot, own)

    def _unit(self, response: Phrase) -> Unit | None:
        """The unit of a response that is one reading and nothing else: a reference, a number or a range."""
        found = _BOUND.fullmatch(response.written)
        reading = found["reading"] if found else ""
        if len(response.uses) == 1 and reading == f"{{{response.uses[0].name}}}":
            key = response.uses[0].key
            return self.gauges[key].unit if key in self.gauges else self.unit_of_value(key)
        literal = _LITERAL.fullmatch(reading)
        if literal is None or isinstance(read_number(literal["number"]), NumberTrouble):
            return None
        unit = find_unit(literal["unit"])
        return unit if isinstance(unit, Unit) else None

    def _is_anothers(self, unit: Unit) -> bool:
        return _is_speed(unit) or any(g.unit is not None and like(g.unit, unit) for g in self.gauges.values())

    def _say(self, spot: Spot, own: Sequence[Gauge]) -> None:
        name = " or ".join(f"`{gauge.name}`" for gauge in own)
        shows = " or ".join(f"`{gauge.unit.symbol}`" for gauge in own if gauge.unit is not None)
        self.ledger.say(
            "unlike-units",
            spot,
            f"`{spot.text}` is no reading of {name}, which shows {shows}.",
            "Give a reading of the instrument that the line is about.",
            *(Related(gauge.spot, "The instrument is declared here.") for gauge in own[:1]),
        )


def _fits(unit: Unit, units: Sequence[Unit]) -> bool:
    return any(like(own, unit) or (_is_speed(own) and _is_speed(unit)) for own in units)


def _is_speed(unit: Unit) -> bool:
    return unit.dimension.name.endswith("speed")
