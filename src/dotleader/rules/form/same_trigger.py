"""Two cards that the same words call for, and nothing that chooses between them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from dotleader.handbook.cards import Card, Kind
from dotleader.rules.form.leading import leads
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

_CARDS = """\
emergency Electrical smoke
  when smoke is seen in the cabin
  Master switch .... OFF
  end

emergency Heater smoke
  when smoke is seen in the cabin
  Cabin heat .... CLOSED
  end
"""

BAD = Example(_CARDS, (("same-trigger", "smoke is seen in the cabin"),))
GOOD = Example(
    _CARDS.replace("smoke is seen in the cabin", "it smells of burnt wiring", 1).replace(
        "smoke is seen", "oil is smelt"
    )
)

_NO_WORD = re.compile(r"[^\w{}]+")
_ARTICLES = frozenset({"a", "an", "the"})


def check(subject: Subject) -> Iterator[Finding]:
    by_trigger: dict[tuple[str, ...], list[Card]] = {}
    for card in subject.handbook.cards:
        if card.kind is not Kind.NORMAL and card.when is not None:
            words = [word for word in _NO_WORD.split(folded(card.when.written)) if word and word not in _ARTICLES]
            by_trigger.setdefault(tuple(words), []).append(card)
    shared = [cards for said, cards in by_trigger.items() if said and len(cards) > 1]
    led_from: dict[str, set[str]] = {}
    for key, targets in leads(subject.handbook).items() if shared else ():
        for target in targets:
            led_from.setdefault(target, set()).add(key)
    for first, *others in shared:
        for card in others:
            if not _chosen(led_from, first.key, card.key) and _together(first, card):
                assert card.when is not None
                assert first.when is not None
                yield Finding(
                    RULE.name,
                    card.when.spot,
                    f"`{first.title}` and `{card.title}` are called for by the same words.",
                    "Say in each what tells it from the other; or make a card that asks, and `go to` both from there.",
                    (Related(first.when.spot, f"The same words call for `{first.title}`."),),
                )


def _together(one: Card, other: Card) -> bool:
    """Whether there is a phase in which both can be called for."""
    return not one.during or not other.during or not set(one.during).isdisjoint(other.during)


def _chosen(led_from: Mapping[str, set[str]], one: str, other: str) -> bool:
    """Whether one leads to the other, or some card leads to both."""
    to_one, to_other = led_from.get(one, set()), led_from.get(other, set())
    return other in to_one or one in to_other or not to_one.isdisjoint(to_other)


RULE = Rule(
    name="same-trigger",
    severity=Severity.WARNING,
    family="form",
    what=(
        "Two emergency or abnormal cards whose `when` lines say the same, that can be called for in the same phase, "
        "and neither of which leads to the other; nor does a card lead to both."
    ),
    why=(
        "Two lists for smoke presuppose that whoever smells it can tell which smoke it is: so the report on a fatal "
        "fire in flight of 1998 has it."
    ),
    source="TSB Canada A98H0003, on the two smoke lists of the aircraft",
    mend="Let one card stand for the symptom and ask there what it is; or name in each `when` what tells them apart.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
