"""Two cards with the same items in another order."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import combinations, pairwise

from dotleader.handbook.cards import Card, Kind
from dotleader.rules.consistency.placing import Placed, from_memory, placed_on
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

_CARDS = """\
normal After landing
  when clear of the runway
  Flaps .... UP
  Fuel pump .... OFF
  Landing light .... OFF
  Strobe lights .... OFF
  Transponder .... STANDBY

normal Shutdown after landing
  phase after landing
  when parked
"""

BAD = Example(
    _CARDS
    + """\
  Transponder .... STANDBY
  Flaps .... UP
  Fuel pump .... OFF
  Landing light .... OFF
  Strobe lights .... OFF
  Mixture .... CUT OFF
""",
    (("order-differs", "Transponder .... STANDBY"),),
)

GOOD = Example(
    _CARDS
    + """\
  Flaps .... UP
  Avionics .... OFF
  Fuel pump .... OFF
  Landing light .... OFF
  Strobe lights .... OFF
  Transponder .... STANDBY
"""
)

GOOD_FOUR = Example(
    _CARDS
    + """\
  Transponder .... OFF
  Strobe lights .... OFF
  Landing light .... OFF
  Fuel pump .... OFF
  Flaps .... UP
"""
)

GOOD_GROUPS = Example(
    _CARDS
    + """\
  group Radio
    Transponder .... STANDBY
  group Airframe
    Flaps .... UP
    Fuel pump .... OFF
    Landing light .... OFF
    Strobe lights .... OFF
"""
)

GOOD_OTHER_FLOW = Example(
    _CARDS.replace("phase after landing", "phase shutdown").replace(
        "  Flaps", "  Cowl flaps .... OPEN\n  Brakes .... HOLD\n  Flaps"
    )
    + """\
  Transponder .... STANDBY
  Flaps .... UP
  Fuel pump .... OFF
  Landing light .... OFF
  Strobe lights .... OFF
  Mixture .... CUT OFF
  Magnetos .... OFF
"""
)

GOOD_CRITICAL = Example(
    _CARDS
    + """\
  Transponder .... STANDBY [critical]
  Flaps .... UP
  Fuel pump .... OFF
  Landing light .... OFF
  Strobe lights .... OFF
