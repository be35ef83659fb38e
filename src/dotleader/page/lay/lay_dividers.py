"""Divider leaves: the number and name of a section set large, and what is in it with the labels where it stands.

They are laid out by themselves, with room for labels like a go-to, so that a card that moves changes nothing on them
but its label. The front matter has none: its control leaf opens the book.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.handbook.cards import Kind
from dotleader.handbook.model import Handbook
from dotleader.page.drawn import Font, Line, mm, pt
from dotleader.page.labels import SECTIONS, section_order
from dotleader.page.laid import Frame, LaidCard, LaidFace
from dotleader.page.lay.flow import Strip, flowed
from dotleader.page.lay.lay_index import listed_row
from dotleader.page.lay.measures import TITLE, base_in_slot, grown, slot, smallest_in
from dotleader.page.type.breaking import balanced, broken, room_of, set_line
from dotleader.page.type.metrics import cap_height
from dotleader.page.type.words import plain_words

DIVIDER = "divider"
EXPLAINED = "Amplified texts"
"""One row for all of them: each stands in the order of the card that it explains."""

_PADS = (mm(1), mm(0.6), mm(0.3), mm(0.1))
"""Above and below what stands in a row."""

_NUMBER = 72_000
_NUMBER_SHARE = (1, 9)
"""The part of a face's height that the capitals of the number may take."""

_NAME_OVER_TITLE = 4_000
_UNDER_NUMBER = mm(3)
_RULE = pt(2.4)
_AROUND_RULE = mm(2.5)


def divider_key(section: str) -> str:
    return f"*divider {section}"


def lay_dividers(handbook: Handbook, cards: Sequence[LaidCard], frame: Frame) -> Iterator[LaidCard]:
    """One for each section of these cards, of kind ``divider``."""
    sections = {card.section for card in cards} - {"0"}
    conditions = {
        card.key: f"When {card.when.text}"
        for card in handbook.cards
        if card.kind is not Kind.NORMAL and card.when is not None
    }
    for section in sorted(sections, key=section_order):
        here = [card for card in cards if card.section == section]
        faces = _faces(section, here, conditions, frame)
        yield LaidCard(
            divider_key(section), DIVIDER, section, SECTIONS[section], "", smallest_in(frame), faces, 0, handbook.spot
        )


def _faces(section: str, cards: Sequence[LaidCard], conditions: dict[str, str], frame: Frame) -> tuple[LaidFace, ...]:
    """Rows come closer together where that saves a leaf."""
    best: tuple[LaidFace, ...] = ()
    for pad in _PADS:
        rows = tuple(_rows(cards, conditions, frame, pad))
        faces = flowed(SECTIONS[section], rows, frame, opening=_opening(section, frame))
        if not best or _leaves(faces) < _leaves(best):
            best = faces
        if _leaves(best) == 1:
            break
    return best


def _leaves(faces: Sequence[LaidFace]) -> int:
    return -(-len(faces) // 2)


def _rows(cards: Sequence[LaidCard], conditions: dict[str, str], frame: Frame, pad: int) -> Iterator[Strip]:
    """The cards in their order, and where what explains them begins."""
    listed = [(card.title, card.key) for card in cards if card.kind != "amplified"]
    listed += [(EXPLAINED, card.key) for card in cards if card.kind == "amplified"][:1]
    for at, (title, key) in enumerate(listed):
        yield listed_row(title, key, conditions.get(key, ""), frame, ruled=at > 0, pad=pad)


def _opening(section: str, frame: Frame) -> Strip:
    """Number, name and a rule below them."""
    share, whole = _NUMBER_SHARE
    room = (frame.bottom - frame.top) * share // whole
    size = min(_NUMBER, _NUMBER * room // cap_height(Font.BOLD, _NUMBER)) // 1000 * 1000
    (number,) = broken(plain_words(section, Font.BOLD), room_of(frame.width, size))
    top = cap_height(Font.BOLD, size) + mm(3)
    items = list(set_line(number, 0, top, size))
    top += _UNDER_NUMBER
    name_size = grown(TITLE, smallest_in(frame)) + _NAME_OVER_TITLE
    for line in balanced(plain_words(SECTIONS[section], Font.BOLD), room_of(frame.width, name_size)):
        items.extend(set_line(line, 0, top + base_in_slot(name_size), name_size))
        top += slot(name_size)
    top += _AROUND_RULE
    rule = Line(((0, top), (frame.width, top)), _RULE)
    return Strip(top + _AROUND_RULE, (*items, rule), (f"Section {section}", SECTIONS[section]))
