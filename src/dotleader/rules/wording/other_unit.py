"""A response in another unit than the one that the instrument shows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dotleader.handbook.amounts.arithmetic import exactly_in
from dotleader.handbook.amounts.numerals import NumberTrouble, read_number
from dotleader.handbook.amounts.quantity import Quantity
from dotleader.handbook.amounts.trouble import Trouble
from dotleader.handbook.amounts.units import Unit, find_unit
from dotleader.handbook.cards import Item, Use
from dotleader.handbook.model import Handbook
from dotleader.handbook.shaping import unit_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.wording.unit_words import Typed, comparable, same_scale, typed_amounts
from dotleader.source.finding import Finding, Fix, Related, Severity, swapped
from dotleader.source.record import record
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded

BAD_1 = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

gauge Engine speed in rpm from unverified

equipment
  Altimeter .... any hPa
  Throttle .... CLOSED to FULL
    read on .... Engine speed

normal Run-up
  when clear of others
  Oil pressure .... AT LEAST 4 BAR
  Oil pressure .... {Oil pressure green in bar}
  Altimeter .... 29.92 inHg
  Throttle .... 1,800 rpm
""",
    (("other-unit", "4 BAR"), ("other-unit", "{Oil pressure green in bar}"), ("other-unit", "29.92 inHg")),
)

BAD_2 = Example(
    """\
handbook Ostrel Two
  airspeed in .... KIAS

speeds
  VY .... 92 mph IAS  unverified

normal Climb
  when clear of the runway
  Airspeed .... 75 mph
  Airspeed .... {VY}
""",
    (("other-unit", "75 mph"), ("other-unit", "{VY}")),
)

GOOD = Example(
    """\
handbook Ostrel Two
  airspeed in .... KIAS

speeds
  VG .... 82 KIAS  unverified

values
  tank .... 19 US gal  unverified

gauge Fuel quantity in US gal from unverified

gauge Oil pressure in psi from unverified
  green .... 55 to 95

gauge Elapsed time in min from unverified

equipment
  Altimeter .... any hPa
  Throttle .... CLOSED to FULL

normal Descent
  when ten minutes from the airfield
  Airspeed .... {VG}, AT MOST 100 kt
    That is {VG in mph}.
  Sink rate .... 500 ft/min
  Wind .... BELOW 10 km/h
  Fuel quantity .... {tank}, 72 l
  Fuel quantity .... 90 min AT CRUISE
  Oil pressure .... 60 PSI WITHIN 30 s
  Altimeter .... FIELD ELEVATION, 400 ft
  Throttle .... 5 mm OPEN
  Elapsed time .... 90 s
""",
)

_AIRSPEED = frozenset(
    {
        "airspeed", "air speed", "indicated airspeed", "ias", "speed", "approach speed", "climb speed", "glide speed",
        "best glide", "final approach speed", "rotation speed", "landing speed",
    }
)  # fmt: skip
"""What a challenge calls what the airspeed indicator shows, where it is not declared (common practice, no source)."""


@record
class Instrument:
    """What a response is read on: the unit that it shows, and where that is said."""

    name: str
    unit: Unit
    spot: Spot


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    asi = _airspeed_indicator(handbook)
    by_key: dict[str, list[Instrument]] = {}
    for _, item in subject.lines().items:
        read_on = _read_on(item, handbook, asi, by_key) if item.response is not None else ()
        if read_on:
            yield from _said(item, read_on, handbook)


def _airspeed_indicator(handbook: Handbook) -> Instrument | None:
    """The airspeed indicator, whose unit the handbook gives, where it is not declared as a gauge."""
    fact = handbook.facts.get("airspeed in")
    unit = find_unit(fact.text) if fact is not None else None
    return Instrument("Airspeed", unit, fact.spot) if isinstance(unit, Unit) and fact is not None else None


def _read_on(
    item: Item, handbook: Handbook, asi: Instrument | None, by_key: dict[str, list[Instrument]]
) -> list[Instrument]:
    found: list[Instrument] = []
    for challenge in item.challenges:
        key = challenge.gauge or challenge.control
        if key:
            if key not in by_key:
                by_key[key] = list(_declared(key, handbook))
            found += by_key[key]
        elif asi is not None and folded(challenge.phrase.text) in _AIRSPEED:
            found.append(asi)
    return found


