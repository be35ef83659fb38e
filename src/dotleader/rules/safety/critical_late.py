"""A critical item that stands late in its list."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Kind
from dotleader.rules.rule import Example, Rule
from dotleader.rules.safety.killers import items_of
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

BAD = Example(
    """\
normal Taxi
  when the engine runs smoothly
  Brakes .... BOTH SIDES HOLD
  Compass .... FOLLOWS THE TURN
  Strobe lights .... ON
  Flaps .... 10 deg [critical]
""",
    (("critical-late", "Flaps .... 10 deg [critical]"),),
)

GOOD = Example(
    """\
normal Taxi
  when the engine runs smoothly
  Flaps .... 10 deg [critical]
  Brakes .... BOTH SIDES HOLD
  Compass .... FOLLOWS THE TURN
  Strobe lights .... ON
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        if card.kind is not Kind.NORMAL:
            continue
        items = items_of(card)
        half = -(-len(items) // 2)
        first_other = next((item for item in items if not item.critical), None)
        others = 0
        for number, item in enumerate(items, 1):
            others += not item.critical
            if item.critical and number > half and others and first_other is not None:
                yield Finding(
                    RULE.name,
                    item.spot,
                    f"`{short(item.challenge)}` is critical and is item {number} of {len(items)}; "
                    f"critical items stand in the first {half}.",
                    "Move it up, before items that can wait; it goes before the flow of the hand.",
                    (Related(first_other.spot, "This one is not critical and stands before it."),),
                )


RULE = Rule(
    name="critical-late",
    severity=Severity.WARNING,
    family="safety",
    what=(
        "An item marked `[critical]` that does not stand in the first half of the items of a normal card (of five, the "
        "first three), though an item that is not critical stands before it. That critical items go first weighs more "
        "than the flow of the hand over the panel."
    ),
    why=(
        "In the accident of 1988 told of in NTSB/AAR-89/04 the flaps were never set: they stood late on the taxi list, "
        "and its words were spoken without a look."
    ),
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990), appendix A, guideline 10, as read in a summary; the first half is "
        "our own measure"
    ),
    mend="Put the critical items at the head of the card, so that an interruption finds them done.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
