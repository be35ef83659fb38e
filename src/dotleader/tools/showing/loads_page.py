"""What is on in each phase against what the alternator gives, and how long the battery lasts without it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from rich.console import RenderableType
from rich.text import Text

from dotleader.cockpit.electric_words import listed_loads, load, minutes, name_of, rating, share
from dotleader.cockpit.endurance import Endurance, Offer, Stage, endurances
from dotleader.cockpit.loads import Loads, On, amps_of, is_unclear
from dotleader.cockpit.peaks import Peak, most, peaks
from dotleader.cockpit.timeline import Run
from dotleader.handbook.model import Control, Electrical, Handbook
from dotleader.handbook.wiring import Draw
from dotleader.rules.settings import limits_of
from dotleader.tools.showing.pages import dotted, indented, listed, prose, terminal

SIDE_LINE = "side line"
CAUTION = (
    "Sums of what is declared: rules of thumb, and no load analysis. Measure what is drawn, and go by the makers' "
    "current documents."
)


def loads_page(handbook: Handbook, electrical: Electrical, done: Run) -> Iterator[RenderableType]:
    """The table of the phases, then a battery for each card that is declared for a failed alternator."""
    limits = limits_of(handbook.settings)
    yield from _table(handbook, electrical, done, limits.exact("alternator-overloaded") / 100)
    found = endurances(handbook, done, limits.exact("battery-too-small") / 100)
    for one in found:
        yield ""
        yield from _battery(one, handbook, electrical)
    missing = _missing(electrical)
    if missing and not found:
        yield ""
        yield prose(f"How long the battery lasts without the alternator is not worked out: {missing}.")
    yield ""
    yield prose(CAUTION, "dim")


def _table(handbook: Handbook, electrical: Electrical, done: Run, share_of: Fraction) -> Iterator[RenderableType]:
    alternator = electrical.alternator
    limit = Fraction(0)
    if alternator is not None:
        limit = alternator.amount * (1 if electrical.read_on else share_of)
    gives = Text("no alternator is declared")
    if alternator is not None:
        part = f"read on {handbook.gauges[electrical.read_on].name}" if electrical.read_on else _part(share_of, limit)
        gives = Text(f"{alternator.name} {rating(alternator.amount)}, {part}")
    yield dotted(Text("The most that is on at once", style="bold"), gives)
    found = peaks(Loads(electrical, done.cockpit), done)
    by_phase: dict[str, list[Peak]] = {}
    for peak in found:
        by_phase.setdefault(peak.phase or SIDE_LINE, []).append(peak)
    rows: list[tuple[str, Text, Text]] = []
    before: tuple[On, ...] = ()
    for phase, some in by_phase.items():
        highest = max(some, key=lambda peak: (peak.fed, peak.amps))
        if not highest.amps:
            continue
        rows.append((phase, _sum(highest, electrical, limit), prose(_changed(before, highest.on, handbook))))
        before = highest.on
        if len(some) > 1:
            rows += [(f"  {peak.card.title}", _sum(peak, electrical, limit), Text("")) for peak in some]
    yield listed(rows)
    top = most(found)
    if top is not None:
        after = f", after `{top.item.challenge}`" if top.item is not None else ""
        told = listed_loads(top.on, handbook.controls)
        yield indented(prose(f"{load(top.amps)} on `{top.card.title}`{after}: {told}."))
    yield from _uncounted("Only while it moves, and in no sum", [each for each in _draws(handbook) if each[1].moving])
    yield from _uncounted("In no sum, because it is not said when or how much", _unclear(handbook, electrical))


def _uncounted(words: str, loads: list[tuple[Control, Draw]]) -> Iterator[RenderableType]:
    if loads:
        told = ", ".join(f"{control.name} {draw.spot.text}" for control, draw in loads)
        yield indented(prose(f"{words}: {told}."))


def _draws(handbook: Handbook) -> list[tuple[Control, Draw]]:
    return [(control, draw) for control in handbook.controls.values() for draw in control.wiring.draws]


def _unclear(handbook: Handbook, electrical: Electrical) -> list[tuple[Control, Draw]]:
    return [
        (control, draw)
        for control, draw in _draws(handbook)
        if is_unclear(draw, control) or (not draw.moving and amps_of(draw, electrical) is None)
    ]


def _part(share_of: Fraction, limit: Fraction) -> str:
    return f"of which {share(share_of, Fraction(1))} are {rating(limit)}"


def _sum(peak: Peak, electrical: Electrical, limit: Fraction) -> Text:
    if not peak.amps:
        return Text("nothing", style="dim")
    if not peak.fed or electrical.alternator is None:
        return Text(f"{load(peak.amps)} battery", style="dim")
    of = share(peak.amps, electrical.alternator.amount)
    return Text(f"{load(peak.amps)} {of:>5}", style="bold yellow" if peak.amps > limit else "bold")


def _changed(before: tuple[On, ...], on: tuple[On, ...], handbook: Handbook) -> str:
    """What is on, or no more on, since the phase before."""
    was, now = {one.control for one in before}, {one.control for one in on}
    parts = [
        f"{sign} {listed_loads(some, handbook.controls)}"
        for sign, some in (
            ("+", [one for one in on if one.control not in was]),
            (terminal().pick("−", "-"), [one for one in before if one.control not in now]),
        )
        if some
    ]
    return "; ".join(parts) or "the same"


def _battery(found: Endurance, handbook: Handbook, electrical: Electrical) -> Iterator[RenderableType]:
    assert electrical.battery is not None
    part = share(found.capacity / 60, electrical.battery.amount)
    amount = f"battery {_hours(electrical.battery.amount)}, of which {part} are {_hours(found.capacity / 60)}"
    yield dotted(Text(found.card.title, style="bold"), Text(amount))
    lasting, wanted = found.lasting, electrical.must_last
    left = None
    if lasting.minutes is not None:
        left = lasting.minutes - electrical.shed_after - electrical.landing_takes
    yield listed(
        (
            _stage("until the card is done", found.before, found.before.minutes, _loads(found.before.on, handbook)),
            _stage("on the way down", found.shed, left, _loads(found.shed.on, handbook)),
            _stage("landing", found.landing, found.landing.minutes, _landing(found, handbook)),
            (
                "in all",
                Text(_total(found), style="bold" if lasting.reaches(wanted) else "bold yellow"),
                _wanted(wanted),
            ),
        )
    )
    for question, offers in (
        ("Turned off as well until the landing, each buys:", found.offers),
        ("Left off in the landing, each buys:", found.for_landing),
    ):
        if offers:
            yield indented(prose(question))
            yield indented(listed(_offer(offer, handbook) for offer in offers))


def _offer(offer: Offer, handbook: Handbook) -> tuple[str, Text, Text]:
    gain = "and then nothing draws" if offer.minutes is None else minutes(offer.minutes)
    return name_of(offer.control, handbook.controls), Text("OFF"), prose(gain)


def _total(found: Endurance) -> str:
    if found.lasting.endless:
        return "no end"
    return "flat" if found.lasting.minutes is None else minutes(found.lasting.minutes)


def _wanted(wanted: Fraction) -> Text:
    return prose(f"{minutes(wanted)} are wanted")


def _hours(amount: Fraction) -> str:
    return f"{rating(amount)[:-2]} Ah"


def _stage(name: str, stage: Stage, time: Fraction | None, said: Text) -> tuple[str, Text, Text]:
    length = minutes(time) if time is not None else ""
    return name, Text(f"{length} {load(stage.amps)}".strip()), said


def _loads(on: tuple[On, ...], handbook: Handbook) -> Text:
    return prose(listed_loads(on, handbook.controls) or "nothing")


def _landing(found: Endurance, handbook: Handbook) -> Text:
    """What the normal cards turn on again, rather than all that is on."""
    left = {one.control for one in found.shed.on}
    again = [one for one in found.landing.on if one.control not in left]
    if not again:
        return prose("as before")
    return prose(f"the normal cards turn on again: {listed_loads(again, handbook.controls)}")


def _missing(electrical: Electrical) -> str:
    if electrical.battery is None:
        return "no `battery` is declared"
    if electrical.alternator is None:
        return "no `alternator` is declared"
    if not electrical.when_it_fails:
        return "say below `alternator` which card is for it, `when it fails .... Alternator failure`"
    return "the alternator feeds in no phase in which that card can be called for"


def loads_object(handbook: Handbook, electrical: Electrical, done: Run) -> dict[str, object]:
    """For programs: amperes and minutes as decimals, not rounded to a safe side."""
    limits = limits_of(handbook.settings)
    found = peaks(Loads(electrical, done.cockpit), done)
    failed = endurances(handbook, done, limits.exact("battery-too-small") / 100)
    alternator, battery = electrical.alternator, electrical.battery
    return {
        "alternator_amperes": None if alternator is None else float(alternator.amount),
        "continuous_share": float(limits.exact("alternator-overloaded") / 100),
        "battery_ampere_hours": None if battery is None else float(battery.amount),
        "battery_share": float(limits.exact("battery-too-small") / 100),
        "cards": [
            {
                "title": peak.card.title,
                "phase": peak.phase or None,
                "after": peak.item.challenge if peak.item is not None else None,
                "alternator_feeds": peak.fed,
                "amperes": float(peak.amps),
                "on": _on_object(peak.on, handbook),
            }
            for peak in found
        ],
        "alternator_failed": [_battery_object(one, handbook, electrical) for one in failed],
    }


def _battery_object(found: Endurance, handbook: Handbook, electrical: Electrical) -> dict[str, object]:
    return {
        "card": found.card.title,
        "minutes": None if found.lasting.minutes is None else float(found.lasting.minutes),
        "endless": found.lasting.endless,
        "wanted_minutes": float(electrical.must_last),
        "stages": [
            {
                "minutes": None if stage.minutes is None else float(stage.minutes),
                "amperes": float(stage.amps),
                "on": _on_object(stage.on, handbook),
            }
            for stage in (found.before, found.shed, found.landing)
        ],
        "turned_off_next": _offers_object(found.offers, handbook),
        "left_off_in_the_landing": _offers_object(found.for_landing, handbook),
    }


def _on_object(on: tuple[On, ...], handbook: Handbook) -> dict[str, float]:
    return {name_of(one.control, handbook.controls): float(one.amps) for one in on}


def _offers_object(offers: tuple[Offer, ...], handbook: Handbook) -> list[dict[str, object]]:
    return [
        {
            "control": name_of(offer.control, handbook.controls),
            "minutes": None if offer.minutes is None else float(offer.minutes),
        }
        for offer in offers
    ]
