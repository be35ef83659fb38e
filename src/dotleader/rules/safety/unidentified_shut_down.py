"""One of two alike shut down from memory, before it is known which one has failed."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Card, Item, Kind, Memory
from dotleader.handbook.model import Control
from dotleader.handbook.walking import every_step, texts_of
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.syntax.plain import folded

_PUMPS = """\
equipment
  Left fuel pump .... OFF, ON
  Right fuel pump .... OFF, ON
  Ignition A .... OFF, ON
  Ignition B .... OFF, ON

emergency %s
  when the engine runs rough
  memory
%s  Land .... NEAREST AIRFIELD
  end
"""

BAD = Example(
    _PUMPS % ("Rough engine", "    Ignition A .... OFF\n"), (("unidentified-shut-down", "Ignition A .... OFF"),)
)

GOOD_IDENTIFIED = Example(_PUMPS % ("Rough engine", "    Faulty ignition .... IDENTIFIED\n    Ignition A .... OFF\n"))
GOOD_BOTH = Example(_PUMPS % ("Engine fire in flight", "    Left fuel pump + Right fuel pump .... OFF\n"))
GOOD_BOTH_LINES = Example(_PUMPS % ("Engine fire in flight", "    Ignition A .... OFF\n    Ignition B .... OFF\n"))
GOOD_TITLE = Example(_PUMPS % ("Left fuel pump fire", "    Left fuel pump .... OFF\n"))
GOOD_ON = Example(_PUMPS % ("Rough engine", "    Left fuel pump .... ON\n    Right fuel pump .... ON\n"))

_SIDES = frozenset(
    """
    left right l r lh rh 1 2 3 4 a b c d i ii one two three first second third no number nr front rear fore forward fwd
    aft upper lower inner outer port starboard #
    """.split()  # noqa: SIM905
)
_WORD = re.compile(r"[a-z]+|\d+|#")
_DOWN = frozenset(
    """
    off closed shut stopped stop out pulled feathered feather isolated disconnected tripped
    """.split()  # noqa: SIM905
) | {"cut off", "cut-off", "cutoff", "idle cut-off", "idle cutoff", "shut off", "shut down"}
_KNOWN = re.compile(
    r"\b(?:identif\w*|confirm\w*|verif\w*|check\w*|which|affected|failed|failing|faulty|dead|bad|wrong|suspect\w*)\b",
    re.IGNORECASE,
)

_FLYING = re.compile(r"air ?speed|altimeter|altitude|height|heading|compass")
"""Gauges that say how the aircraft flies, and not what has failed."""


def check(subject: Subject) -> Iterator[Finding]:
    controls = subject.handbook.controls
    alike = _alike(controls)
    if not alike:
        return
    for card in subject.handbook.cards:
        if card.kind is Kind.NORMAL:
            continue
        for block in card.steps:
            if isinstance(block, Memory):
                yield from _of(card, block, alike, controls)


def _of(card: Card, block: Memory, alike: dict[str, frozenset[str]], controls: dict[str, Control]) -> Iterator[Finding]:
    items = [step for step in every_step(block.steps) if isinstance(step, Item)]
    down = {key for item in items for key in _shuts_down(item)}
    for item in items:
        if _identifies(item):
            return  # what comes after it is known
        for key in _shuts_down(item):
            others = alike.get(key, frozenset())
            if others and not others & down and not _told(card, controls[key]):
                yield Finding(
                    RULE.name,
                    item.spot,
                    f"`{short(item.challenge)}` is shut down from memory, and nothing before it says that it is the "
                    "one.",
                    "Let a memory item before it look which one has failed, or do this by the list, below the memory "
                    "items.",
                    tuple(
                        Related(controls[other].spot, f"`{controls[other].name}` is like it.")
                        for other in sorted(others)
                    ),
                )
                return


def _alike(controls: dict[str, Control]) -> dict[str, frozenset[str]]:
    """Controls that differ only by side or number, each with its fellows."""
    families: dict[tuple[str, ...], list[str]] = {}
    for key, control in controls.items():
        words = _WORD.findall(folded(control.name))
        rest = tuple(
            word[:-1] if len(word) > 3 and word.endswith("s") else word for word in words if word not in _SIDES
        )
        if rest and len(rest) < len(words):
            families.setdefault(rest, []).append(key)
    return {key: frozenset(some) - {key} for some in families.values() if len(some) > 1 for key in some}


def _shuts_down(item: Item) -> Iterator[str]:
    for move in item.moves:
        if any(folded(way[-1].positions[0]) in _DOWN for way in move.ways if way and len(way[-1].positions) == 1):
            yield move.control


def _identifies(item: Item) -> bool:
    if any(challenge.gauge and not _FLYING.search(challenge.gauge) for challenge in item.challenges):
        return True
    return any(_KNOWN.search(text.text) for text in texts_of(item))


def _told(card: Card, control: Control) -> bool:
    """Whether the card is for this one: its title or its trigger has the side or the number in it."""
    side = [
        word for word in _WORD.findall(folded(control.name)) if word in _SIDES and word not in ("no", "number", "nr")
    ]
    said = _WORD.findall(folded(f"{card.title} {card.when.text if card.when is not None else ''}"))
    return any(word in said for word in side)


RULE = Rule(
    name="unidentified-shut-down",
    severity=Severity.WARNING,
    family="safety",
    what=(
        "A memory item that shuts down one of two controls of a kind (`Left fuel pump` and `Right fuel pump`, "
        "`Ignition A` and `Ignition B`, two buses), with no memory item before it that identifies, confirms or reads "
        "which one it is. Not where both are shut down, and not on a card that is for the one."
    ),
    why="Near Kegworth in 1989 a drill known by heart was done to the engine that ran well.",
    source=(
        "The accident at Kegworth, 1989, as told in a study of memory items (read in a summary); that a step to "
        "identify comes first is common practice, no source"
    ),
    mend="Put a line before it: `Faulty ignition .... IDENTIFIED`, or what shows it on the panel.",
    bad=(BAD,),
    good=(GOOD_IDENTIFIED, GOOD_BOTH, GOOD_BOTH_LINES, GOOD_TITLE, GOOD_ON),
    check=check,
    confidence="medium",
)
