"""Strips of text stacked under a title, over as many faces as they take. For what is read on the ground."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.drawn import Drawn, Font, Group, mm
from dotleader.page.drawn import Line as Rule
from dotleader.page.laid import Frame, LabelSlot, LaidFace
from dotleader.page.lay.heads import head_of
from dotleader.page.lay.inking import Placed, ink_row
from dotleader.page.lay.measures import BODY_GAP, HAIRLINE, base_in_slot, slot
from dotleader.page.type.breaking import Line, balanced, broken, room_of, set_line
from dotleader.page.type.words import plain_words
from dotleader.source.record import record, replace

PARAGRAPH_AIR = mm(1.6)
ABOVE_HEADING = mm(4)
BELOW_HEADING = mm(1.2)


@record
class Strip:
    """Something of a height that stays on one face; `items` from its own upper left corner.

    `gap` is left free above it, but not at the head of a face; `keep` holds it to the strip that follows. `slots` are
    room for labels, counted like `items`.
    """

    height: int
    items: tuple[Drawn, ...]
    says: tuple[str, ...]
    gap: int = 0
    keep: bool = False
    slots: tuple[LabelSlot, ...] = ()


def flowed(
    title: str,
    strips: Sequence[Strip],
    frame: Frame,
    again: Sequence[Strip] = (),
    opening: Strip | None = None,
) -> tuple[LaidFace, ...]:
    """The faces; at least one. `again` stands at the head of each, below the title.

    An `opening` stands at the head of the first face in the place of the title.
    """
    head = head_of(title, (), "", frame)
    faces: list[LaidFace] = []
    rest = list(strips)
    while rest or not faces:
        opens = opening is not None and not faces
        rows = head.again if faces else () if opens else head.rows
        placed, top = [], frame.top
        for row in rows:
            placed.append(Placed(row, top))
            top += row.height
        items: list[Drawn] = [drawn for one in placed for drawn in ink_row(one)]
        says = [said for one in placed for said in one.row.says]
        slots: list[LabelSlot] = []
        top += BODY_GAP
        for strip in (opening, *again) if opening is not None and opens else again:
            top = _put(strip, top, items, says)
        count = _fitting(rest, frame.bottom - top)
        for number, strip in enumerate(rest[:count]):
            top += strip.gap if number else 0
            slots.extend(replace(slot, y=slot.y + top) for slot in strip.slots)
            top = _put(strip, top, items, says)
        rest = rest[count:]
        faces.append(LaidFace(tuple(items), tuple(slots), tuple(says)))
    return tuple(faces)


def paragraph(words: Sequence[Line], size: int) -> Iterator[Strip]:
    """Lines that have been broken, one strip each, so that a long paragraph can go on on the next face."""
    for number, line in enumerate(words):
        said = (" ".join(word.text for word in line),)
        items = tuple(set_line(line, 0, base_in_slot(size), size))
        yield Strip(slot(size), items, said, gap=0 if number else PARAGRAPH_AIR, keep=number == 0 and len(words) > 1)


def prose(text: str, width: int, size: int) -> Iterator[Strip]:
    yield from paragraph(broken(plain_words(text, Font.REGULAR), room_of(width, size)), size)


def heading(text: str, width: int, size: int) -> Iterator[Strip]:
    """A heading below a hairline, held to what follows."""
    rule = Rule(((0, HAIRLINE // 2), (width, HAIRLINE // 2)), HAIRLINE)
    for number, line in enumerate(balanced(plain_words(text, Font.BOLD), room_of(width, size))):
        first = number == 0
        pad = BELOW_HEADING if first else 0
        items = tuple(set_line(line, 0, pad + base_in_slot(size), size))
        said = (" ".join(word.text for word in line),)
        yield Strip(
            pad + slot(size), (rule, *items) if first else items, said, gap=ABOVE_HEADING if first else 0, keep=True
        )


def _put(strip: Strip, top: int, items: list[Drawn], says: list[str]) -> int:
    items.append(Group(0, top, strip.items))
    says.extend(strip.says)
    return top + strip.height


def _fitting(strips: Sequence[Strip], room: int) -> int:
    """How many strips go onto a face: as many as fit, less those that would be parted from what follows them.

    At least one, and so many that something is left with what is held to it, even where it does not fit.
    """
    height, count = 0, 0
    for strip in strips:
        height += strip.height + (strip.gap if count else 0)
        if height > room:
            break
        count += 1
    if count == len(strips):
        return count
    kept = count
    while kept and strips[kept - 1].keep:
        kept -= 1
    return kept or max(1, count)
