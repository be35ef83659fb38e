"""A challenge that is nearly the name of something declared, and two values whose names look alike."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from dotleader.handbook.cards import Challenge, Item
from dotleader.handbook.mending import is_plain
from dotleader.handbook.model import Declared, Handbook
from dotleader.handbook.walking import every_step
from dotleader.rules.references.ordinary_words import ORDINARY_WORDS
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity, swapped
from dotleader.source.text import Spot
from dotleader.syntax.line_faults import one_apart
from dotleader.syntax.plain import folded, looks

BAD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
  Landing light .... OFF, ON

normal Before takeoff
  Feul pump .... ON
  Landing lights .... ON
""",
    (("near-name", "Feul pump"), ("near-name", "Landing lights")),
)

DECLARED = Example(
    """\
equipment
  Genrator .... OFF, ON

normal Engine start
  Generator .... ON

normal Shutdown
  Generator .... OFF
""",
    (("near-name", "Genrator"),),
)

ALIKE = Example(
    """\
speeds
  VS0 .... 46 KIAS  unverified
  VSO .... 48 KIAS  unverified

normal Before landing
  Airspeed .... ABOVE {VS0}
  Stall warning .... CHECKED AT {VSO}
""",
    (("near-name", "VSO"),),
)

GOOD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
  Landing light .... OFF, ON

normal Before takeoff
  Fuel pump .... ON
  Landing light .... ON
  Fuel sump .... DRAINED
""",
)


SHORTEST = 5
"""Letters below which two names are too often near by chance."""

_MOST = 2
_DIGITS = re.compile(r"\d+")


_LONG = 10
"""Letters from which on a name that is two letters apart from one declared name alone can be nothing else."""


class _Near(NamedTuple):
    """A declared name that is near a challenge: whether it is the only one, and whether nothing else can be meant."""

    name: str
    spot: Spot
    alone: bool
    certain: bool


class _Named:
    """What challenges can name: names as declared by their folded form, and these by their length."""

    def __init__(self, handbook: Handbook) -> None:
        self.names: dict[str, tuple[str, Spot]] = {}
        self.labels = {*handbook.controls, *handbook.gauges}
        self.by_length: defaultdict[int, list[tuple[int, str]]] = defaultdict(list)
        for control in handbook.controls.values():
            self._add(control.name, control.spot)
            for alias in control.also_called:
                self._add(alias, control.spot)
        for gauge in handbook.gauges.values():
            self._add(gauge.name, gauge.spot)

    def _add(self, name: str, spot: Spot) -> None:
        key = folded(name)
        if len(key) >= SHORTEST and key not in self.names:
            self.names[key] = (name, spot)
            self.by_length[len(key)].append((_letters(key), key))

    def near(self, key: str) -> _Near | None:
        """The name that is nearest to `key`, which is none itself."""
        if len(key) < SHORTEST:
            return None
        letters = _letters(key)
        near = [
            name
            for length in range(len(key) - _MOST, len(key) + _MOST + 1)
            for others, name in self.by_length.get(length, ())
            if max((letters & ~others).bit_count(), (others & ~letters).bit_count()) <= _MOST
            and one_apart(key, name, _MOST)
            and not _differ_on_purpose(key, name)
        ]
        if not near:
            return None
        nearer = [name for name in near if one_apart(key, name)]
        nearest = (nearer or near)[0]
        # Two letters in a long name are a slip; in a short one they may be another word.
        slip = bool(nearer) or len(key) >= _LONG
        return _Near(*self.names[nearest], len(nearer or near) == 1, slip and len(near) == 1 and nearest in self.labels)


def _letters(key: str) -> int:
    """The set of a name's letters as bits: two letters added or changed are two bits at most that another has not."""
    bits = 0
    for letter in key:
        bits |= 1 << (ord(letter) & 63)
    return bits


