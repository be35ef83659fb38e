"""A fourth memory item."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Kind
from dotleader.rules.form.many_memory_items import memory_items
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
    (("fourth-memory-item", "Magnetos .... OFF"),),
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


def check(subject: Subject) -> Iterator[Finding]:
    most = subject.limits["many-memory-items"]
    for card in subject.handbook.cards:
        items = memory_items(card) if card.kind is not Kind.NORMAL else []
        if len(items) == most:
            yield Finding(
                RULE.name,
                items[-1].spot,
                f"`{card.title}` has {most} memory items, as many as there should be at most.",
                "See whether one of them can wait until the card is in hand.",
            )


RULE = Rule(
    name="fourth-memory-item",
    severity=Severity.NOTE,
    family="form",
    what="Exactly four items in the memory blocks of a card; the last is marked.",
    why="Four are the most that the guidance allows, and it prefers fewer.",
    source=(
        "UK CAA CAP 676 (issue 3, 2006) chapter 7 paragraph 2.6, preferably fewer than four (read in two summaries)"
    ),
    mend="See whether one of them can wait until the card is in hand; if not, all is well.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
