"""The order of a card sends the hand to and fro over the panel."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.panel import places, way_of
from dotleader.handbook.cards import Kind
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_PANEL = "equipment\n" + "".join(
    f"  {name} .... OFF, ON\n    at .... panel {right} mm, 45 mm\n"
    for name, right in (("Master switch", 40), ("Fuel pump", 80), ("Pitot heat", 120), ("Nav lights", 160))
)

BAD = Example(
    _PANEL
    + """
normal Before start
  when seated
  Master switch .... ON
  Pitot heat .... OFF
  Fuel pump .... ON
  Nav lights .... ON
""",
    (("hand-goes-back", "Fuel pump .... ON"),),
)

GOOD_1 = Example(
    _PANEL
    + """
normal Before start
  when seated
  Master switch .... ON
  Fuel pump .... ON
  Pitot heat .... OFF
  Nav lights .... ON
"""
)

GOOD_2 = Example(
    _PANEL
    + """
normal Before start
  when seated
  Pitot heat .... OFF [critical]
  Master switch .... ON
  Fuel pump .... ON
  Nav lights .... ON
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    known = places(subject.handbook.controls)
    if not known:
        return
    most = subject.limits["hand-goes-back"]
    for card in subject.handbook.cards:
        if card.kind is not Kind.NORMAL:
            continue
        way = way_of(card, subject.handbook.controls, known)
        back = sorted((*way.turns, *way.returns), key=lambda reach: reach.item.spot.order)
        if len(back) <= most:
            continue
        first, *others = back
        yield Finding(
            RULE.name,
            first.item.spot,
            f"On `{card.title}` the hand goes back {len(back)} times over the panel, the first time to "
            f"`{first.control.name}`; its way is {way.distance} mm.",
            "Put the items in the order in which their controls stand, but for critical ones, which go first, and for "
            "what has to wait for something else.",
            tuple(Related(one.item.spot, f"Here it goes back to `{short(one.control.name)}`.") for one in others),
        )


RULE = Rule(
    name="hand-goes-back",
    severity=Severity.NOTE,
    family="cockpit",
    what=(
        "A normal card on whose controls, where they are declared to stand somewhere (`at .... panel 42 mm, 110 mm`), "
        "the hand goes back sideways, or comes back to a panel that it had left, more than once. What is critical is "
        "not counted: it goes first wherever it stands."
    ),
    why="A hand that follows the panel comes to the next control by itself, and notices one that it has passed over.",
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990), appendix A, guideline 8, as read in a summary; guideline 10, "
        "critical items first, goes before it; how often is too often is our own measure"
    ),
    mend=("Order the items as the controls stand. `dotleader run --card TITLE` says how far the hand goes."),
    bad=(BAD,),
    good=(GOOD_1, GOOD_2),
    check=check,
)
