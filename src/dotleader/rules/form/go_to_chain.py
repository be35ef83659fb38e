"""A card leads to one that leads on: three leaves for one drill."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from dotleader.handbook.cards import Branch, Card, GoTo, Group, Item, Kind, Step, is_gate
from dotleader.rules.form.leading import leads
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.ways import ways_through
from dotleader.source.finding import Finding, Related, Severity

_CARDS = """\
emergency Smoke in the cabin
  when smoke is seen
  Air vents .... OPEN
  go to Electrical fire in flight

emergency Electrical fire in flight
  when there is a smell of burnt wiring
  Master switch .... OFF
"""

_LANDING = """
emergency Forced landing
  when the flight has to end
  Airspeed .... 82 KIAS
  end
"""

BAD = Example(_CARDS + "  go to Forced landing\n" + _LANDING, (("go-to-chain", "Electrical fire in flight"),))
GOOD_1 = Example(_CARDS + "  if the smoke stays\n    go to Forced landing\n  end\n" + _LANDING)
GOOD_2 = Example(
    """\
emergency Engine failure in flight
  when one engine stops
  Dead engine .... IDENTIFIED
  go to Engine securing

emergency Engine securing
  when one engine is dead
  Fuel pump .... OFF
  Land .... NEAREST AIRFIELD
  go to Landing on one engine

emergency Landing on one engine
  when on the approach
  Seat belts .... TIGHT
  go to Evacuation

emergency Evacuation
  when everyone has to leave
  Everyone .... OUT, UPWIND
  end
"""
)

_TO_THE_GROUND = re.compile(
    r"\b(?:land|landing|ditching|touch ?down)\b(?! (?:gear|light|lights|flaps?)\b)", re.IGNORECASE
)


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    graph = leads(handbook)
    chains: dict[str, list[tuple[Card, GoTo, GoTo]]] = {}  # by the card in the middle: that it leads on is one fault
    for card in handbook.cards:
        if card.kind is Kind.NORMAL:
            continue
        gates = {id(step.arms[0].steps[0]) for step in card.steps if isinstance(step, Branch) and is_gate(step)}
        for target, step in graph[card.key].items():
            further = handbook.by_key.get(target)
            if further is None or target == card.key or id(step) in gates:
                continue
            on = _leads_on(further)
            if on is not None and on.target not in (card.key, target):
                chains.setdefault(target, []).append((card, step, on))
    for target, ((card, step, on), *others) in chains.items():
        middle = handbook.by_key[target].title
        yield Finding(
            RULE.name,
            step.spot,
            f"`{card.title}` leads to `{middle}`, and that leads on to `{on.title}` in every case.",
            f"Lead from here to `{on.title}`, and do the rest on this card; or let `{middle}` end.",
            (
                Related(on.spot, "Here it leads on."),
                *(Related(one.spot, "Led to from here, too.") for _, one, _ in others),
            ),
        )


def _leads_on(card: Card) -> GoTo | None:
    """The only way out of a card, where that is one `go to`."""
    steps = [step for step in card.steps if isinstance(step, GoTo)]
    if len(steps) != 1 or not steps[0].target:
        return None
    before = card.steps[: card.steps.index(steps[0])]
    if _TO_THE_GROUND.search(card.title) or _ends_in_landing(before):
        return None
    return steps[0] if ways_through(before, card.spot).all_of_them else None


def _ends_in_landing(steps: Sequence[Step]) -> bool:
    """Whether the last line says where to land: what the next card is for comes later, or after it."""
    match steps[-1] if steps else None:
        case Item() as item:
            return _TO_THE_GROUND.match(item.challenge) is not None
        case Group(steps=inner):
            return _ends_in_landing(inner)
        case _:
            return False


RULE = Rule(
    name="go-to-chain",
    severity=Severity.NOTE,
    family="form",
    what=(
        "A `go to` on an emergency or abnormal card that leads to a card which in every case leads on to a third one. "
        "A gate, which sends the reader to the card that is the right one, is not counted; nor is a card in the middle "
        "that is for a landing, or says with its last line where to land: the third card is for later."
    ),
    why="Each turn of a leaf costs time and a chance to lose the place, in the minutes that have least of either.",
    source=(
        "The literature on procedures for nuclear plants (NUREG-0899 and its like) limits references from one to the "
        "next, from memory; that one is enough is our own measure"
    ),
    mend="Put the lines of the card in the middle on the first card, and lead on from there.",
    bad=(BAD,),
    good=(GOOD_1, GOOD_2),
    check=check,
)
