"""A battery that does not last to the landing when the alternator has failed."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Unread
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_BOOK = """\
electrical from unverified
  alternator .... 60 A
    needs ....... Alternator ON
    when it fails .... Alternator failure
  battery ....... 12 Ah
    needs ....... Master switch ON

equipment
  Master switch .... OFF, ON
  Alternator .... OFF, ON
  Radio ......... OFF, ON
    draws ....... 4 A
  Pitot heat .... OFF, ON
    draws ....... 8 A
  Nav lights .... OFF, ON
    draws ....... 9 A

normal Before takeoff
  when holding short
  Master switch + Alternator .... ON
  Radio ......... ON
  Nav lights + Pitot heat .... ON

abnormal Alternator failure
  when the alternator light is on
  Alternator .... OFF
  {shed}
  Land .......... NEAREST AIRFIELD
  end
"""

BAD = Example(_BOOK.format(shed="Radio ......... ON"), (("battery-too-small", "12 Ah"),))
GOOD = Example(_BOOK.format(shed="Nav lights + Pitot heat .... OFF"))


def check(subject: Subject) -> Iterator[Finding]:
    electrical = subject.handbook.electrical
    if electrical is None or electrical.battery is None or not electrical.when_it_fails:
        return
    # Only a handbook that asks for it pays for these imports.
    from dotleader.cockpit.circuits import doubtful_loads  # noqa: PLC0415
    from dotleader.cockpit.electric_words import listed_loads, load, minutes  # noqa: PLC0415
    from dotleader.cockpit.endurance import endurances  # noqa: PLC0415

    handbook, run, share = subject.handbook, subject.run(), subject.limits.exact(RULE.name) / 100
    controls = handbook.controls
    short = [
        found
        for found in endurances(handbook, run, share)
        # What could not be read may be what is turned off.
        if not found.lasting.reaches(electrical.must_last)
        and not any(isinstance(step, Unread) for step in every_step(found.card.steps))
    ]
    if not short:
        return
    # What follows from a number that is said to be doubtful where it stands is not said again.
    sure = {found.card.key: found for found in endurances(handbook, run, share, doubtful_loads(handbook))}
    for found in short:
        if found.card.key in sure and sure[found.card.key].lasting.reaches(electrical.must_last):
            continue
        lasting = found.lasting
        lasts = "is flat before the landing is over"
        if lasting.minutes is not None:
            lasts = f"lasts {minutes(lasting.minutes)}"
        left = listed_loads(found.shed.on, controls, 5) or "nothing"
        bought = "".join(
            f" `{controls[offer.control].name}` OFF buys {minutes(offer.minutes)}."
            for offer in found.offers[:3]
            if offer.minutes is not None and offer.minutes >= 1
        )
        yield Finding(
            RULE.name,
            electrical.battery.spot,
            f"With `{found.card.title}` the battery {lasts}, and {minutes(electrical.must_last)} are wanted: "
            f"{load(found.before.amps)} for {minutes(electrical.shed_after)}, then {load(found.shed.amps)}, and "
            f"{load(found.landing.amps)} for the last {minutes(electrical.landing_takes)}.",
            f"Turn more off on the card, or fit a larger battery. On after it: {left}.{bought}",
            (Related(found.card.spot, "This card says what is turned off."),),
        )


RULE = Rule(
    name="battery-too-small",
    severity=Severity.WARNING,
    family="electrical",
    what=(
        "After the alternator has failed in cruise, and the card that is declared for it (`when it fails`) has been "
        "done, three quarters of the battery's capacity do not last 30 minutes, or as long as `must last` says. "
        "Counted are what is on in cruise for 5 minutes (`shed after`), what the card leaves on, and for the last 10 "
        "minutes (`landing takes`) the most that the normal cards for descent, approach and landing turn on again."
    ),
    why="When the battery is flat, radio, lights, flaps and often the gauges are gone, and nobody can tell when.",
    source=(
        "14 CFR 23.1353(h) (Amdt 23-62): the duty read in part, 30 minutes from memory; the method with 75 per cent of "
        "the capacity from an avionics installation manual (190-02246-10 rev. 11, page 3-38)"
    ),
    mend=(
        "Turn off on the card what is not needed to land, the largest first; `dotleader run --loads` shows how many "
        "minutes each switch buys. Or fit a larger battery."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
