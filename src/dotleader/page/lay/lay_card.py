"""A card on faces of its own: the largest type at which it stays on one, or on two where it cannot."""

from __future__ import annotations

from collections.abc import Callable

from dotleader.handbook.cards import Card
from dotleader.handbook.sections import SECTION_OF_KIND
from dotleader.page.drawn import Font
from dotleader.page.laid import Frame, LaidCard
from dotleader.page.lay.composing import Matter, matter_of
from dotleader.page.lay.fitting import fits, fitted
from dotleader.page.lay.heads import Head, head_of
from dotleader.page.lay.measures import GUTTER, LEVEL, LEVELS_SHARE, NUMBER_GAP, Setting, ladder, smallest_in
from dotleader.page.lay.outline import Hold, Outline
from dotleader.page.lay.outlining import outline_of
from dotleader.page.lay.setting import set_rows
from dotleader.page.type.metrics import width
from dotleader.page.type.words import plain_words, words_of


def lay_card(card: Card, frame: Frame, symbols: frozenset[str]) -> LaidCard:
    """The card laid out in a frame. `symbols` are the speed symbols that are declared: they get subscripts.

    It depends on nothing else, so a change to one card changes no other. It takes the largest type at which the card
    stays on one face, else the largest at which it stays on two, else the smallest.
    """
    size, faces, over = fitted(ladder(frame), _matter_at(card, frame, symbols), frame)
    return LaidCard(
        key=card.key,
        kind=card.kind.value,
        section=SECTION_OF_KIND[card.kind],
        title=card.title,
        thumb=card.thumb,
        size=size,
        faces=faces,
        over=over,
        spot=card.spot,
    )


def stays_on_one_face(card: Card, frame: Frame, symbols: frozenset[str]) -> bool:
    """Whether the card fits on one face at the smallest type; nothing is drawn to find it out."""
    return fits(ladder(frame)[-1], _matter_at(card, frame, symbols), frame)


def _matter_at(card: Card, frame: Frame, symbols: frozenset[str]) -> Callable[[int], Matter]:
    """The card's rows at a size, on demand."""
    outline = outline_of(card, symbols)
    trigger = plain_words("When", Font.BOLD) + words_of(card.when, Font.REGULAR, symbols) if card.when else ()
    head = head_of(card.title, trigger, f"When {card.when.text}" if card.when else "", frame)
    return lambda size: _matter(outline, head, frame, size)


def _matter(outline: Outline, head: Head, frame: Frame, size: int) -> Matter:
    setting = _setting(outline, frame, size)
    rows = set_rows(outline, setting)
    if rows:  # the title never stands alone
        rows[0] = rows[0]._replace(hold=Hold.KEEP)
    return matter_of(head, rows, outline, setting)


def _setting(outline: Outline, frame: Frame, size: int) -> Setting:
    """The gutter holds the widest number, and the deepest branch leaves most of the width to its text."""
    small = smallest_in(frame)
    gutter = max(GUTTER, width(str(outline.numbers), Font.REGULAR, small) + NUMBER_GAP)
    share, whole = LEVELS_SHARE
    step = min(LEVEL, frame.width * share // whole // max(1, outline.depth))
    return Setting(frame.width, frame.label_width, frame.label_height, gutter, step, size, small)
