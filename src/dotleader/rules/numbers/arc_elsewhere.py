"""An arc of the airspeed indicator that does not end at its speed."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dotleader.handbook.gauges import end_text
from dotleader.handbook.model import Band, Gauge
from dotleader.rules.numbers.known_speeds import Speed, known_speeds, out_of_order
from dotleader.rules.numbers.maneuvering_speed_high import is_glider
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

_SPEEDS = """\
speeds
  VS0 .... 46 KIAS  unverified
  VS1 .... 51 KIAS  unverified
  VFE at 10 deg .... 100 KIAS  unverified
  VFE at 40 deg .... 87 KIAS  unverified
  VNO .... 128 KIAS  unverified
  VNE .... 160 KIAS  unverified

"""

BAD = Example(
    _SPEEDS
    + """\
gauge Airspeed in KIAS from unverified
  white .... 46 to 87
  green .... 51 to 120
  yellow .... 120 to 160
  red .... 160
""",
    (("arc-elsewhere", "green"),),
)

GOOD_GLIDER = Example(
    """\
handbook Wimpel motor glider

speeds
  VS1 .... 72 km/h IAS  unverified
  VNE .... 250 km/h IAS  unverified

gauge Airspeed in km/h IAS from unverified
  green .... 80 to 180
  yellow .... 180 to 250
  red .... 250
"""
)

GOOD = Example(
    _SPEEDS
    + """\
gauge Airspeed in KIAS from unverified
  white .... {VS0} to 87
  green .... 51 to 128
  yellow .... 128 to 160
  red .... above 160

gauge Airspeed of the other seat in mph CAS from unverified
  green .... 60 to 140
"""
)

_ENDS = {
    ("white", "low"): "VS0",
    ("white", "high"): "VFE",
    ("green", "low"): "VS1",
    ("green", "high"): "VNO",
    ("yellow", "low"): "VNO",
    ("yellow", "high"): "VNE",
    ("red", "low"): "VNE",
}
_ABOVE = Fraction(11, 10)
_NAMES = ("airspeed", "air speed")


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    gauges = [gauge for key, gauge in handbook.gauges.items() if any(name in key for name in _NAMES) or key == "asi"]
    if not gauges:
        return
    speeds = known_speeds(handbook)
    for gauge in gauges:
        by_symbol = speeds.get(gauge.unit.dimension, {}) if gauge.unit is not None else {}
        doubtful = {speed.symbol for wrong in out_of_order(by_symbol) for speed in wrong.all}
        sure = {symbol: some for symbol, some in by_symbol.items() if symbol not in doubtful}
        yield from _of(gauge, sure, is_glider(handbook))


def _of(gauge: Gauge, by_symbol: dict[str, list[Speed]], glider: bool) -> Iterator[Finding]:
    """One finding for each speed that is missed, at the first arc that misses it."""
    missed: dict[str, list[tuple[Band, Fraction]]] = {}
    factor = gauge.unit.factor if gauge.unit is not None else Fraction(1)
    for band in gauge.bands:
        for end, number in (("low", band.low), ("high", band.high)):
            symbol = _ENDS.get((folded(band.colour), end))
            if symbol in by_symbol and number is not None:
                amounts = [speed.amount for speed in by_symbol[symbol]]
                if not any(_meets(number * factor, amount, factor, glider and end == "low") for amount in amounts):
                    missed.setdefault(symbol, []).append((band, number))
    for symbol, ends in missed.items():
        (band, number), *others = ends
        declared = [speed.declared for speed in by_symbol[symbol]]
        said = " or ".join(f"`{each.name}`, {each.shown}" for each in declared)
        yield Finding(
            RULE.name,
            band.spot,
            f"The {band.colour} arc ends at {end_text(number, gauge.unit)}, and should at {said}.",
            f"Write `{{{_meant(by_symbol[symbol])}}}` there, so that arc and speed stay equal.",
            (
                *(Related(other.spot, "So does this one.") for other, _ in others),
                *(Related(each.spot, f"{each.shown} here.") for each in declared),
            ),
        )


def _meant(speeds: list[Speed]) -> str:
    """Of several rows the one on the safe side: the highest stall, the lowest limit."""
    safe = max if speeds[0].symbol.startswith("VS") else min
    return safe(speeds, key=lambda speed: speed.amount).declared.name


def _meets(end: Fraction, speed: Fraction, step: Fraction, above_the_stall: bool) -> bool:
    """Whether an arc ends at a speed; that of a glider may begin a tenth above the stall, to the nearest unit."""
    return end == speed or (above_the_stall and abs(end - speed * _ABOVE) < step)


RULE = Rule(
    name="arc-elsewhere",
    severity=Severity.WARNING,
    family="numbers",
    what=(
        "A gauge with `airspeed` in its name whose arcs do not end at the declared speeds: white from VS0 to a VFE, "
        "green from VS1 to VNO, yellow from there to VNE, red at VNE; for a glider with an engine white and green may "
        "begin at 1.1 times the stall. The gauge's unit has to have the basis of the speeds."
    ),
    why="The pilot flies by the arcs, and the book says another number than they do.",
    source=(
        "14 CFR 23.1545(b), as before amendment 23-64 (read in an edition of the 1970s, which marks calibrated "
        "airspeed; later ones mark indicated); that the arcs of a glider begin at 1.1 times the stall is CS-22 (from "
        "memory)"
    ),
    mend="Write the speeds into the gauge by reference, and compare with the instrument's face.",
    bad=(BAD,),
    good=(GOOD, GOOD_GLIDER),
    check=check,
)
