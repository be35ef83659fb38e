"""The critical items of the normal cards on the main line, counted by what they challenge."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.running import on_main_line
from dotleader.handbook.cards import Card, Challenge, Item
from dotleader.handbook.model import Handbook
from dotleader.handbook.phases import ORDER
from dotleader.handbook.walking import every_step
from dotleader.source.record import record
from dotleader.syntax.plain import folded


@record
class Spoken:
    """A challenge of an item on a card, in the order in which a flight comes to it. `key` is what it is counted by."""

    key: str
    challenge: Challenge
    item: Item
    card: Card


def in_order(handbook: Handbook) -> list[Card]:
    """The cards of the main line as a flight comes to them."""
    cards = [card for card in handbook.cards if on_main_line(card)]
    return sorted(cards, key=lambda card: ORDER[card.phase])


def items_of(card: Card) -> list[Item]:
    return [step for step in every_step(card.steps) if isinstance(step, Item)]


def spoken(cards: list[Card]) -> Iterator[Spoken]:
    for card in cards:
        for item in items_of(card):
            for challenge in item.challenges:
                yield Spoken(key_of(challenge), challenge, item, card)


def key_of(challenge: Challenge) -> str:
    """A control by its key, so that another name of it counts, too; anything else by its words."""
    return challenge.control or folded(challenge.phrase.text)


def up_to_takeoff(cards: list[Card]) -> list[Card]:
    return [card for card in cards if ORDER[card.phase] < ORDER["takeoff"]]


def before_landing(cards: list[Card]) -> list[Card]:
    """The cards on which something can be looked at again before the aircraft touches down."""
    return [card for card in cards if ORDER["descent"] <= ORDER[card.phase] <= ORDER["landing"]]
