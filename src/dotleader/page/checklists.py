"""The checklists of a handbook laid out, each by itself."""

from __future__ import annotations

from dotleader.handbook.model import Handbook
from dotleader.page.declared import symbols_of
from dotleader.page.frames import frame_of
from dotleader.page.laid import LaidCard
from dotleader.page.lay_card import lay_card


def lay_checklists(handbook: Handbook) -> tuple[LaidCard, ...]:
    """Every card in the order of the source, on a leaf of the handbook's stock. The stock must be possible."""
    frame, symbols = frame_of(handbook.stock), symbols_of(handbook)
    return tuple(lay_card(card, frame, symbols) for card in handbook.cards)
