"""Memory items that do not come first, or that are in two places."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Card, Kind, Memory, Notice, Unread
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import name_of, place_of
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

BAD_1 = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  Landing site .... CHOOSE
  memory
    Airspeed .... BEST GLIDE
    Fuel selector .... OTHER TANK
  end
""",
    (("memory-not-first", "memory"),),
)

BAD_2 = Example(
    """\
emergency Engine fire in flight
  when flames come from the cowling
  memory
    Mixture .... CUT OFF
  Cabin heat .... CLOSED
  memory
    Fuel selector .... OFF
  end
""",
    (("memory-not-first", "memory"),),
)

GOOD = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  warning Do not turn back below the turn-back height.
  memory
    Airspeed .... BEST GLIDE
    Fuel selector .... OTHER TANK
  Landing site .... CHOOSE
  end
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        if card.kind is not Kind.NORMAL:
            yield from _found(card)


def _found(card: Card) -> Iterator[Finding]:
    blocks = [step for step in card.steps if isinstance(step, Memory)]
    if not blocks:
        return
    above = [step for step in card.steps[: card.steps.index(blocks[0])] if not isinstance(step, Notice | Unread)]
    if above:
        yield Finding(
            RULE.name,
            blocks[0].spot,
            f"The memory items stand below `{name_of(above[0])}`.",
            "Put the `memory` block first, right below `when`; only notices may stand above it.",
            (Related(place_of(above[0]), "This comes before them."),),
        )
    for block in blocks[1:]:
        yield Finding(
            RULE.name,
            block.spot,
            f"`{card.title}` has a second block of memory items.",
            "Put all that is done from memory into the first block; the rest is read from the card.",
            (Related(blocks[0].spot, "The first block is here."),),
        )


RULE = Rule(
    name="memory-not-first",
    severity=Severity.ERROR,
    family="form",
    what=(
        "A `memory` block below an item or a branch, or a second one on the same card. Notes, cautions and warnings "
        "may stand above it."
    ),
    why=(
        "Memory items are done before any card is taken in hand, so nothing that has to be read can come before them."
    ),
    source=(
        "FAA P-8740-29, that immediate-action items are done from memory and then followed up with the list; UK CAA "
        "CAP 676, that they come first (cited from memory)"
    ),
    mend="Put one `memory` block right below `when`, and everything that is read from the card below it.",
    bad=(BAD_1, BAD_2),
    good=(GOOD,),
    check=check,
)