"""
)

_WORD = re.compile(r"[a-z]{4,}")
_COMMON = frozenset(
    """
    abnormal after again airborne aircraft airplane approach before card check checklist climb cruise descent drill
    during emergency engine failure final first flight following forced from ground inflight initial inspection into
    items landing left level line loss lost motor normal over phase position power right second short shut takeoff with
    without
    """.split()  # noqa: SIM905
)
"""Words of titles that say nothing of what two cards have in common."""
_COMPARED = 8
"""With how many cards before it, of those that share an item, a card is compared; so no book takes long."""


def check(subject: Subject) -> Iterator[Finding]:
    least, share = subject.limits["order-differs"], subject.limits["order-differs share"]
    for kind in Kind:
        told: set[frozenset[tuple[str, str]]] = set()  # two items that differ on one card are one fault
        with_item: dict[tuple[str, str], list[int]] = {}
        cards: list[tuple[Card, dict[tuple[str, str], Placed], set[tuple[str, str]]]] = []
        seen: set[tuple[tuple[str, str], ...]] = set()
        for card in subject.handbook.cards:
            if card.kind is not kind:
                continue
            placed = placed_on(card)
            if len(placed) < least or tuple(placed) in seen:
                continue  # one that has the same items in the same order was compared already
            seen.add(tuple(placed))
            listed = placed.keys() - from_memory(card)
            shared: dict[int, int] = {}
            for key in placed:
                for other in with_item.setdefault(key, [])[-_COMPARED:]:
                    shared[other] = shared.get(other, 0) + 1
            for other, count in shared.items():
                if count >= least and (
                    (kind is not Kind.NORMAL and _share(listed, cards[other][2]) >= share)
                    or _alike(cards[other][0], card)
                ):
                    yield from _compared(*cards[other][:2], card, placed, told)
            for key in placed:
                with_item[key].append(len(cards))
            cards.append((card, placed, listed))


def _alike(first: Card, second: Card) -> bool:
    """Whether two cards are for the same kind of thing: by the phase, or by a word of the title."""
    if first.phase and first.phase == second.phase:
        return True
    return not _telling(first.title).isdisjoint(_telling(second.title))


def _telling(title: str) -> set[str]:
    return {word for word in _WORD.findall(folded(title)) if word not in _COMMON}


def _share(listed: set[tuple[str, str]], other: set[tuple[str, str]]) -> int:
    """How much of the shorter card stands on the other one too, in per cent."""
    return len(listed & other) * 100 // max(min(len(listed), len(other)), 1)


def _compared(
    first: Card,
    on_first: dict[tuple[str, str], Placed],
    second: Card,
    on_second: dict[tuple[str, str], Placed],
    told: set[frozenset[tuple[str, str]]],
) -> Iterator[Finding]:
    keys = [key for key in on_second if key in on_first]
    if all(on_first[one].place < on_first[two].place for one, two in pairwise(keys)):
        return
    turned = [pair for pair in combinations(keys, 2) if _turned(*pair, on_first, on_second)]
    if not turned:
        return
    met = [key for pair in turned for key in pair]
    moved = max(keys, key=met.count)
    other = next(two if one == moved else one for one, two in turned if moved in (one, two))
    if frozenset((moved, other)) in told:
        return
    told.add(frozenset((moved, other)))
    here, there = on_second[moved], on_first[moved]
    beside = on_second[other].item
    word = "before" if here.place < on_second[other].place else "after"
    yield Finding(
        RULE.name,
        here.item.spot,
        f"`{short(here.item.challenge)}` stands {word} `{short(beside.challenge)}` here, and the other way round on "
        f"`{first.title}`, which shares {len(keys)} items with this card.",
        "Let both cards have one order, so that hand and eye learn one; where there is a reason for two, allow this "
        "and name it.",
        (
            Related(there.item.spot, f"On `{first.title}` it stands here."),
            Related(beside.spot, f"`{short(beside.challenge)}` on `{second.title}`."),
        ),
    )


def _turned(
    one: tuple[str, str],
    two: tuple[str, str],
    on_first: dict[tuple[str, str], Placed],
    on_second: dict[tuple[str, str], Placed],
) -> bool:
    """Whether two items stand the other way round, and on neither card for a reason that can be seen."""
    if (on_first[one].place < on_first[two].place) == (on_second[one].place < on_second[two].place):
        return False
    return on_first[one].part == on_first[two].part and on_second[one].part == on_second[two].part


RULE = Rule(
    name="order-differs",
    severity=Severity.NOTE,
    family="consistency",
    what=(
        "Two cards of one kind that share five or more items, challenge and response, of which two stand the other "
        "way round. Cards are of one kind where their phase is the same, where a telling word of their titles is (two "
        "starts, two fires), or, of cards that are not normal, where the shorter one has hardly anything else below "
        "its memory items. Only items that stand together on both cards are compared: what a group, a branch, the "
        "memory block or `[critical]` sets apart has a reason for its place. Items inside branches, and those that "
        "stand several times on a card, are not counted."
    ),
    why=(
        "A flow that the hand has learnt on one card goes wrong on the other, and the item that is passed over is not "
        "missed."
    ),
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990), appendix A, guideline 8, that the order runs as a flow (read in a "
        "summary); that cards with the same items have one order, and the five, are our own"
    ),
    mend="Bring one of the cards into the order of the other.",
    bad=(BAD,),
    good=(GOOD, GOOD_FOUR, GOOD_GROUPS, GOOD_OTHER_FLOW, GOOD_CRITICAL),
    check=check,
    confidence="medium",
)