def check(subject: Subject) -> Iterator[Finding]:
    yield from _alike(subject.handbook)
    named = _Named(subject.handbook)
    known: dict[str, _Near | None] = {}
    told: dict[str, list[tuple[Challenge, _Near]]] = {}
    used: set[str] = set()
    for card in subject.handbook.cards:
        for step in every_step(card.steps):
            for challenge in step.challenges if isinstance(step, Item) else ():
                used |= {challenge.control, challenge.gauge}
                if challenge.control or challenge.gauge or challenge.phrase.uses:
                    continue
                key = folded(challenge.phrase.text)
                if key not in known:
                    known[key] = named.near(key)
                found = known[key]
                if found is not None:
                    told.setdefault(key, []).append((challenge, found))
    for cases in told.values():
        challenge, near = cases[0]
        if len(cases) > 1 and folded(near.name) not in used:
            yield _declared_otherwise(challenge, near, len(cases))
        else:
            yield from (_finding(*case) for case in cases)


def _declared_otherwise(challenge: Challenge, near: _Near, times: int) -> Finding:
    """What is written one way wherever it stands, and another way where it is declared, is one slip there."""
    written = challenge.phrase.text
    return Finding(
        RULE.name,
        near.spot,
        f"`{near.name}` is on no card, and nearly it is `{written}`, which is so written {times} times.",
        f"Declare `{written}` if that is what stands on the panel; otherwise write `{near.name}` on the cards.",
        (Related(challenge.phrase.spot, f"`{written}` stands here first."),),
    )


def _alike(handbook: Handbook) -> Iterator[Finding]:
    """Values whose names differ in nothing but a letter O for a zero."""
    first: dict[str, Declared] = {}
    for key, value in handbook.values.items():
        other = first.setdefault(looks(key), value)
        if other is not value:
            yield Finding(
                RULE.name,
                value.spot,
                f"`{value.name}` and `{other.name}` are two values, and differ only in a zero and a letter O.",
                "If one is meant, write it one way and take the other row out; otherwise give one another name.",
                (Related(other.spot, f"`{other.name}` is declared here."),),
            )


def _finding(challenge: Challenge, near: _Near) -> Finding:
    name, spot = near.name, challenge.phrase.spot
    return Finding(
        RULE.name,
        spot,
        f"`{challenge.phrase.text}` is nearly `{name}`, and names nothing itself.",
        f"Write `{name}` if that is meant; otherwise declare it or give it another name.",
        (Related(near.spot, f"`{name}` is declared here."),),
        fix=swapped(spot, name, safe=near.certain) if near.alone and is_plain(name) else None,
    )


def _differ_on_purpose(one: str, other: str) -> bool:
    """Whether two names differ in a number, in a single letter of its own (`L`, `R`) or in an ordinary word."""
    if _DIGITS.findall(one) != _DIGITS.findall(other):
        return True
    words, others = one.split(), other.split()
    if len(words) != len(others):
        return False
    apart = [(a, b) for a, b in zip(words, others, strict=True) if a != b]
    return any(len(a) == len(b) == 1 or (a in ORDINARY_WORDS and a.rstrip("s") != b.rstrip("s")) for a, b in apart)


RULE = Rule(
    name="near-name",
    severity=Severity.WARNING,
    family="references",
    what=(
        "A challenge one or two letters away from a declared control or gauge, or from an `also called` name. Names "
        "under five letters do not count, nor do names that differ in a number or in a word that is a word of its own "
        "(`Fuel sump` and `Fuel pump`). Where several challenges are alike and none is as declared, the declaration is "
        "marked. Also two rows of `speeds` or `values` whose names differ only in a zero and a "
        "letter O (`VS0` and `VSO`)."
    ),
    why=(
        "A misspelt challenge names nothing, so that its response is not checked against the positions of the control "
        "that was meant; of two values that look alike the wrong one is printed some day."
    ),
    source="FAA AC 120-71B (2017) 5.4, that the challenge copies the panel label (read in a summary)",
    mend="Write the name as it is declared; where another thing is meant, declare it too or give it another name.",
    bad=(BAD, DECLARED, ALIKE),
    good=(GOOD,),
    check=check,
    confidence="medium",
    fix="safe",
)
