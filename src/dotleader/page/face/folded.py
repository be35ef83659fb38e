"""Cards that are folded once: four faces each, front, the two inside, back, and nothing that is not asked for.

Sections do not open on a front of their own here, and no card is left unused: faces follow one another over the four,
and serials count each section's faces as they come. A checklist of two faces stands inside, where both are seen at
once. One of three or more begins early enough to be on one card. Where that would leave a face blank, the next
checklist of one face is taken forward to it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.page.face.placement import CHECKLISTS, Leaf, Placement, Side, Stand
from dotleader.page.labels import Label, section_order
from dotleader.page.laid import LaidCard

FACES = 4
"""Of one folded card."""

_BEGINS = {1: (0, 1, 2, 3), 2: (1,), 3: (0, 1)}
"""On which of the four faces a checklist of so many faces may begin; a longer one begins on the first."""


def place_folded(cards: Iterable[LaidCard]) -> Placement:
    """The cards on folded cards, each two leaves: the front of the second is the right one of the faces inside."""
    counted: dict[str, int] = {}
    stands = []
    for at, (section, card, part) in enumerate(_standing(cards)):
        counted[section] = counted.get(section, 0) + 1
        side = Side.BACK if at % 2 else Side.FRONT
        stands.append(Stand(Label(section, counted[section]), side, card, part))
    return Placement(tuple(Leaf(front, back) for front, back in zip(stands[::2], stands[1::2], strict=True)))


def _standing(cards: Iterable[LaidCard]) -> Iterator[tuple[str, LaidCard | None, int]]:
    """Section, card and part of each face; of full cards, so that the last faces may be blank."""
    waiting = sorted(cards, key=lambda card: (section_order(card.section), card.kind == "amplified"))
    at, section = 0, ""
    while waiting:
        section = waiting[0].section
        found = _next(waiting, at % FACES)
        if found is None:
            yield section, None, 0
            at += 1
            continue
        waiting.remove(found)
        section = found.section
        for part in range(len(found.faces)):
            yield section, found, part
        at += len(found.faces)
    for _ in range(-at % FACES):
        yield section, None, 0


def _next(waiting: list[LaidCard], at: int) -> LaidCard | None:
    """The card that goes on the face `at` of the four: the first one, or else a checklist of one face."""
    if at in _begins(waiting[0]):
        return waiting[0]
    return next((card for card in waiting if card.kind in CHECKLISTS and len(card.faces) == 1), None)


def _begins(card: LaidCard) -> tuple[int, ...]:
    if card.kind not in CHECKLISTS:
        return (0, 1, 2, 3)
    return _BEGINS.get(len(card.faces), (0,))
