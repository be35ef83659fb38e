"""Normal cards that fit no phase, and the phases that they may be meant for by where they stand."""

from __future__ import annotations

from dotleader.handbook.cards import Card, Kind
from dotleader.handbook.model import Handbook
from dotleader.handbook.phases import ORDER

_LAST = len(ORDER) - 1


def unplaced(handbook: Handbook) -> list[tuple[Card, frozenset[str]]]:
    """Each normal card without phase, `phase` or `during` line, with the phases between those of its neighbours."""
    cards = [card for card in handbook.cards if card.kind is Kind.NORMAL and not card.during]
    found = []
    for at, card in enumerate(cards):
        if card.phase:
            continue
        before = next((ORDER[one.phase] for one in reversed(cards[:at]) if one.phase), 0)
        after = next((ORDER[one.phase] for one in cards[at + 1 :] if one.phase), _LAST)
        found.append((card, frozenset(name for name, place in ORDER.items() if before <= place <= after)))
    return found
