"""Amplified text that says an item otherwise than its card does."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.handbook.cards import Card, Explained, Item
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

_CARD = """\
abnormal Alternator failure
  when the voltmeter falls below the green
  Alternator .... OFF then ON
  Fuel pump .... OFF
  Pitot heat .... OFF, outside cloud
  Landing light .... OFF
  Land .... NEAREST AIRFIELD
  end
  amplified
    Without it the battery feeds everything.

"""

BAD = Example(
    _CARD
    + """\
    Alternator .... OFF
      Resets the regulator.
    Landing light .... OFF
      It takes the most.
    Fuel pump .... OFF
      The engine has its own.
    Pitot heat .... OFF, AT ONCE
      It takes a lot.
""",
    (
        ("amplified-differs", "Alternator .... OFF"),
        ("amplified-differs", "Fuel pump .... OFF"),
        ("amplified-differs", "Pitot heat .... OFF, AT ONCE"),
    ),
)

GOOD = Example(
    _CARD
    + """\
    Alternator .... off then on
      Resets the regulator.
    Pitot heat .... OFF
      Ice forms only in cloud.
    Land .... NEAREST AIRFIELD
      The battery lasts half an hour.
"""
)

GOOD_TWICE = Example(
    """\
abnormal Rough engine
  when the engine shakes
  Fuel pump .... ON
  Mixture .... RICH
  if fuel is smelt
    Fuel pump .... OFF
    end
  Land .... NEAREST AIRFIELD
  end
  amplified
    Mixture .... RICH
      Too lean a mixture shakes the engine.
    Fuel pump .... OFF
      It feeds the leak.
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        repeated = [part.item for part in card.amplified if isinstance(part, Explained)]
        if repeated:
            yield from _of(card, repeated)


def _of(card: Card, repeated: list[Item]) -> Iterator[Finding]:
    places: dict[str, list[tuple[int, Item]]] = {}
    items = (step for step in every_step(card.steps) if isinstance(step, Item))
    for place, item in enumerate(items):
        places.setdefault(folded(item.challenge), []).append((place, item))
    agreeing: list[tuple[Item, list[tuple[int, Item]]]] = []
    for item in repeated:
        same = places.get(folded(item.challenge), [])
        there = [(place, other) for place, other in same if _agree(item, other)]
        if there:
            agreeing.append((item, there))
        elif same:
            yield _other_response(item, [other for _, other in same])
    in_order = _longest_in_order([[place for place, _ in there] for _, there in agreeing])
    for at, (item, there) in enumerate(agreeing):
        if at not in in_order:
            yield Finding(
                RULE.name,
                item.spot,
                f"`{short(item.challenge)}` stands in another place here than on the card, among the items explained.",
                "Explain the items in the order in which the card has them.",
                (Related(there[0][1].spot, "Its place on the card."),),
            )


def _agree(item: Item, on_card: Item) -> bool:
    """Whether both say the same. A remark behind a comma may be left out or added."""
    if item.response is None or on_card.response is None:
        return True
    one, other = (_parts(text.text) for text in (item.response, on_card.response))
    return one == other or (one[0] == other[0] and "" in (one[1], other[1]))


def _parts(text: str) -> tuple[str, str]:
    said, _, remark = folded(text).partition(", ")
    return said.rstrip(".,"), remark.rstrip(".,")


def _other_response(item: Item, on_card: Sequence[Item]) -> Finding:
    said = " or ".join(
        dict.fromkeys(f"`{short(other.response.text)}`" for other in on_card if other.response is not None)
    )
    assert item.response is not None
    return Finding(
        RULE.name,
        item.spot,
        f"`{short(item.challenge)}` is `{short(item.response.text)}` here, and on the card {said}.",
        "Let both say the same; what is to be added belongs in the prose below it.",
        tuple(Related(other.spot, "On the card.") for other in on_card),
    )


def _longest_in_order(places: Sequence[Sequence[int]]) -> set[int]:
    """The most of these that can stand in the order of the card, each in one of its places; the first of equal ones."""
    best: list[tuple[int, int, int]] = []  # length of the chain, index before it in `ends`, which one it is
    ends: list[int] = []
    for at, some in enumerate(places):
        known = len(best)
        for place in some:
            before = max(
                (index for index in range(known) if ends[index] < place), key=lambda i: (best[i][0], -i), default=-1
            )
            best.append((1 + (best[before][0] if before >= 0 else 0), before, at))
            ends.append(place)
    kept: set[int] = set()
    last = max(range(len(best)), key=lambda i: (best[i][0], -i), default=-1)
    while last >= 0:
        kept.add(best[last][2])
        last = best[last][1]
    return kept


RULE = Rule(
    name="amplified-differs",
    severity=Severity.WARNING,
    family="consistency",
    what=(
        "An item repeated below `amplified` with another response than on its card, or in another order. Small and "
        "capital letters are the same, and a remark behind a comma may stand in one of the two only."
    ),
    why="Who learns from the long text and flies by the short one has learnt another procedure.",
    source=(
        "Transport Canada, single-crew SOP template, 1.9 (read: the card and the expanded list); the Pilot's Handbook "
        "of Aeronautical Knowledge (FAA-H-8083-25), chapter 8, emergency procedures first short, then amplified (read)"
    ),
    mend="Correct the one that is wrong, and keep the order of the card.",
    bad=(BAD,),
    good=(GOOD, GOOD_TWICE),
    check=check,
)
