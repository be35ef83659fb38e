"""A card with nothing to do on it."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import GoTo, Item
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
normal Cruise
  when level
  note Enjoy the view.
""",
    (("empty-card", "Cruise"),),
)

GOOD = Example(
    """\
normal Cruise
  when level
  Mixture .... LEANED
  note Enjoy the view.
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        if not any(isinstance(step, Item | GoTo) for step in every_step(card.steps)):
            yield Finding(
                RULE.name,
                card.spot,
                f"`{card.title}` has no items.",
                "Write items below it, such as `Fuel pump .... ON`, or take the card out.",
            )


RULE = Rule(
    name="empty-card",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A card without items. One that only leads to others by `go to`, so that the right one is found, is not empty."
    ),
    why="It takes a face of the book, is looked for and found, and says nothing to do.",
    source=NO_SOURCE,
    mend="Write items below it, or take it out; prose that belongs to no procedure is a `text` block.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
