"""Text with its references worked out: what a face will print."""

from __future__ import annotations

from collections.abc import Sequence

from dotleader.handbook.amounts.quantity import Exact, Quantity, Range, Shape
from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.shapes import convert_shape
from dotleader.handbook.amounts.speed_symbols import safe_side
from dotleader.handbook.amounts.trouble import Kind, Trouble, said
from dotleader.handbook.amounts.units import Unit, with_basis
from dotleader.handbook.cards import Phrase, Use
from dotleader.handbook.gather import At
from dotleader.handbook.gauges import end_text
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Band, Gauge
from dotleader.handbook.numbers import Numbers
from dotleader.handbook.shaping import shape_text, unit_of
from dotleader.source.text import Span, Spot
from dotleader.syntax.tree import Ref, Words


class Phrases:
    """Makes phrases; what a reference is worth is asked of `numbers`."""

    def __init__(self, numbers: Numbers, ledger: Ledger) -> None:
        self.numbers = numbers
        self.ledger = ledger

    def phrase(self, words: Words, at: At) -> Phrase:
        match words.pieces:
            case (str() as only,):
                flat = " ".join(only.split())
                return Phrase((only,), at.spot(words.span), only if flat == only else flat)
        return Phrase(tuple(self._run(piece, at) for piece in words.pieces), at.spot(words.span))

    def joined(self, lines: Sequence[Words], at: At) -> Phrase:
        """Several lines as one paragraph."""
        runs: list[str | Use] = []
        for words in lines:
            if runs:
                runs.append(" ")
            runs.extend(self._run(piece, at) for piece in words.pieces)
        start = lines[0].span.start if lines else 0
        end = lines[-1].span.end if lines else 0
        return Phrase(tuple(runs), at.spot(Span(start, end)))

    def _run(self, piece: str | Ref, at: At) -> str | Use:
        return piece if isinstance(piece, str) else self.use(piece, at.spot(piece.span))

    def use(self, ref: Ref, spot: Spot) -> Use:
        """A reference as it prints; as its name in braces where it names nothing (said)."""
        key = self.numbers.key_of(ref.name)
        if key in self.numbers.entries:
            return Use(ref.name, key, self._value(key, spot), spot)
        name, _, unit = ref.name.rpartition(" in ")
        if name and self.numbers.key_of(name) in self.numbers.entries:
            key = self.numbers.key_of(name)
            self.ledger.mention("value", key, spot)
            shape = self.numbers.value(key).shape
            text = self._converted(shape, unit, safe_side(name), spot)
            return Use(ref.name, key, text or f"{{{ref.name}}}", spot)
        band_name, unit = (name, unit) if name and self.numbers.bands.named(name) else (ref.name, "")
        found = self.numbers.bands.find(band_name, spot)
        if found is not None:
            gauge, band, end = found
            text = _band_text(gauge, band, end)
            if unit:
                side = Side.UP if (end == "low") != (band.colour == "red") else Side.DOWN
                text = self._converted(_band_shape(gauge, band, end), unit, side, spot)
            return Use(ref.name, gauge.key, text or f"{{{ref.name}}}", spot)
        if not self.numbers.bands.named(band_name):
            self.numbers.unknown(ref.name, spot)
        return Use(ref.name, "", f"{{{ref.name}}}", spot)

    def unit_of(self, key: str) -> Unit | None:
        """The unit of a declared value; None where it has none or could not be worked out."""
        shape = self.numbers.value(key).shape if key in self.numbers.entries else None
        return unit_of(shape) if shape is not None else None

    def _value(self, key: str, spot: Spot) -> str:
        self.ledger.mention("value", key, spot)
        return self.numbers.value(key).shown

    def _converted(self, shape: Shape | None, unit_text: str, side: Side, spot: Spot) -> str:
        """A value in another unit, rounded to the safe side; what stands in the way is said."""
        unit = self.numbers.unit(unit_text, spot)
        if unit is None or shape is None:
            return ""
        own = unit_of(shape)
        if own is not None:
            unit = with_basis(unit, own.basis)  # an indicated airspeed asked for in mph is one in mph
        result = convert_shape(shape, unit, side)
        if isinstance(result, Trouble):
            message, help_ = said(result)
            if result.kind in (Kind.UNLIKE, Kind.BASIS, Kind.BARE):
                message = f"`{result.left}` cannot be given in `{unit.symbol}`."
                help_ = "Ask for it in a unit that measures the same, or take the unit out of the braces."
            self.ledger.say("unlike-units", spot, message, help_)
            return ""
        return shape_text(result)


def _band_text(gauge: Gauge, band: Band, end: str) -> str:
    number = band.low if end == "low" else band.high
    return end_text(number, gauge.unit) if end and number is not None else band.shown


def _band_shape(gauge: Gauge, band: Band, end: str) -> Shape | None:
    number = band.low if end == "low" else band.high
    if end and number is not None:
        return Exact(Quantity(number, gauge.unit))
    if band.low is not None and band.high is not None:
        return Range(Quantity(band.low, gauge.unit), Quantity(band.high, gauge.unit))
    return None
