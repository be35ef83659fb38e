"""A number that nobody has confirmed, on an emergency card."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Card, Kind, Use
from dotleader.handbook.model import Declared, Gauge, Handbook
from dotleader.handbook.walking import every_step, texts_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
speeds
  VG .... 82 KIAS  unverified

emergency Forced landing
  when no engine and no runway in reach
  memory
    Airspeed .... {VG}
  Seat belts .... TIGHT
  end
""",
    (("unverified-in-emergency", "{VG}"),),
)

GOOD = Example(
    """\
sources
  glide tests .... flight test card 15

speeds
  VG .... 82 KIAS  from glide tests
  VY .... 80 KIAS  unverified

emergency Forced landing
  when no engine and no runway in reach
  memory
    Airspeed .... {VG}
  Seat belts .... TIGHT
  end

normal Climb
  when clear of the ground
  Airspeed .... {VY}
"""
)


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    doubtful = _unverified(handbook)
    if not doubtful:
        return
    told: set[str] = set()
    for card in handbook.cards:
        if card.kind is not Kind.EMERGENCY:
            continue
        for use in _uses(card):
            if use.key in doubtful and use.key not in told:
                told.add(use.key)
                root, spot = doubtful[use.key]
                name = f"`{use.name}`" if root == use.key else f"What `{use.name}` rests on"
                yield Finding(
                    RULE.name,
                    use.spot,
                    f"{name} is unverified, and stands on the emergency card `{card.title}`.",
                    "Confirm it for this aircraft, on the ground or in a test flight, and name the source in its row.",
                    (Related(spot, "It is marked `unverified` here."),),
                )


def _uses(card: Card) -> Iterator[Use]:
    if card.when is not None:
        yield from card.when.uses
    for step in every_step(card.steps):
        for text in texts_of(step):
            yield from text.uses


def _unverified(handbook: Handbook) -> dict[str, tuple[str, Spot]]:
    """By key, what is unverified or rests on it: the key of that, and where it says so."""
    found: dict[str, tuple[str, Spot]] = {}
    declared: list[Declared | Gauge] = [*handbook.values.values(), *handbook.gauges.values()]
    for each in declared:
        if each.origin is not None and each.origin.unverified:
            found[each.key] = each.key, each.spot
    waiting = bool(found)
    while waiting:
        waiting = False
        for key, value in handbook.values.items():
            part = next((part for part in value.parts if part in found), None)
            if key not in found and part is not None:
                found[key] = found[part]
                waiting = True
    return found


RULE = Rule(
    name="unverified-in-emergency",
    severity=Severity.NOTE,
    family="numbers",
    what=(
        "A value or a gauge marked `unverified`, or one that is worked out from such, to which an emergency card "
        "refers. It is said once for each, at the first place."
    ),
    why=(
        "An emergency card is followed without a second thought, and a glide speed copied from another aircraft was "
        "never flown with this one."
    ),
    source="FAA SAFO 17006 (2017), that home-made lists are compared line by line with the maker's (read)",
    mend="Test it and name the source. Until then the note is a reminder of what is still to be flown.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
