"""A critical item that is looked at only once before it matters."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Card
from dotleader.rules.rule import Example, Rule
from dotleader.rules.safety.killers import Spoken, before_landing, in_order, spoken, up_to_takeoff
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_TAXI = """\
equipment
  Flaps .... UP, 10 deg, 40 deg

normal Taxi
  when the engine runs smoothly
  Flaps .... 10 deg [critical]
  Brakes .... BOTH SIDES HOLD

normal Before takeoff
  when holding short of the runway
"""

BAD_1 = Example(
    _TAXI + "  Seat belts .... FASTENED\n\nnormal Before landing\n  when joining\n  Flaps .... 40 deg\n",
    (("critical-once", "Flaps"),),
)

BAD_2 = Example(
    _TAXI + "  Flaps .... 10 deg [critical]\n\nnormal Before landing\n  when joining\n  Seat belts .... FASTENED\n",
    (("critical-once", "Flaps"),),
)

GOOD = Example(_TAXI + "  Flaps .... 10 deg [critical]\n\nnormal Before landing\n  when joining\n  Flaps .... 40 deg\n")


def check(subject: Subject) -> Iterator[Finding]:
    cards = in_order(subject.handbook)
    departing, arriving = up_to_takeoff(cards), before_landing(cards)
    by_key: dict[str, list[Spoken]] = {}
    for one in spoken(cards):
        by_key.setdefault(one.key, []).append(one)
    going, coming = {id(card) for card in departing}, {id(card) for card in arriving}
    for some in by_key.values():
        critical = [one for one in some if one.item.critical]
        if critical:
            yield from _before_takeoff(critical, some, departing, going)
            yield from _before_landing(critical, some, arriving, coming)


def _before_takeoff(
    critical: list[Spoken], some: list[Spoken], departing: list[Card], going: set[int]
) -> Iterator[Finding]:
    """`going` are the ids of the departing cards: cards are long to compare."""
    first = next((one for one in critical if id(one.card) in going), None)
    if first is None or len(departing) < 2:
        return
    there = list({id(one.card): one.card for one in some if id(one.card) in going}.values())  # as a flight comes there
    last = departing[-1]
    on_last = there[-1] is last
    if len(there) > 1 and on_last:
        return
    name = short(first.challenge.phrase.text)
    others = [card for card in there if card is not first.card]
    if on_last:
        message = f"`{name}` is critical and stands on `{last.title}` only, of the cards up to takeoff."
        advice = "Let it be looked at on an earlier card as well, where there is time to put it right."
    else:
        message = f"`{name}` is critical and does not stand on `{last.title}`, the last card before takeoff."
        advice = f"Repeat it on `{last.title}`, near its head."
    related = tuple(Related(card.spot, "It stands on this card, too.") for card in others)
    yield Finding(
        RULE.name,
        first.challenge.phrase.spot,
        message,
        advice,
        (*related, Related(last.spot, "The last card before takeoff.")),
    )


def _before_landing(
    critical: list[Spoken], some: list[Spoken], arriving: list[Card], coming: set[int]
) -> Iterator[Finding]:
    first = critical[0]
    if not arriving or not first.challenge.control or any(id(one.card) in coming for one in some):
        return
    name = short(first.challenge.phrase.text)
    yield Finding(
        RULE.name,
        first.challenge.phrase.spot,
        f"`{name}` is critical and stands on no card before landing.",
        f"Let it be looked at on `{arriving[-1].title}` or before, or say with a comment why it cannot have changed.",
        tuple(Related(card.spot, "A card before landing.") for card in arriving),
    )


RULE = Rule(
    name="critical-once",
    severity=Severity.WARNING,
    family="safety",
    what=(
        "An item marked `[critical]` on a normal card up to takeoff that stands, by its challenge, on fewer than two "
        "cards up to takeoff or not on the last of them; or that names a control which stands on no card from descent "
        "to landing. Handbooks without such cards are not looked at."
    ),
    why="An item that kills when it is missed, and that may be changed after it was looked at, is looked at again.",
    source="NASA CR-177549 (Degani and Wiener, 1990), appendix A, guideline 11, as read in a summary",
    mend="Repeat the item on the last card before takeoff, and before landing.",
    bad=(BAD_1, BAD_2),
    good=(GOOD,),
    check=check,
)
