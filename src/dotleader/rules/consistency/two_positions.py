"""Two cards of one phase that want the same control in two positions."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from dotleader.cockpit.running import on_main_line
from dotleader.handbook.cards import Card, Group, Item, Kind, Step
from dotleader.handbook.model import Control, Handbook
from dotleader.handbook.phases import ORDER
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.rules.wording.unit_words import typed_amounts
from dotleader.source.finding import Finding, Related, Severity
from dotleader.source.record import record
from dotleader.syntax.plain import folded

_CARDS = """\
equipment
  Flaps .... UP, 10 deg, 20 deg, 40 deg
    parked .... UP
  Fuel selector .... OFF, LEFT, RIGHT
    parked .... OFF
  Landing light .... OFF, ON
    parked .... OFF

values
  soft field flaps .... 20 deg  unverified

normal Before takeoff
  when holding short of the runway
  Fuel selector .... LEFT [critical]
  Flaps .... 10 deg
  Landing light .... OFF

normal Line-up
  when cleared onto the runway
"""

BAD = Example(
    _CARDS + "  Fuel selector .... RIGHT [critical]\n  Flaps .... 20 deg\n",
    (("two-positions", "Fuel selector .... RIGHT [critical]"), ("two-positions", "Flaps .... 20 deg")),
)

BAD_AT_REST = Example(
    """\
equipment
  Elevator trim .... NOSE DOWN to NOSE UP, TAKEOFF MARK
    parked .... TAKEOFF MARK

normal Before takeoff
  when holding short of the runway
  Elevator trim .... TAKEOFF MARK [critical]

normal Line-up
  phase before takeoff
  when cleared onto the runway
  Elevator trim .... NOSE DOWN [critical]
""",
    (("two-positions", "Elevator trim .... NOSE DOWN [critical]"),),
)

GOOD = Example(
    _CARDS
    + """\
  Fuel selector .... LEFT [critical]
  Landing light .... ON
  Flaps .... {soft field flaps}
  if the runway is short
    Flaps .... 20 deg

normal Downwind
  when abeam the numbers
  Flaps .... 10 deg

normal Final
  when lined up
  Flaps .... 40 deg
"""
)

GOOD_OTHER_TAKEOFF = Example(
    _CARDS.replace("normal Line-up", "normal Short-field takeoff").replace("Before takeoff", "Normal takeoff")
    + "  Flaps .... 20 deg\n"
)

_SET_ONCE = tuple(ORDER)[ORDER["before start"] : ORDER["takeoff"]]
"""The phases in which a control that has several settings is set for the takeoff, and not moved step by step."""
_TO_LAND = ("approach", "landing")
_VARIANT = re.compile(
    r"\b(?:normal|short|soft|rough|grass|wet|dry|crosswind|night|hot|cold|flooded|warm|alternate|alternative|no|without|"
    r"flapless|glassy|water|snow|high|heavy|light|second|one|solo|touch)\b",
    re.IGNORECASE,
)
"""Titles of cards of which only one is used on a flight."""


@record
class _Set:
    card: Card
    item: Item
    position: str


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    by_phase: dict[str, list[Card]] = {}
    for card in handbook.cards:
        if (
            card.kind is Kind.NORMAL
            and card.method == "verify"
            and on_main_line(card)
            and not _VARIANT.search(card.title)
        ):
            by_phase.setdefault(card.phase, []).append(card)
    for phase, cards in by_phase.items():
        if len(cards) > 1:
            yield from _in_phase(phase, cards, handbook)


def _in_phase(phase: str, cards: list[Card], handbook: Handbook) -> Iterator[Finding]:
    before: dict[str, _Set] = {}
    for card in cards:
        for name, one in _set_on(card).items():
            last = before.get(name)
            if last is not None and _contradict(last, one, handbook.controls.get(name), phase):
                yield Finding(
                    RULE.name,
                    one.item.spot,
                    f"`{short(one.item.challenge)}` is {one.position} here and {last.position} on `{last.card.title}`, "
                    f"and both cards are for the phase `{phase}`.",
                    "Let both say the same; where the position depends on something, say on what: "
                    f"`{one.position} if ..., otherwise {last.position}`.",
                    (Related(last.item.spot, f"On `{last.card.title}`."),),
                )
            before[name] = one


def _set_on(card: Card) -> dict[str, _Set]:
    """What a card puts into one fixed position, outside of branches. What it moves several times is not among it."""
    found: dict[str, list[_Set]] = {}
    for item in _straight(card.steps):
        if item.response is None or item.response.uses or item.only:
            continue
        for move in item.moves:
            fixed = len(move.ways) == 1 and len(move.ways[0]) == 1 and len(move.ways[0][0].positions) == 1
            if fixed and move.ways[0][0].positions[0]:
                found.setdefault(move.control, []).append(_Set(card, item, move.ways[0][0].positions[0]))
            else:
                found.setdefault(move.control, []).extend([_Set(card, item, "")] * 2)
        angle = next(iter(typed_amounts(item.response.text)), None)
        named = [challenge for challenge in item.challenges if challenge.control or challenge.gauge]
        if not named and angle is not None and angle[:2] == (0, len(item.response.text)) and angle.unit.symbol == "deg":
            found.setdefault(folded(item.challenge), []).append(_Set(card, item, item.response.text))
    return {
        name: some[0] for name, some in found.items() if len({one.position for one in some}) == 1 and some[0].position
    }


def _straight(steps: Sequence[Step]) -> Iterator[Item]:
    for step in steps:
        match step:
            case Item():
                yield step
            case Group(steps=inner):
                yield from _straight(inner)
            case _:
                pass


def _contradict(last: _Set, one: _Set, control: Control | None, phase: str) -> bool:
    if folded(last.position) == folded(one.position):
        return False
    if control is None:
        return phase in _SET_ONCE
    if last.item.critical and one.item.critical:
        return phase in _SET_ONCE or phase in _TO_LAND
    positions = [folded(position) for position in control.positions]
    at_rest = {positions[0], folded(control.parked)} if positions else set()
    if phase in _SET_ONCE and folded(last.position) in at_rest:
        return False  # it was at rest, and is set now
    if control.lever or control.takes_any or len(positions) < 3 or "off" in positions:
        return False
    if phase in _SET_ONCE:
        return True
    where = [positions.index(folded(each.position)) for each in (last, one) if folded(each.position) in positions]
    return phase in _TO_LAND and len(where) == 2 and where[1] < where[0]  # taken back


RULE = Rule(
    name="two-positions",
    severity=Severity.WARNING,
    family="consistency",
    what=(
        "A control with several settings, such as flaps, that two normal cards of one phase up to takeoff put into "
        "different fixed positions; or that the later of two cards before landing takes back. Also any control that "
        "is critical on both. What else is off, at rest or a lever and is set on the later card is no contradiction; "
        "nor are a reference, a branch, what one card does in turn, and cards of which a flight uses one (`Short- "
        "field takeoff`)."
    ),
    why=(
        "Of two cards that are read a minute apart one undoes the other, and the last one read decides how the "
        "aircraft flies."
    ),
    source=NO_SOURCE,
    mend="Decide which is right; refer to one declared value on both cards: `{takeoff flaps}`.",
    bad=(BAD, BAD_AT_REST),
    good=(GOOD, GOOD_OTHER_TAKEOFF),
    check=check,
    confidence="medium",
)
