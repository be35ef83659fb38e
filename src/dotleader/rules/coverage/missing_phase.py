"""A phase of flight that no normal card is for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from dotleader.handbook.cards import Card, Kind
from dotleader.handbook.model import Handbook
from dotleader.handbook.phases import phase_of_title
from dotleader.rules.coverage.phase_titles import phases_in_title
from dotleader.rules.coverage.unplaced import unplaced
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

LISTS: dict[str, tuple[tuple[str, ...], str]] = {
    "preflight inspection": (("preflight",), "normal Preflight inspection"),
    "before engine start": (("before start",), "normal Before engine start"),
    "engine starting": (("engine start",), "normal Engine start"),
    "before taxiing": (("taxi",), "normal Before taxi"),
    "before takeoff": (("before takeoff",), "normal Before takeoff"),
    "after takeoff": (("climb",), "normal After takeoff"),
    "cruise": (("cruise",), "normal Cruise"),
    "descent": (("descent",), "normal Descent"),
    "before landing": (("approach",), "normal Before landing"),
    "after landing": (("after landing",), "normal After landing"),
    "engine shutdown and securing": (("shutdown", "parking"), "normal Shutdown"),
}
"""The lists of FAA-H-8083-3C chapter 1 in their order, each with the phases that serve for it and a card to write."""

_CARDS = """\
handbook Ostrel Two flight handbook  # allow missing-emergency: an example of normal cards

normal Preflight inspection
  when arriving at the aircraft
  Fuel caps .... TIGHT

normal Before engine start
  when seated
  Seat belts .... FASTENED

normal Engine start
  when the propeller area is clear
  Starter .... ENGAGED

normal Taxi
  when the engine runs smoothly
  Brakes .... BOTH SIDES HOLD

normal Before takeoff
  when holding short of the runway
  Trim .... TAKEOFF MARK

normal Climb
  when clear of the runway
  Flaps .... UP

normal Cruise
  when level
  Mixture .... LEANED

normal Descent
  when ten minutes from the airfield
  Altimeter .... QNH

normal Before landing
  when joining the circuit
  Mixture .... RICH

normal After landing
  when clear of the runway
  Flaps .... UP
"""

BAD = Example(_CARDS, (("missing-phase", "handbook Ostrel Two flight handbook"),))

GOOD = Example(
    _CARDS
    + """
normal Leaving the stand tidy
  phase parking
  when the propeller has stopped
  Magnetos .... OFF
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    if handbook.loose:
        return
    served = {phase for card in handbook.cards if card.kind is Kind.NORMAL for phase in _phases(card)}
    missing = {name: phases for name, (phases, _) in LISTS.items() if served.isdisjoint(phases)}
    perhaps = _perhaps_there(missing, handbook)
    for rank, (name, (phases, sample)) in enumerate(LISTS.items(), 1):
        if name in missing and name not in perhaps:
            yield Finding(
                RULE.name,
                handbook.spot,
                f"This handbook has no normal card for {name}.",
                f"Write `{sample}`, or say `phase {phases[0]}` on the card that serves for it.",
                rank=rank,
            )


def _perhaps_there(missing: Mapping[str, tuple[str, ...]], handbook: Handbook) -> set[str]:
    """The missing lists for which there stands a card, in their place, that fits no phase, and is said for that."""
    there: set[str] = set()
    for between, count in Counter(phases for _, phases in unplaced(handbook)).items():
        wanted = {name for name, phases in missing.items() if not between.isdisjoint(phases)}
        if len(wanted) <= count:
            there |= wanted
    return there


def _phases(card: Card) -> set[str]:
    """The phases that a card serves for: that of its `phase` line, else those that its title speaks of.

    A card off the main line serves only for a phase that its title begins with: `Hot start` is no list for starting.
    """
    of_title = phase_of_title(card.title)
    if card.phase and card.phase != of_title:
        return {card.phase}
    return {of_title} if card.during else phases_in_title(card.title)


RULE = Rule(
    name="missing-phase",
    severity=Severity.WARNING,
    family="coverage",
    what=(
        "A handbook without a normal card for one of these: preflight inspection, before engine start, engine "
        "starting, before taxiing, before takeoff, after takeoff, cruise, descent, before landing, after "
        "landing, engine shutdown and securing. Usual titles serve (`Taxi` for before taxiing, `Climb` for "
        "after takeoff, `Shutdown` or `Parking` for securing), and a title may speak of several (`Descent and "
        "approach`); a `phase` line goes before the title."
    ),
    why=("What is done in a phase without a list is done from memory, and is forgotten on the day that matters."),
    source="FAA-H-8083-3C, Airplane Flying Handbook, chapter 1, Use of Checklists",
    mend=(
        "Write the card. Where one serves under another title, give it a `phase` line. Where a phase needs "
        "none, say why on the line of the `handbook` block: `# allow missing-phase: REASON`."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
