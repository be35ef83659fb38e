"""A character that no font at hand has."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.model import Handbook
from dotleader.handbook.walking import every_phrase
from dotleader.page.drawn import Font
from dotleader.page.type.metrics import missing
from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
normal Cruise
  when level
  Mixture .... LEANED 🙂
  Heading .... ⟰
""",
    (("no-such-character", "🙂"), ("no-such-character", "⟰")),
)

GOOD = Example(
    """\
normal Cruise
  when level
  Mixture .... LEANED
  Heading .... ⅓ OF Ω → N, 20 °C ✓
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    written = "".join({character for source in subject.handbook.files for character in source.text})
    if not missing("".join(written.split()), Font.REGULAR):
        return  # as nearly always; no text has to be looked at
    for text, spot in _printed(subject.handbook):
        for character in missing(text, Font.REGULAR):
            at = spot.text.find(character)
            where = spot if at < 0 else Spot(spot.source, spot.start + at, spot.start + at + 1)
            code = f"U+{ord(character):04X}"
            name = f"`{character}` ({code})" if character.isprintable() else f"The character {code}"
            yield Finding(
                RULE.name,
                where,
                f"{name} is in none of the fonts that the cards are set in.",
                "Write a word in its place, or take it out.",
            )


def _printed(handbook: Handbook) -> Iterator[tuple[str, Spot]]:
    """Every text that is printed, as printed, and where it stands."""
    yield handbook.title, handbook.spot
    for fact in (*handbook.facts.values(), *handbook.sources.values()):
        yield f"{fact.name} {fact.text}", fact.spot
    for value in handbook.values.values():
        yield f"{value.name} {value.meaning}", value.spot
    for gauge in handbook.gauges.values():
        yield gauge.name, gauge.spot
    for control in handbook.controls.values():
        yield " ".join((control.name, *control.positions, *control.also_called)), control.spot
        if control.does is not None:
            yield control.does.text, control.does.spot
    for card in handbook.cards:
        yield f"{card.title} {card.thumb}", card.spot
    for essay in handbook.essays:
        yield essay.title, essay.spot
    for phrase in every_phrase(handbook):
        yield phrase.text, phrase.spot


RULE = Rule(
    name="no-such-character",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A character in a text that is printed, which neither the font of the cards has nor the one that helps it out "
        "with Greek, Cyrillic, arrows, fractions and signs."
    ),
    why="It would be printed as an empty box, and nobody could read what stood there.",
    source=THE_LANGUAGE,
    mend="Write a word in its place.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
