"""A condition among the memory items."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Branch, Kind
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import name_of, place_of, short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD_1 = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  memory
    Airspeed .... BEST GLIDE
    if fuel is left in the other tank
      Fuel selector .... OTHER TANK
  Landing site .... CHOOSE
  end
""",
    (("branch-in-memory", "if fuel is left in the other tank"),),
)

BAD_2 = Example(
    """\
emergency Engine fire on the ground
  when flames come from the cowling
  memory
    Mixture .... CUT OFF
    Throttle .... FULL if the starter still turns, otherwise CLOSED
  end
""",
    (("branch-in-memory", "FULL if the starter still turns, otherwise CLOSED"),),
)

GOOD_1 = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  memory
    Airspeed .... BEST GLIDE
    Fuel selector .... OTHER TANK
  if below 1,000 ft above the ground
    go to Forced landing
  Landing site .... CHOOSE
  end

emergency Forced landing
  when no power is left
  memory
    Airspeed .... BEST GLIDE
      Faster if the wind is strong.
  Seat belts .... TIGHT
  end
""",
)

GOOD_2 = Example(
    """\
equipment
  Fuel selector .... OFF, LEFT, RIGHT
    means .... OTHER TANK: the other of LEFT or RIGHT

emergency Rough engine
  when the engine shakes
  memory
    Fuel selector .... OTHER TANK
  end
""",
)

_CONDITION = (" if ", " unless ")


def check(subject: Subject) -> Iterator[Finding]:
    inside: Spot | None = None
    for card, step in subject.lines().in_memory:
        if card.kind is Kind.NORMAL or (inside is not None and _stands_in(inside, step.spot)):
            continue  # of a memory item on a normal card that itself is said; of branches the outermost
        if isinstance(step, Branch):
            inside = step.spot
            yield _finding(place_of(step), f"`{name_of(step)}` is a condition among the memory items.")
        elif step.response is not None and any(word in step.response.text for word in _CONDITION):
            yield _finding(step.response.spot, f"The memory item `{short(step.challenge)}` has a condition in it.")


def _stands_in(outer: Spot, inner: Spot) -> bool:
    return outer.source is inner.source and outer.start <= inner.start < outer.end


def _finding(spot: Spot, message: str) -> Finding:
    return Finding(
        RULE.name,
        spot,
        message,
        "Keep above what is done in every case, and put the condition below the memory block.",
    )


RULE = Rule(
    name="branch-in-memory",
    severity=Severity.WARNING,
    family="form",
    what=(
        "An `if` inside a `memory` block, or a response there with a condition (`ON if ..., otherwise OFF`). A detail "
        "below an item may speak of conditions, and a word that stands for several positions (`OTHER TANK`) is none."
    ),
    why="What is learnt by heart is done in a fright and in one go, and a decision in it is skipped or got wrong.",
    source=(
        "NASA/TM-2014-218382 (Burian) on how memory items are understood and marked, and FAA P-8740-29, that they are "
        "followed up by the list (both read); that a drill has no condition in it is our own conclusion"
    ),
    mend="Leave in the block what is done in every case; put the branch below it, where the card is read.",
    bad=(BAD_1, BAD_2),
    good=(GOOD_1, GOOD_2),
    check=check,
)
