"""The order of a card sends the hand to and fro over the panel."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dotleader.cockpit.panel import Reach, Way, places, way_of
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
  Fuel pump .... OFF
  Nav lights .... ON
  Master switch .... ON
  Pitot heat .... OFF
""",
    (("hand-goes-back", "Master switch .... ON"),),
)

GOOD_SWEEP = Example(
    _PANEL
    + """
normal Before start
  when seated
  Master switch .... ON
  Pitot heat .... OFF
  Fuel pump .... ON
  Nav lights .... ON
"""
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


GOOD_WAITING = Example(
    _PANEL
    + """
  Flaps .... UP, 40 deg
    needs .... Master switch ON
    at .... panel 20 mm, 45 mm

normal Preflight
  when before the flight
  Nav lights .... OFF
  Master switch .... ON
  Flaps .... 40 deg
  Pitot heat .... ON then OFF
  Master switch .... OFF
"""
)

GOOD_BOTH = Example(
    _PANEL
    + """
normal Before start
  when seated
  Nav lights .... OFF
  Fuel pump + Pitot heat .... OFF
  Master switch .... ON
  Fuel pump .... ON
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    known = places(subject.handbook.controls)
    if not known:
        return
    most, times = subject.limits["hand-goes-back"], subject.limits.exact("hand-goes-back way")
    for card in subject.handbook.cards:
        if card.kind is not Kind.NORMAL:
            continue
        way = way_of(card, subject.handbook.controls, known)
        free = _free(way)
        back = sorted(
            (reach for reach in (*way.turns, *way.returns) if reach in free), key=lambda reach: reach.item.spot.order
        )
        breadth = _breadth(way)
        if len(back) <= most or way.distance < times * breadth:
            continue
        first, *others = back
        yield Finding(
            RULE.name,
            first.item.spot,
            f"On `{card.title}` the hand goes back {len(back)} times over the panel, the first time to "
            f"`{first.control.name}`; its way is {way.distance} mm, over controls {round(breadth)} mm apart.",
            "Put the items in the order in which their controls stand, but for critical ones, which go first, and for "
            "what has to wait for something else.",
            tuple(Related(one.item.spot, f"Here it goes back to `{short(one.control.name)}`.") for one in others),
        )


def _breadth(way: Way) -> Fraction:
    """How far apart the controls of a way are, panel by panel: a hand that goes over each panel once has this way."""
    across: dict[str, list[Fraction]] = {}
    for reach in way.reaches:
        across.setdefault(reach.place.panel, []).append(reach.place.right)
    return sum((max(rights) - min(rights) for rights in across.values()), Fraction())


def _free(way: Way) -> list[Reach]:
    """Where the hand might have come earlier: to a control for the first time, which waits for none that was moved."""
    free: list[Reach] = []
    seen: set[str] = set()
    for reach in way.reaches:
        waits = any(key in seen for need in reach.control.needs for key, _ in need.alternatives)
        if reach.control.key not in seen and not waits:
            free.append(reach)
        seen.add(reach.control.key)
    return free


RULE = Rule(
    name="hand-goes-back",
    severity=Severity.NOTE,
    family="cockpit",
    what=(
        "A normal card on whose controls, where they are declared to stand somewhere (`at .... panel 42 mm, 110 mm`), "
        "the hand goes back sideways, or comes back to a panel that it had left, more than once, and its way is at "
        "least twice as long as the controls are apart. What is critical is not counted: it goes first wherever it "
        "stands; nor is a control that the card has touched before, or that `needs` one that it has: these have to "
        "wait."
    ),
    why="A hand that follows the panel comes to the next control by itself, and notices one that it has passed over.",
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990), appendix A, guideline 8, as read in a summary; guideline 10, "
        "critical items first, goes before it; how often is too often is our own measure"
    ),
    mend=("Order the items as the controls stand. `dotleader run --card TITLE` says how far the hand goes."),
    bad=(BAD,),
    good=(GOOD_1, GOOD_2, GOOD_SWEEP, GOOD_WAITING, GOOD_BOTH),
    check=check,
)
