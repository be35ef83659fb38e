"""Which face stands where: laid-out cards to leaves, with sides and labels.

A section opens on a front with serial 1; odd serials are fronts, and blanks take serials. A checklist of two faces
stands on a back and the front that faces it, so that both are seen at once when the book lies open there; every
other card stands on one face, so that the book can be folded round on its rings. Nothing here knows what is on a face
or how large it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from enum import Enum

from dotleader.page.labels import Label, section_order
from dotleader.page.laid import LaidCard
from dotleader.page.lay.lay_dividers import DIVIDER
from dotleader.source.record import record

CHECKLISTS = ("emergency", "abnormal", "normal")
_RANK = {DIVIDER: 0, "amplified": 2}


class Side(Enum):
    FRONT = "front"
    BACK = "back"


@record
class Stand:
    """One face at its place: part `part` (from 0) of a card, or nothing (`card` None) where it is left blank."""

    label: Label
    side: Side
    card: LaidCard | None
    part: int = 0

    @property
    def open_flat(self) -> bool:
        """Whether this face is half of a spread: of a checklist that stands on two faces."""
        return self.card is not None and self.card.kind in CHECKLISTS and len(self.card.faces) == 2


@record
class Leaf:
    front: Stand
    back: Stand


@record
class Placement:
    """Leaves in the order of the book. A new placement can be held against an earlier one: both are plain data."""

    leaves: tuple[Leaf, ...]

    @property
    def stands(self) -> tuple[Stand, ...]:
        """Every face in reading order, front before back."""
        return tuple(stand for leaf in self.leaves for stand in (leaf.front, leaf.back))

    def labels(self) -> dict[str, Label]:
        """The label of each card's first face, by the card's key; of two cards with one key, the first's."""
        found: dict[str, Label] = {}
        for stand in self.stands:
            if stand.card is not None and stand.part == 0:
                found.setdefault(stand.card.key, stand.label)
        return found


def place(cards: Iterable[LaidCard]) -> Placement:
    """The cards of a book on its leaves. Cards keep their order within a section; a divider comes first there,
    amplified text last."""
    sections: dict[str, list[LaidCard]] = {}
    for card in cards:
        sections.setdefault(card.section, []).append(card)
    leaves: list[Leaf] = []
    for section in sorted(sections, key=section_order):
        ordered = sorted(sections[section], key=lambda card: _RANK.get(card.kind, 1))
        leaves.extend(_leaves(section, ordered))
    return Placement(tuple(leaves))


def _leaves(section: str, cards: Sequence[LaidCard]) -> Iterator[Leaf]:
    contents = list(_contents(cards))
    if len(contents) % 2:
        contents.append((None, 0))
    stands = [
        Stand(Label(section, serial), Side.FRONT if serial % 2 else Side.BACK, card, part)
        for serial, (card, part) in enumerate(contents, start=1)
    ]
    for front, back in zip(stands[::2], stands[1::2], strict=True):
        yield Leaf(front, back)


def _contents(cards: Sequence[LaidCard]) -> Iterator[tuple[LaidCard | None, int]]:
    """What stands on each serial of a section, from 1.

    There is a blank before a spread on a front, before an index on a back, and behind a divider of one face, which
    has its leaf to itself.
    """
    serial = 1
    before = ""
    for card in cards:
        spread = card.kind in CHECKLISTS and len(card.faces) > 1
        if not serial % 2 and (card.kind == "index" or before == DIVIDER):
            yield None, 0
            serial += 1
        if spread and serial % 2:
            yield None, 0
            serial += 1
        for part in range(len(card.faces)):
            yield card, part
            serial += 1
        before = card.kind
