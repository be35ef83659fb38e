"""References to the coloured ranges of gauges: `{Oil pressure green}`, `{Oil pressure yellow 2 low}`."""

from __future__ import annotations

from collections.abc import Mapping

from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Band, Gauge
from dotleader.source.finding import Related
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded


class Bands:
    """The ranges of the declared gauges; what is wrong with a reference to one is said."""

    def __init__(self, gauges: Mapping[str, Gauge], ledger: Ledger) -> None:
        self.gauges, self.ledger = gauges, ledger

    def named(self, name: str) -> bool:
        """Whether a reference begins with the name of a gauge, so that a finding about it speaks of its bands."""
        words = folded(name).split()
        return any(" ".join(words[:count]) in self.gauges for count in range(1, len(words) + 1))

    def find(self, name: str, spot: Spot) -> tuple[Gauge, Band, str] | None:
        """The band that `GAUGE COLOUR [n] [low|high]` names; what is wrong with it is said."""
        words = folded(name).split()
        for count in range(len(words) - 1, 0, -1):
            gauge = self.gauges.get(" ".join(words[:count]))
            if gauge is not None:
                self.ledger.mention("gauge", gauge.key, spot)
                return self._band_of(gauge, words[count:], name, spot)
        if folded(name) in self.gauges:
            gauge = self.gauges[folded(name)]
            self.ledger.mention("gauge", gauge.key, spot)
            self._no_band(gauge, name, spot)
        return None

    def _band_of(self, gauge: Gauge, words: list[str], name: str, spot: Spot) -> tuple[Gauge, Band, str] | None:
        end = words[-1] if words[-1] in ("low", "high") else ""
        rest = words[:-1] if end else words
        which = int(rest[-1]) if len(rest) > 1 and rest[-1].isdecimal() and len(rest[-1]) < 4 else 0
        colour = " ".join(rest[:-1] if which else rest)
        bands = [band for band in gauge.bands if folded(band.colour) == colour]
        if not bands or which > len(bands):
            self._no_band(gauge, name, spot)
            return None
        if len(bands) > 1 and not which:
            choices = ", ".join(f"`{{{gauge.name} {colour} {n}}}` ({b.shown})" for n, b in enumerate(bands, 1))
            self.ledger.say(
                "ambiguous-reference",
                spot,
                f"`{gauge.name}` has {colour} {len(bands)} times.",
                f"Say which: {choices}.",
            )
            return None
        band = bands[which - 1 if which else 0]
        if (end == "low" and band.low is None) or (end == "high" and band.high is None):
            self._no_band(gauge, name, spot)
            return None
        return gauge, band, end

    def _no_band(self, gauge: Gauge, name: str, spot: Spot) -> None:
        forms = ", ".join(f"{band.colour} ({band.shown})" for band in gauge.bands)
        self.ledger.say(
            "unknown-value",
            spot,
            f"`{name}` names no range of the gauge `{gauge.name}`.",
            f"It has {forms}." if forms else "The gauge has no rows yet.",
            Related(gauge.spot, "The gauge is declared here."),
        )
