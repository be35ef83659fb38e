"""A reading that is judged before it is read."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Item
from dotleader.handbook.model import Gauge
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.wording.vague_response import is_vague
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

BAD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

gauge Oil temperature in degC from unverified
  green .... 50 to 118

gauge Fuel quantity in US gal from unverified

normal Before takeoff
  when holding short of the runway
  Oil pressure .... GOOD
  Oil temperature .... WITHIN LIMITS
  Oil temperature .... NOT TOO HOT
  Fuel quantity .... ENOUGH FOR THE FLIGHT
""",
    (
        ("response-without-number", "GOOD"),
        ("response-without-number", "WITHIN LIMITS"),
        ("response-without-number", "NOT TOO HOT"),
        ("response-without-number", "ENOUGH FOR THE FLIGHT"),
    ),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  yellow .... 25 to 55
  green .... 55 to 95

gauge Ammeter in A from unverified

gauge Fuel quantity in US gal from unverified

normal Before takeoff
  when holding short of the runway
  Oil pressure .... {Oil pressure green}
  Oil pressure .... IN THE GREEN
  Oil pressure .... RISING
  Oil pressure .... SUFFICIENT
    At least {Oil pressure yellow low}.
  Ammeter .... CHARGING
  Fuel quantity .... AGREES WITH THE DIPSTICK
  Seat belts .... GOOD
""",
)

_JUDGING = frozenset(
    """
    acceptable adequate available enough fine good limits proper range reasonable right sufficient tolerance
    correct indicated indicating monitor monitored noted observed read scanned seen watch watched
    present healthy safe registering showing indication warm hot cool high serviceable working functioning crosschecked
    """.split()  # noqa: SIM905
)
_FILLING = frozenset(
    """
    a all and are as at both for fuel in is it its of on or oil the flight trip reading readings pressure temperature
    value values within normal checked check set ok okay inside looks not too plus reserve no with
    """.split()  # noqa: SIM905
)
_WORD = re.compile(r"[a-z]+")
_NUMBER = re.compile(r"[\d{]")


def check(subject: Subject) -> Iterator[Finding]:
    gauges = subject.handbook.gauges
    if not gauges:
        return
    for _, item in subject.lines().items:
        named = next((challenge.gauge for challenge in item.challenges if challenge.gauge), "")
        if named and item.response is not None and _only_judges(item):
            gauge = gauges[named]
            yield Finding(
                RULE.name,
                item.response.spot,
                f"`{item.response.text}` gives no reading of `{gauge.name}`.",
                _help(gauge),
                (Related(gauge.spot, "It is declared here."),),
            )


def _only_judges(item: Item) -> bool:
    """Whether the response is a judgement, and nothing below it gives the number. What is only vague is said so."""
    assert item.response is not None
    text = item.response.spot.text
    if _NUMBER.search(text) or any(_NUMBER.search(phrase.spot.text) for phrase in item.detail) or is_vague(text):
        return False
    words = _WORD.findall(folded(text))
    return any(word in _JUDGING for word in words) and all(word in _JUDGING or word in _FILLING for word in words)


def _help(gauge: Gauge) -> str:
    green = next((band for band in gauge.bands if folded(band.colour) == "green"), None)
    if green is not None and sum(folded(band.colour) == "green" for band in gauge.bands) == 1:
        return f"Say what it has to read: `{{{gauge.name} {green.colour}}}` prints as `{green.shown}`."
    unit = f" in {gauge.unit.symbol}" if gauge.unit is not None else ""
    return f"Say what it has to read{unit}, a number or a range: `AT LEAST 25`."


RULE = Rule(
    name="response-without-number",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A response to a declared gauge that judges what it shows (`GOOD`, `WITHIN LIMITS`, `SUFFICIENT`) and gives no "
        "number, no range and no colour, neither itself nor in its detail. What is seen to happen (`RISING`, "
        "`CHARGING`) is a reading."
    ),
    why=(
        "A judgement can be spoken without a look at the needle; a report to a confidential reporting scheme told of "
        "an item that had been answered so."
    ),
    source="NASA CR-177549 (Degani and Wiener, 1990) 6.2.3, good form is a number, on ASRS 76798 (read in a summary)",
    mend="Say the number or the range, best by reference: `{Oil pressure green}`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
