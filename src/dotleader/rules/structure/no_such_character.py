"""A character that no font at hand has."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Branch, Card, Essay, Explained, Group, Item, Notice, Phrase, Repeat, Step
from dotleader.handbook.model import Handbook
from dotleader.page.drawn import Font
from dotleader.page.metrics import missing
from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.walking import every_step
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
            yield _of(control.does)
    for card in handbook.cards:
        yield from _of_card(card)
    for essay in handbook.essays:
        yield from _of_essay(essay)


def _of(phrase: Phrase) -> tuple[str, Spot]:
    return phrase.text, phrase.spot


def _of_card(card: Card) -> Iterator[tuple[str, Spot]]:
    yield f"{card.title} {card.thumb}", card.spot
    if card.when is not None:
        yield _of(card.when)
    for step in every_step(card.steps):
        yield from map(_of, _phrases(step))
    for part in card.amplified:
        if isinstance(part, Explained):
            yield from map(_of, (*_phrases(part.item), *part.paragraphs))
        else:
            yield _of(part)


def _of_essay(essay: Essay) -> Iterator[tuple[str, Spot]]:
    yield essay.title, essay.spot
    yield from map(_of, essay.paragraphs)


def _phrases(step: Step) -> Iterator[Phrase]:
    """The texts of one step, without those of the steps inside it."""
    match step:
        case Item():
            yield from (challenge.phrase for challenge in step.challenges)
            if step.response is not None:
                yield step.response
            yield from step.detail
        case Notice(phrase=text) | Group(title=text) | Repeat(until=text):
            yield text
        case Branch(arms):
            yield from (arm.condition for arm in arms if arm.condition is not None)
        case _:
            pass


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
