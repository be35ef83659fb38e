"""More than four memory items."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Card, Item, Kind, Memory
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
emergency Engine fire in flight
  when flames come from the cowling
  memory
    Mixture .... CUT OFF
    Fuel selector .... OFF
    Fuel pump .... OFF
    Magnetos .... OFF
    Cabin heat .... CLOSED
  end
""",
    (("many-memory-items", "Cabin heat .... CLOSED"),),
)

GOOD = Example(
    """\
emergency Engine fire in flight
  when flames come from the cowling
  memory
    Mixture .... CUT OFF
    Fuel selector .... OFF
  Fuel pump .... OFF
  Magnetos .... OFF
  Cabin heat .... CLOSED
  end
""",
)


def memory_items(card: Card) -> list[Item]:
    """The items of the card's memory blocks, in order."""
    blocks = [step for step in card.steps if isinstance(step, Memory)]
    return [step for step in every_step(blocks) if isinstance(step, Item)]


def check(subject: Subject) -> Iterator[Finding]:
    most = subject.limits["many-memory-items"]
    for card in subject.handbook.cards:
        items = memory_items(card) if card.kind is not Kind.NORMAL else []
        if len(items) > most:
            yield Finding(
                RULE.name,
                items[most].spot,
                f"`{card.title}` has {len(items)} memory items; from here on they are more than {most}.",
                "Keep in `memory` what cannot wait until the card is in hand, and put the rest below it.",
            )


RULE = Rule(
    name="many-memory-items",
    severity=Severity.WARNING,
    family="form",
    what="More than four items in the memory blocks of a card. The fifth is marked.",
    why="Under stress few actions are remembered in their order, and a long drill loses its end.",
    source="UK CAA CAP 676 (issue 3, 2006) chapter 7 paragraph 2.6, four or fewer (read in two summaries)",
    mend="Keep in `memory` what cannot wait until the card is in hand; put the rest below it, where it is read.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
