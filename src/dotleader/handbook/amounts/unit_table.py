"""The units of the language as data: symbols, exact factors, how they print.

Factors are exact by definition: NIST Special Publication 811 (2008), appendix B.8, boldface factors; the
pound (0.45359237 kg), the US gallon (231 cubic inches) and the conventional inch of mercury (25.4 mm of 13
595.1 kg/m3 at standard gravity) by their definitions, whose rounded values appendix B.8 gives.

Bases that SI would derive from others (volume, pressure, voltage, frequency, angle, rotation) stand by
themselves: nobody multiplies three lengths into a volume on a checklist, and a number that came out so
would be a mistake.

Two decisions about what units mean in the trade:

* A moment is mass times length. Weight and balance multiplies `lb` by `in` and gets `lb in`; the pound
  there is the weight of a pound of mass. `N m` is taken to it by standard gravity, 9.80665 m/s2, so that a
  torque in `lb ft`, `kg m` and `N m` converts as on a torque wrench.
* `G` is a load factor: how many times its own weight a thing weighs. It is a number without a dimension, so
  that `root of {load factor}` means the same with `3.8` and with `3.8 G`; but it is unlike `%` and unlike a
  bare number.
"""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

_F = Fraction

_FOOT = _F("0.3048")
_INCH = _F("0.0254")
_NAUTICAL_MILE = _F(1852)
_STATUTE_MILE = _F("1609.344")
_POUND = _F("0.45359237")
_GALLON_US = 231 * _INCH**3
_GRAVITY = _F("9.80665")
_HOUR = _F(3600)
_MERCURY = _F("13595.1")  # kg/m3, conventional


class Row(NamedTuple):
    """One unit. `factor` and `offset` lead to the base of its dimension: (number + offset) * factor.

    `over` and `under` name the units it is made of, `None` for one that is made of nothing else. `step` is
    what a conversion into the unit is rounded to. `shown` is the form on a face, `glued` without a space
    after the number, `grouped` with commas between thousands.
    """

    symbol: str
    dimension: str
    factor: Fraction
    step: Fraction = _F(1)
    over: tuple[str, ...] | None = None
    under: tuple[str, ...] = ()
    shown: str = ""
    glued: bool = False
    grouped: bool = True
    offset: Fraction = _F(0)


_TENTH = _F(1, 10)
_HUNDREDTH = _F(1, 100)
_THOUSANDTH = _F(1, 1000)


def _speeds() -> tuple[Row, ...]:
    """Knots, miles and kilometres an hour: plain, indicated, calibrated and true."""
    rows: list[Row] = []
    for basis, dimension in (
        ("", "speed"),
        ("IAS", "indicated airspeed"),
        ("CAS", "calibrated airspeed"),
        ("TAS", "true airspeed"),
    ):
        of = (basis,) if basis else ()
        knots = f"K{basis}" if basis else "kt"
        mph, kmh = f"mph {basis}".strip(), f"km/h {basis}".strip()
        rows += (
            Row(knots, dimension, _NAUTICAL_MILE / _HOUR, over=("NM", *of), under=("h",)),
            Row(mph, dimension, _STATUTE_MILE / _HOUR, over=("SM", *of), under=("h",)),
            Row(kmh, dimension, 1000 / _HOUR, over=("km", *of), under=("h",)),
        )
    return tuple(rows)


ROWS: tuple[Row, ...] = (
    *_speeds(),
    Row("m/s", "speed", _F(1), _TENTH, ("m",), ("s",)),
    Row("ft/min", "speed", _FOOT / 60, over=("ft",), under=("min",)),
    Row("ft", "length", _FOOT),
    Row("m", "length", _F(1)),
    Row("in", "length", _INCH, _HUNDREDTH),
    Row("cm", "length", _F(1, 100), _TENTH),
    Row("mm", "length", _F(1, 1000), _TENTH),
    Row("NM", "length", _NAUTICAL_MILE, _TENTH),
    Row("SM", "length", _STATUTE_MILE, _TENTH),
    Row("km", "length", _F(1000), _TENTH),
    Row("lb", "mass", _POUND),
    Row("kg", "mass", _F(1)),
    Row("g", "mass", _F(1, 1000)),
    Row("oz", "mass", _POUND / 16, _TENTH),
    Row("US gal", "volume", _GALLON_US, _TENTH),
    Row("imp gal", "volume", _F("0.00454609"), _TENTH),
    Row("l", "volume", _F(1, 1000), _TENTH),
    Row("US qt", "volume", _GALLON_US / 4, _TENTH),
    Row("psi", "pressure", _POUND * _GRAVITY / _INCH**2),
    Row("bar", "pressure", _F(100_000), _HUNDREDTH),
    Row("hPa", "pressure", _F(100), grouped=False),
    Row("inHg", "pressure", _MERCURY * _GRAVITY * _INCH, _HUNDREDTH),
    Row("degC", "temperature", _F(1), shown="°C", offset=_F("273.15")),
    Row("degF", "temperature", _F(5, 9), shown="°F", offset=_F("459.67")),
    Row("deg", "angle", _F(1), shown="°", glued=True),
    Row("%", "ratio", _F(1, 100), over=(), glued=True),
    Row("rpm", "rotation", _F(1)),
    Row("A", "current", _F(1), _TENTH),
    Row("mA", "current", _F(1, 1000)),
    Row("Ah", "charge", _HOUR, _TENTH, ("A", "h")),
    Row("V", "voltage", _F(1), _TENTH),
    Row("W", "power", _F(1), over=("V", "A")),
    Row("s", "time", _F(1)),
    Row("min", "time", _F(60)),
    Row("h", "time", _HOUR, _TENTH),
    Row("MHz", "frequency", _F(1_000_000), _THOUSANDTH, grouped=False),
    Row("kHz", "frequency", _F(1000), grouped=False),
    Row("Hz", "frequency", _F(1), grouped=False),
    Row("lb in", "moment", _POUND * _INCH, over=("lb", "in")),
    Row("kg m", "moment", _F(1), _TENTH, ("kg", "m")),
    Row("N m", "moment", 1 / _GRAVITY, _TENTH, ("kg", "m")),
    Row("lb ft", "moment", _POUND * _FOOT, _TENTH, ("lb", "ft")),
    Row("kg/l", "density", _F(1000), _HUNDREDTH, ("kg",), ("l",)),
    Row("lb/US gal", "density", _POUND / _GALLON_US, _HUNDREDTH, ("lb",), ("US gal",)),
    Row("US gal/h", "flow", _GALLON_US / _HOUR, _TENTH, ("US gal",), ("h",)),
    Row("l/h", "flow", _F(1, 1000) / _HOUR, _TENTH, ("l",), ("h",)),
    Row("G", "load factor", _F(1), _TENTH, ()),
)