def _declared(key: str, handbook: Handbook) -> Iterator[Instrument]:
    control = handbook.controls.get(key)
    if control is not None and control.unit is not None:
        yield Instrument(control.name, control.unit, control.spot)
    for name in (key, *(control.read_on if control is not None else ())):
        gauge = handbook.gauges.get(name)
        if gauge is not None and gauge.unit is not None:
            yield Instrument(gauge.name, gauge.unit, gauge.spot)


def _said(item: Item, read_on: list[Instrument], handbook: Handbook) -> Iterator[Finding]:
    """The first amount in a unit that none of the instruments has, unless another amount has it."""
    assert item.response is not None
    other: list[tuple[Instrument, Spot, str, Fix | None]] = []
    for spot, unit, typed in _amounts(item, handbook):
        like = [instrument for instrument in read_on if comparable(instrument.unit, unit)]
        if any(same_scale(instrument.unit, unit) for instrument in like):
            return
        if like and unit.dimension.name != "time":  # a clock shows minutes and seconds
            other.append((like[0], spot, _help(like[0], typed, unit), _fix(spot, typed)))
    if other:
        instrument, spot, help_, fix = other[0]
        yield Finding(
            RULE.name,
            spot,
            f"`{spot.text}` is not in `{instrument.unit.symbol}`, which `{instrument.name}` shows.",
            help_,
            (Related(instrument.spot, "Its unit is declared here."),),
            fix=fix,
        )


def _amounts(item: Item, handbook: Handbook) -> Iterator[tuple[Spot, Unit, Typed | Use]]:
    response = item.response
    assert response is not None
    text, start = response.spot.text, response.spot.start
    for use in response.uses:
        unit = _unit_of_use(use, handbook)
        if unit is not None:
            yield use.spot, unit, use
        hidden = use.spot.start - start
        text = text[:hidden] + " " * (use.spot.end - use.spot.start) + text[hidden + use.spot.end - use.spot.start :]
    for typed in typed_amounts(text):
        yield Spot(response.spot.source, start + typed.start, start + typed.end), typed.unit, typed


def _unit_of_use(use: Use, handbook: Handbook) -> Unit | None:
    if folded(use.name) != use.key and " in " in use.name:
        asked = find_unit(use.name.rpartition(" in ")[2])
        if isinstance(asked, Unit):
            return asked
    gauge = handbook.gauges.get(use.key)
    if gauge is not None:
        return gauge.unit
    value = handbook.values.get(use.key)
    return unit_of(value.shape) if value is not None and value.shape is not None else None


def _help(instrument: Instrument, typed: Typed | Use, unit: Unit) -> str:
    said = f"Give it in `{instrument.unit.symbol}`, rounded to the safe side"
    if isinstance(typed, Use):
        return f"{said}: `{{... in {instrument.unit.symbol}}}` works it out."
    about = _about(typed, unit, instrument.unit)
    return f"{said}: `{typed.number} {unit.symbol}` is about {about} {instrument.unit.symbol}." if about else f"{said}."


def _about(typed: Typed, unit: Unit, wanted: Unit) -> str:
    number = read_number(typed.number)
    if isinstance(number, NumberTrouble):
        return ""
    if unit.dimension == wanted.dimension:
        exact = exactly_in(Quantity(number.value, unit), wanted)
        if isinstance(exact, Trouble):
            return ""
        value: Fraction = exact.number
    else:
        value = number.value * unit.factor / wanted.factor  # speeds of different bases
    return f"{float(value):.4g}"


def _fix(spot: Spot, typed: Typed | Use) -> Fix | None:
    if not isinstance(typed, Use) or " in " not in typed.name:
        return None
    return swapped(spot, f"{{{typed.name.rpartition(' in ')[0]}}}", safe=False)


RULE = Rule(
    name="other-unit",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A number or a reference in a response that measures what the instrument measures, in a unit that the "
        "instrument does not show: bar for a gauge in psi. What is read on a gauge, on the gauge of a lever (`read "
        "on`), on a control with `any UNIT`, and `Airspeed` where the handbook says `airspeed in`. Where the right "
        "unit stands beside it there is no finding."
    ),
    why="Nobody converts units while an engine fails, and a number that the dial also has is taken for it.",
    source="UK procedure audit aid after HSG 48, values and limits in the same units as the instrument (read)",
    mend="Give the number as the instrument shows it. A remark in another unit stands in the detail.",
    bad=(BAD_1, BAD_2),
    good=(GOOD,),
    check=check,
    fix="unsafe",
)
