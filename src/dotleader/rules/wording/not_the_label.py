"""A challenge that means a declared control and calls it by a name of its own."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Item
from dotleader.handbook.mending import is_plain
from dotleader.handbook.model import Control, Gauge, Handbook
from dotleader.handbook.positions import matched
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.wording.spellings import singular, words_of
from dotleader.source.finding import Finding, Related, Severity, swapped
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded

BAD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

equipment
  Magneto switch .... OFF, R, L, BOTH
  Fuel pump .... OFF, ON
  Carburettor heat .... COLD, HOT
  Throttle .... CLOSED to FULL
  Landing gear .... UP, DOWN
  Nav lights .... OFF, ON
  Master switch .... OFF, ON

normal Before takeoff
  when holding short of the runway
  Gear .... DOWN
  Navigation lights .... ON
  Battery master .... ON
  Ignition .... BOTH
  Electric fuel pump .... ON
  Mags .... BOTH
  Fuel pump switch .... ON
  Pump, fuel .... ON
  Carb heat .... COLD
  Throttle lever .... FULL
  Oil pressure gauge .... {Oil pressure green}
""",
    (
        ("not-the-label", "Gear"),
        ("not-the-label", "Navigation lights"),
        ("not-the-label", "Battery master"),
        ("not-the-label", "Ignition"),
        ("not-the-label", "Electric fuel pump"),
        ("not-the-label", "Mags"),
        ("not-the-label", "Fuel pump switch"),
        ("not-the-label", "Pump, fuel"),
        ("not-the-label", "Carb heat"),
        ("not-the-label", "Throttle lever"),
        ("not-the-label", "Oil pressure gauge"),
    ),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

equipment
  Fuel pump .... OFF, ON
  Fuel selector .... OFF, LEFT, RIGHT
  Alternator switch .... OFF, ON
  Alternator breaker .... IN, OUT
  Canopy .... OPEN, LATCHED
  Propeller .... LOW RPM to HIGH RPM

normal Before takeoff
  when holding short of the runway
  Fuel pump .... ON
  Fuel .... 18 US gal
  Fuel pump breaker .... IN
  Standby fuel pump .... ON
  Canopy glass .... CLEAN
  Canopy lever .... FLUSH
  Alternator fuse .... IN
  Prop .... CLEAR
  Propeller blades .... NO NICKS
  Oil .... AT LEAST 5 US qt
  Pitot .... OPEN
""",
)

_KINDS = frozenset(
    """
    button cock control electric gage gauge handle indicator knob lever selector switch tank tap the toggle valve
    """.split()  # noqa: SIM905
)
"""Words that say what kind of thing it is, and that a label may have or leave out."""

_SAME = {
    "landing gear": "gear",
    "undercarriage": "gear",
    "boost pump": "fuel pump",
    "ignition": "magneto",
    "power lever": "throttle",
}
"""Words of the trade for one thing. A response that only this thing can give must agree."""

_MORE = frozenset({"battery", "boost", "electrical", "wing"})
"""Words that tell no more than a label does: `Battery master`, `Wing flaps`."""

_LEAST = 3  # letters of an abbreviation


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    labels = _Labels(handbook)
    known: dict[str, list[Control | Gauge]] = {}
    for _, item in subject.lines().items:
        for challenge in item.challenges:
            phrase = challenge.phrase
            if challenge.control or challenge.gauge or phrase.uses or item.response is None:
                continue
            key = folded(phrase.text)
            if key not in known:
                known[key] = labels.meant(key)
            meant = [thing for thing in known[key] if _answers(item, thing)]
            if len(meant) == 1:
                yield _finding(phrase.spot, meant[0])


class _Labels:
    """What is declared, by the first three letters of each word of its name that counts."""

    def __init__(self, handbook: Handbook) -> None:
        self.by_words: dict[tuple[str, ...], list[Control | Gauge]] = {}
        declared: list[Control | Gauge] = [*handbook.controls.values(), *handbook.gauges.values()]
        for thing in declared:
            words = _counting(thing.key)
            if words:
                self.by_words.setdefault(_starts(words), []).append(thing)

    def meant(self, key: str) -> list[Control | Gauge]:
        """The things that a challenge, which is none of their names, can mean."""
        words = _counting(key)
        return self._named(words) or self._named(tuple(word for word in words if word not in _MORE))

    def _named(self, words: tuple[str, ...]) -> list[Control | Gauge]:
        if not words or any(len(word) < _LEAST and word.isalpha() for word in words):
            return []
        return [thing for thing in self.by_words.get(_starts(words), ()) if _abbreviates(words, _counting(thing.key))]


def _counting(key: str) -> tuple[str, ...]:
    """The words that tell a thing from another one, in alphabetical order."""
    for name, other in _SAME.items():
        key = key.replace(name, other)
    return tuple(sorted(singular(word) for word in words_of(key) if word not in _KINDS))


def _starts(words: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(word[:_LEAST] for word in words)


def _abbreviates(words: tuple[str, ...], label: tuple[str, ...]) -> bool:
    """Whether each word is short for the other one: `Mags` for `Magnetos`, or `Navigation lights` for `Nav lights`."""
    bare = [(word.rstrip("."), full.rstrip(".")) for word, full in zip(words, label, strict=True)]
    return all(full.startswith(word) or word.startswith(full) for word, full in bare)


def _answers(item: Item, thing: Control | Gauge) -> bool:
    """Whether the response is one that the thing can give."""
    response = item.response
    assert response is not None
    if isinstance(thing, Gauge):
        return any(use.key == thing.key for use in response.uses)
    head = matched(response.text.partition(",")[0].partition(" then ")[0].partition(" if ")[0])
    words = {matched(position) for position in thing.positions} | {matched(m.word) for m in thing.meanings}
    return head in words or any(use.key in thing.read_on for use in response.uses)


def _finding(spot: Spot, thing: Control | Gauge) -> Finding:
    return Finding(
        RULE.name,
        spot,
        f"`{spot.text}` is not the label of `{thing.name}`, which is meant by its response.",
        f"Write `{thing.name}` if that is meant; otherwise declare it or give it another name.",
        (Related(thing.spot, f"`{thing.name}` is declared here."),),
        fix=swapped(spot, thing.name, safe=False) if is_plain(thing.name) else None,
    )


RULE = Rule(
    name="not-the-label",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A challenge in the words of a declared control or gauge, but abbreviated (`Mags`), in another order (`Pump, "
        "fuel`) or with another word for its kind (`Fuel pump switch`), with a response that only it can give. One or "
        "two letters beside the name are `near-name`, a name declared with `also called` is `alias-used`."
    ),
    why=(
        "The hand looks for the word on the panel; and a challenge that names nothing declared is checked against no "
        "position."
    ),
    source="FAA AC 120-71B (2017) 5.4, that the challenge copies the panel label (read in a summary)",
    mend="Write the name as it is declared, which should be what stands beside the control.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
    fix="unsafe",
)
