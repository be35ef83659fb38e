"""Responses that cannot be read on the instrument that they are given for: an oil pressure in degrees."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from dotleader.handbook.cards import Phrase
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Gauge
from dotleader.handbook.numerals import NumberTrouble, read_number
from dotleader.handbook.units import Unit, find_unit, like
from dotleader.source.finding import Related
from dotleader.source.text import Spot

_LITERAL = re.compile(
    r"(?:(?:at least|at most|below|above)\s+)?(?P<number>[-−]?\d[\d.,]*)(?:\s+to\s+[-−]?\d[\d.,]*)?\s*(?P<unit>\D.*)",
    re.IGNORECASE,
)


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
        named = [(self._unit(use.key), use.spot, use.key in self.gauges) for use in response.uses]
        if any(unit is None or _fits(unit, units) for unit, _, _ in named):
            return
        for unit, spot, is_band in named:
            if unit is not None and (is_band or (spot.text == response.spot.text and self._is_anothers(unit))):
                self._say(unit, spot, own)
                return
        literal = None if named else _literal(response.text)
        if literal is not None and not _fits(literal, units) and self._is_anothers(literal):
            self._say(literal, response.spot, own)

    def _unit(self, key: str) -> Unit | None:
        return self.gauges[key].unit if key in self.gauges else self.unit_of_value(key)

    def _is_anothers(self, unit: Unit) -> bool:
        return _is_speed(unit) or any(g.unit is not None and like(g.unit, unit) for g in self.gauges.values())

    def _say(self, unit: Unit, spot: Spot, own: Sequence[Gauge]) -> None:
        name = " or ".join(f"`{gauge.name}`" for gauge in own)
        shows = " or ".join(f"`{gauge.unit.symbol}`" for gauge in own if gauge.unit is not None)
        self.ledger.say(
            "unlike-units",
            spot,
            f"`{spot.text}` is in `{unit.symbol}`, and {name} shows {shows}.",
            "Give a reading of the instrument that the line is about.",
            *(Related(gauge.spot, "The instrument is declared here.") for gauge in own[:1]),
        )


def _literal(text: str) -> Unit | None:
    """The unit of a response that is a number or a range and nothing else."""
    found = _LITERAL.fullmatch(text)
    if found is None or isinstance(read_number(found["number"]), NumberTrouble):
        return None
    unit = find_unit(found["unit"])
    return unit if isinstance(unit, Unit) else None


def _fits(unit: Unit, units: Sequence[Unit]) -> bool:
    return any(like(own, unit) or (_is_speed(own) and _is_speed(unit)) for own in units)


def _is_speed(unit: Unit) -> bool:
    return unit.dimension.name.endswith("speed")
