"""Prose on faces of its own: what explains a card, and texts. Not read in flight, so it may take several faces."""

from __future__ import annotations

from collections.abc import Sequence

from dotleader.handbook.cards import Card, Essay, Explained, Item, Phrase
from dotleader.handbook.sections import SECTION_OF_KIND, TEXTS
from dotleader.page.drawn import Font
from dotleader.page.laid import Frame, LaidCard
from dotleader.page.lay.columns import columns
from dotleader.page.lay.composing import Matter, matter_of
from dotleader.page.lay.fitting import Fitted, fitted
from dotleader.page.lay.heads import Head, head_of
from dotleader.page.lay.item_rows import item_rows, need_of
from dotleader.page.lay.measures import DETAIL, ITEM_GAP, Setting, prose_setting, prose_sizes
from dotleader.page.lay.outline import NO_OUTLINE, Hold, ItemLine
from dotleader.page.lay.prose_rows import paragraph
from dotleader.page.lay.rows import Row
from dotleader.page.type.breaking import length
from dotleader.page.type.words import joined_words, plain_words, words_of


def lay_amplified(card: Card, frame: Frame, symbols: frozenset[str]) -> LaidCard | None:
    """The prose that explains a card, in the card's section; None where there is none."""
    if not card.amplified:
        return None
    under = plain_words("amplified", Font.BOLD)
    head = head_of(card.title, under, "amplified", frame, plain_words("amplified, continued", Font.BOLD))
    done = _fitted(card.amplified, head, frame, symbols)
    return LaidCard(
        key=f"{card.key}, amplified",
        kind="amplified",
        section=SECTION_OF_KIND[card.kind],
        title=f"{card.title}, amplified",
        thumb=card.thumb,
        size=done.size,
        faces=done.faces,
        over=0,
        spot=card.spot,
    )


def lay_essay(essay: Essay, frame: Frame, symbols: frozenset[str]) -> LaidCard:
    """A `text` block."""
    done = _fitted(essay.paragraphs, head_of(essay.title, (), "", frame), frame, symbols)
    return LaidCard(
        key=essay.key,
        kind="text",
        section=TEXTS,
        title=essay.title,
        thumb="",
        size=done.size,
        faces=done.faces,
        over=0,
        spot=essay.spot,
    )


def _fitted(parts: Sequence[Phrase | Explained], head: Head, frame: Frame, symbols: frozenset[str]) -> Fitted:
    def matter(size: int) -> Matter:
        setting = prose_setting(frame, size)
        return matter_of(head, _rows(parts, setting, symbols), NO_OUTLINE, setting)

    return fitted(prose_sizes(frame), matter, frame)


def _rows(parts: Sequence[Phrase | Explained], setting: Setting, symbols: frozenset[str]) -> list[Row]:
    items = {at: _line(part.item, symbols) for at, part in enumerate(parts) if isinstance(part, Explained)}
    found = columns([need_of(item, 0, setting.width, setting) for item in items.values()], setting.width)
    rows: list[Row] = []
    for at, part in enumerate(parts):
        if isinstance(part, Phrase):
            words = words_of(part, Font.REGULAR, symbols)
            rows.extend(paragraph(words, 0, setting, Hold.STEP, (part.text,)))
            continue
        first, *others = item_rows(items[at], -1, (0, setting.width), found[0], setting, Hold.KEEP)
        gap = length(ITEM_GAP, setting.size) if rows else 0
        rows.append(first._replace(gap=gap, hold=Hold.BRANCH, says=(_said(part.item),)))
        rows.extend(others)
        for place, phrase in enumerate((*part.item.detail, *part.paragraphs)):
            hold = Hold.STEP if place else Hold.KEEP
            words = words_of(phrase, Font.REGULAR, symbols)
            below = paragraph(words, DETAIL, setting, hold, (f"  {phrase.text}",))
            if below and not place:  # close to the item it explains
                below[0] = below[0]._replace(gap=0)
            rows.extend(below)
    if rows:  # the title never stands alone
        rows[0] = rows[0]._replace(hold=Hold.KEEP)
    return rows


def _line(item: Item, symbols: frozenset[str]) -> ItemLine:
    return ItemLine(
        number="",
        choice=False,
        fitted=(),
        challenge=joined_words((one.phrase for one in item.challenges), Font.REGULAR, symbols),
        response=words_of(item.response, Font.BOLD, symbols) if item.response else (),
        details=(),
        critical=False,
        opened=False,
        block=0,
    )


def _said(item: Item) -> str:
    return f"{item.challenge} .... {item.response.text if item.response else ''}".rstrip()
