"""The checklists of a handbook laid out, each by itself, each once and only when it is asked for."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from dotleader.handbook.cards import Card
from dotleader.handbook.model import Handbook
from dotleader.page.frames import frame_of
from dotleader.page.lay.roominess import surely_fits
from dotleader.page.type.symbols import symbols_of

if TYPE_CHECKING:
    from dotleader.page.laid import LaidCard


class Checklists:
    """Cards on a leaf of the handbook's stock, which must be possible."""

    def __init__(self, handbook: Handbook) -> None:
        self.handbook = handbook
        self._laid: dict[int, LaidCard] = {}

    def all(self) -> tuple[LaidCard, ...]:
        """Every card in the order of the source."""
        return tuple(self._lay(place, card) for place, card in enumerate(self.handbook.cards))

    @cached_property
    def continued(self) -> tuple[LaidCard, ...]:
        """The cards that do not stay on one face. Nothing else is laid out, and most are not even measured."""
        frame = frame_of(self.handbook.stock)
        doubtful = [(place, card) for place, card in enumerate(self.handbook.cards) if not surely_fits(card, frame)]
        if not doubtful:
            return ()
        from dotleader.page.lay.lay_card import stays_on_one_face  # a lint of short cards never needs it  # noqa: PLC0415

        symbols = symbols_of(self.handbook)
        return tuple(self._lay(place, card) for place, card in doubtful if not stays_on_one_face(card, frame, symbols))

    def _lay(self, place: int, card: Card) -> LaidCard:
        if place not in self._laid:
            from dotleader.page.lay.lay_card import lay_card  # noqa: PLC0415

            self._laid[place] = lay_card(card, frame_of(self.handbook.stock), symbols_of(self.handbook))
        return self._laid[place]
