"""Nothing of a card is dropped silently: what could not be read stands on it as typed, and no more is said of it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from dotleader.handbook.cards import Branch, Card, Explained, Item, Notice, Unread, understood
from dotleader.handbook.model import Handbook
from dotleader.handbook.walking import every_step, texts_of
from tests.handbook.texts import resolved
from tests.rules.pipeline import findings_of

CARD = """\
emergency Fire
  when it burns
  Fuel .... OFF
{line}
  Speed .... LOW
  end
"""
OTHER = """
emergency Smell
  when it smells
  Vents .... OPEN
  end
"""


def unread(card: Card) -> list[str]:
    return [step.phrase.text for step in every_step(card.steps) if isinstance(step, Unread)]


def all_words(handbook: Handbook) -> set[str]:
    """Every word that cards have on them."""
    return {word for card in handbook.cards for text in _texts(card) for word in text.split()}


def _texts(card: Card) -> Iterator[str]:
    if card.when is not None:
        yield card.when.text
    for step in every_step(card.steps):
        yield from (phrase.text for phrase in texts_of(step))
        if isinstance(step, Unread):
            yield step.phrase.text
    for part in card.amplified:
        if isinstance(part, Explained):
            yield from (phrase.text for phrase in (*texts_of(part.item), *part.paragraphs))
        else:
            yield part.text


@pytest.mark.parametrize(
    ("line", "shown"),
    [
        ("  This goes on and on, for it is a whole sentence.", ["This goes on and on, for it is a whole sentence."]),
        ("  .... OFF", [".... OFF"]),
        ("  See this: it is prose.\n    So is {VX} below.", ["See this: it is prose.", "So is {VX} below."]),
        ("  Pump .... OFF .... ON", ["ON"]),
        ("  Pump .... OFF [crtical]", ["[crtical]"]),
        ("  group Pumps\n    It is prose, for it ends so.", ["It is prose, for it ends so."]),
        ("  if it burns\n    It is prose, for it ends so.", ["It is prose, for it ends so."]),
        ("  if it burns\n    Pump .... OFF\n  otherwise wait here\n    Pump .... ON", ["wait here"]),
        ("  one of these two\n    Pump .... OFF\n    Pump .... ON", ["these two"]),
        ("  group Pumps\n    when they run\n    Pump .... OFF", ["when they run"]),
        ("  when it smokes", ["when it smokes"]),
        ("  thumb FIRE\n    and below it", ["and below it"]),
        ("  if it burns\n    go to Smell\n      at once, or else.", ["at once, or else."]),
        ("  if it burns\n    end this here", ["this here"]),
    ],
)  # fmt: skip
def test_what_could_not_be_read_stands_on_the_card_and_is_one_finding(line: str, shown: list[str]) -> None:
    text = CARD.format(line=line) + OTHER
    handbook, _ = resolved(text)
    assert unread(handbook.cards[0]) == shown
    found = findings_of(text)
    assert len(found) == 1, [(finding.rule, finding.spot.text) for finding in found]


def test_words_behind_memory_stand_above_it() -> None:
    text = CARD.replace("  Fuel", "  memory of this\n    Fuel").format(line="  Lamp .... ON")
    handbook, _ = resolved(text)
    assert unread(handbook.cards[0]) == ["of this"]
    assert [finding.rule for finding in findings_of(text)] == ["stray-line"]


def test_a_clean_card_has_none() -> None:
    handbook, findings = resolved(
        CARD.format(line="  note Wait.\n    Then go on.\n  Lamp .... ON [critical]\n    It is red.")
    )
    assert (findings, unread(handbook.cards[0])) == ((), [])


def test_what_stands_after_the_end_is_not_said_to_be_unreached() -> None:
    text = CARD.format(line="  Lamp .... ON") + "  This is prose, for it ends so.\n"
    assert [finding.rule for finding in findings_of(text)] == ["stray-line"]
    handbook, _ = resolved(text)
    assert unread(handbook.cards[0]) == ["This is prose, for it ends so."]


def test_a_detail_or_a_notice_too_deep_to_be_read_is_kept() -> None:
    below = "".join(" " * (2 * level) + f"line{level}\n" for level in range(2, 16))
    for first in ("  Lamp .... ON\n", "  note Wait.\n"):
        handbook, findings = resolved(CARD.format(line=first + below))
        assert {finding.rule for finding in findings} == {"nested-too-deep"}
        assert {f"line{level}" for level in range(2, 16)} <= all_words(handbook)


def test_amplified_text_keeps_what_looks_like_an_item_and_its_references() -> None:
    amplified = "  amplified\n    Prose.\n      Bug .... {VX}\n    Card .... {VX}\n      More.\n"
    speeds = "speeds\n  VX .... 66 KIAS  unverified\n\n"
    handbook, findings = resolved(speeds + CARD.format(line="  Lamp .... ON") + amplified)
    assert findings == ()
    (paragraph,) = handbook.cards[0].amplified
    assert not isinstance(paragraph, Explained)
    assert paragraph.text == "Prose. Bug .... 66 KIAS Card .... 66 KIAS More."


def test_understood_is_all_but_the_unread() -> None:
    handbook, _ = resolved(CARD.format(line="  It is prose, for it ends so.\n  note Wait.\n  if wet\n    Pump .... ON"))
    kinds = [type(step) for step in understood(handbook.cards[0].steps)]
    assert kinds[:3] == [Item, Notice, Branch]
    assert Unread not in kinds


def test_lines_that_could_not_be_read_do_not_make_a_card_too_long() -> None:
    prose = "".join(f"  This is sentence number {count} and no item, for it ends so.\n" for count in range(60))
    found = findings_of(CARD.format(line=prose.rstrip("\n")))
    assert {finding.rule for finding in found} == {"stray-line"}
    notes = prose.replace("  This", "  note This")
    assert {finding.rule for finding in findings_of(CARD.format(line=notes.rstrip("\n")))} == {"card-too-long"}
