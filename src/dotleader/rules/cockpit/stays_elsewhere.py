"""A control is said to stay in a position in which it does not stand."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.cockpit.certain import Certain
from dotleader.cockpit.moving import Astray
from dotleader.handbook.cards import Card
from dotleader.handbook.model import Control
from dotleader.rules.cockpit.tracing import last_moved, moment
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

_EQUIPMENT = """\
equipment
  Fuel pump .... OFF, ON
    parked .... OFF

normal Engine start
  when seated
  Fuel pump .... {pump}

normal Before takeoff
  when holding short of the runway
  Fuel pump .... STAYS ON
"""

BAD = Example(_EQUIPMENT.replace("{pump}", "ON then OFF"), (("stays-elsewhere", "Fuel pump .... STAYS ON"),))
GOOD = Example(_EQUIPMENT.replace("{pump}", "ON"))
GOOD_BY_ITSELF = Example(
    """\
equipment
  Canopy .... OPEN, LATCHED
    parked .... OPEN

normal Before takeoff
  when holding short of the runway
  Canopy .... LATCHED

normal Shutdown
  when parked
  Canopy .... OPEN

emergency Canopy open in flight
  when the canopy opens in the air
  Canopy .... STAYS OPEN
  Land .... NEAREST AIRFIELD
  end
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    done = subject.run()
    certain = Certain(done)
    for occasion in done.occasions.astray:
        what = occasion.met.what
        when = moment(certain, occasion, subject.handbook) if isinstance(what, Astray) else None
        if not isinstance(what, Astray) or when is None:
            continue
        control = subject.handbook.controls[what.control]
        if occasion.called and _by_itself(occasion.ran.card, control):
            continue
        mover = last_moved(done, occasion, control.key)
        related = [Related(mover.item.spot, "It was moved here.")] if mover is not None else []
        yield Finding(
            RULE.name,
            occasion.line.item.spot,
            f"`{control.name}` stands at `{what.stands}` here, not at `{what.said}`{when.words}.",
            f"Write `{what.said}` if it is to be moved, or change what moved it before.",
            (*related, Related(control.spot, "It is declared here.")),
        )


def _by_itself(card: Card, control: Control) -> bool:
    """Whether a card is called for by what has become of a control: a canopy that opens in flight stays open."""
    return card.when is not None and re.search(rf"\b{re.escape(control.key)}\b", folded(card.when.text)) is not None


RULE = Rule(
    name="stays-elsewhere",
    severity=Severity.WARNING,
    family="cockpit",
    what=(
        "An item whose response says `STAYS ON` (or another position) at a point where the control stands elsewhere, "
        "be it only where a condition is so. Of a card off the main line it is named when it was called for; one "
        "whose trigger names the control is called for by what has become of it, and is left out."
    ),
    why="The pilot is told not to touch what has to be moved.",
    source=NO_SOURCE,
    mend="Write the position alone if the control is to be moved; or mend the line that moved it before.",
    bad=(BAD,),
    good=(GOOD, GOOD_BY_ITSELF),
    check=check,
)
