"""Whatever the card: nothing leaves the frame, nothing overlaps, nothing is lost or printed twice."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise

from hypothesis import HealthCheck, given, settings

from dotleader.handbook.cards import Branch, Card, Essay, Group, Item, Memory, OneOf, Repeat, Step
from dotleader.page.drawn import Box, Font, Ink, Line, Text
from dotleader.page.extents import Rect
from dotleader.page.laid import Frame, LaidCard, LaidFace
from dotleader.page.lay.lay_card import lay_card
from dotleader.page.lay.lay_prose import lay_amplified, lay_essay
from dotleader.page.lay.outline import Condition, ItemLine, MemoryEdge, NoticeLine
from dotleader.page.lay.outlining import outline_of
from dotleader.page.type.metrics import ascent, descent, width
from dotleader.page.type.words import Word, words_of

from .strategies import SYMBOLS, cards, essays, frames

FLAT = {symbol[1:] for symbol in SYMBOLS} | {"END"}
FEW = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))


@FEW
@given(cards(), frames())
def test_nothing_leaves_the_frame_and_nothing_overlaps(card: Card, frame: Frame) -> None:
    assert_sound(lay_card(card, frame, SYMBOLS), frame)


@FEW
@given(cards(), essays, frames())
def test_prose_stays_in_the_frame_too(card: Card, essay: Essay, frame: Frame) -> None:
    amplified = lay_amplified(card, frame, SYMBOLS)
    assert (amplified is None) == (not card.amplified)
    for laid in (amplified, lay_essay(essay, frame, SYMBOLS)):
        if laid is not None:
            assert_sound(laid, frame)


@FEW
@given(cards(), frames())
def test_every_letter_is_printed_once(card: Card, frame: Frame) -> None:
    """Counted over all faces, less what further faces repeat on purpose."""
    laid = lay_card(card, frame, SYMBOLS)
    printed = Counter("".join(one.string for face in laid.faces for one in texts_of(face)))
    expected = written(card)
    for letters in (printed, expected):
        letters["-"] += letters.pop("−", 0)  # a minus is printed where a hyphen stands before a digit
        del letters[" "]
    assert expected <= printed
    assert len(laid.faces) > 1 or printed == expected


@FEW
@given(cards(), frames())
def test_the_meaning_says_every_item_once_and_in_order(card: Card, frame: Frame) -> None:
    said = [line.strip() for face in lay_card(card, frame, SYMBOLS).faces for line in face.says]
    at = 0
    for item in items_of(card.steps):
        response = item.response.text if item.response else ""
        line = f"{item.challenge} {'____' if item.critical else '....'} {response}".strip()
        at = next(place for place in range(at, len(said)) if said[place].endswith(line)) + 1


@FEW
@given(cards(), frames())
def test_equal_cards_are_laid_out_equally(card: Card, frame: Frame) -> None:
    assert lay_card(card, frame, SYMBOLS) == lay_card(card, frame, SYMBOLS)


def assert_sound(laid: LaidCard, frame: Frame) -> None:
    inside = Rect(0, frame.top, frame.width, frame.bottom)
    for face in laid.faces:
        texts = [(one.string, text_rect(one)) for one in texts_of(face)]
        labels = [("label", Rect(s.x, s.y, s.x + frame.label_width, s.y + s.height)) for s in face.slots]
        boxes = [
            ("box", Rect(one.x, one.y, one.x + one.w, one.y + one.h)) for one in face.items if isinstance(one, Box)
        ]
        marks = [("stroke", mark) for mark in strokes(face)]
        for name, rect in [*texts, *labels, *boxes, *marks]:
            assert rect.inside(inside), (name, rect)
        for (one, first), (other, second) in combinations([*texts, *labels], 2):
            assert not first.meets(second), (one, other)
        for _, mark in marks:
            for name, rect in [*texts, *labels]:
                assert not rect.meets(mark), (name, rect, mark)


def text_rect(text: Text) -> Rect:
    """What a text covers; subscripts and END have no descenders."""
    below = 0 if text.string in FLAT else descent(text.font, text.size)
    right = text.x + width(text.string, text.font, text.size) - 1  # places and widths are rounded, each by itself
    return Rect(text.x, text.y - ascent(text.font, text.size), right, text.y + below)


def strokes(face: LaidFace) -> Iterator[Rect]:
    """The parts of all lines, whose ends are cut square and whose corners are sharp, and the edges of all boxes."""
    for one in face.items:
        match one:
            case Line(points, stroke, closed):
                half = 0 if one.dots else stroke // 2
                ends = [*points, points[0]] if closed else points
                for at, ((x1, y1), (x2, y2)) in enumerate(pairwise(ends)):
                    wide, high = (0, half) if y1 == y2 else (half, 0)
                    yield Rect(min(x1, x2) - wide, min(y1, y2) - high, max(x1, x2) + wide, max(y1, y2) + high)
                    if at or closed:
                        yield Rect(x1 - half, y1 - half, x1 + half, y1 + half)
            case Box(x, y, w, h, Ink.NONE, stroke):
                half = stroke // 2
                for x1, y1, x2, y2 in (
                    (x, y, x + w, y),
                    (x, y + h, x + w, y + h),
                    (x, y, x, y + h),
                    (x + w, y, x + w, y + h),
                ):
                    yield Rect(x1 - half, y1 - half, x2 + half, y2 + half)
            case _:
                pass


def texts_of(face: LaidFace) -> list[Text]:
    return [one for one in face.items if isinstance(one, Text)]


def written(card: Card) -> Counter[str]:
    """The letters that a card has to print: its head, and the words of its outline."""
    trigger = words_of(card.when, Font.REGULAR, SYMBOLS) if card.when else ()
    letters = Counter(card.title + ("When" if card.when else "") + "".join(word.text for word in trigger))
    for part in outline_of(card, SYMBOLS).parts:
        letters += Counter("".join(_words_in(part.what)))
        match part.what:
            case NoticeLine(word):
                letters += Counter(word.capitalize() if word == "note" else word.upper())
            case ItemLine(number) | Condition(_, number):
                letters += Counter(number)
            case MemoryEdge.TOP:
                letters += Counter("MEMORY ITEMS")
            case _:
                pass
    return letters


def _words_in(value: object) -> Iterator[str]:
    if isinstance(value, Word):
        yield value.text
    elif isinstance(value, tuple):
        for one in value:
            yield from _words_in(one)
    elif hasattr(value, "__match_args__"):
        for name in value.__match_args__:
            yield from _words_in(getattr(value, name))


def items_of(steps: Sequence[Step]) -> Iterator[Item]:
    for step in steps:
        match step:
            case Item():
                yield step
            case Branch(arms):
                for arm in arms:
                    yield from items_of(arm.steps)
            case Group() | Memory() | OneOf() | Repeat():
                yield from items_of(step.steps)
            case _:
                pass
