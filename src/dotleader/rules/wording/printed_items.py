"""The items of a card wherever they are printed: on the card, and again in its amplified text."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Card, Explained, Item
from dotleader.handbook.walking import every_step


def printed_items(card: Card) -> Iterator[Item]:
    for step in every_step(card.steps):
        if isinstance(step, Item):
            yield step
    for part in card.amplified:
        if isinstance(part, Explained):
            yield part.item
