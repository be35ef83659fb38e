"""Faces: a laid-out card at its place, with everything around it, in the coordinates of the leaf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Drawn, Group, Link, Text
from dotleader.page.face import furniture
from dotleader.page.face.edges import edge
from dotleader.page.face.furniture import Imprint
from dotleader.page.face.margins import Margins, margins
from dotleader.page.face.placement import Placement, Side, Stand
from dotleader.page.frames import goto_size
from dotleader.page.labels import Label
from dotleader.page.laid import LabelSlot
from dotleader.page.lay.lay_dividers import DIVIDER
from dotleader.page.tabs import not_here, tab, tab_width
from dotleader.page.type.metrics import shown
from dotleader.source.record import record, replace

NO_LABEL = "?"
"""Stands in the tab of a go-to that leads nowhere, which only a draft can have."""


@record
class Face:
    """One printed side. Its groups have the roles ``head``, ``label``, ``edge``, ``body``, ``tabs``, ``links``,
    ``foot``, ``issue`` and ``draft``; nothing is drawn outside the leaf but what reaches 3 mm past its edge.

    `key` is that of the card that stands here, `""` on a blank; `part` counts the card's faces from 0 and `parts`
    is how many there are. `says` are its texts in reading order, with the titles of go-to targets and no labels.
    """

    label: Label
    side: Side
    key: str
    kind: str
    title: str
    part: int
    parts: int
    groups: tuple[Group, ...]
    says: tuple[str, ...]

    @property
    def blank(self) -> bool:
        return not self.parts


def faces_of(placement: Placement, imprint: Imprint, stock: Stock, draft: int | None = None) -> Iterator[Face]:
    """Every face in reading order, blanks included. `draft` is the number of errors, None where there are none."""
    labels = placement.labels()
    for stand in placement.stands:
        yield _face(stand, labels, imprint, stock, draft)


def _face(stand: Stand, labels: Mapping[str, Label], imprint: Imprint, stock: Stock, draft: int | None) -> Face:
    at = margins(stock, stand.side)
    card = stand.card
    kind, section = card.kind if card else "blank", stand.label.section
    groups = [
        _group("head", furniture.head(stock, at, kind, section, imprint, stand.open_flat)),
        _group("label", iter(furniture.own_label(stock, at, str(stand.label)))),
    ]
    if card is None:
        groups.append(_group("edge", edge(stock, at, kind, "", section)))
        groups.append(_group("body", furniture.blank(stock, at)))
    else:
        laid = card.faces[stand.part]
        groups.append(_group("edge", edge(stock, at, band_kind(kind, section), card.thumb, section, kind == DIVIDER)))
        groups.append(Group(at.left, at.down, laid.items, role="body"))
        groups.append(_group("tabs", _tabs(laid.slots, labels, goto_size(stock)), at))
        groups.append(_group("links", _links(laid.slots, labels, goto_size(stock)), at))
    groups.append(_group("foot", furniture.foot(stock, at, imprint)))
    groups.append(_group("issue", furniture.issue_mark(stock, at, imprint)))
    if draft is not None:
        groups.append(_group("draft", furniture.draft(stock, at, draft, stand.open_flat)))
        groups = [printable(group) for group in groups]
    return Face(
        label=stand.label,
        side=stand.side,
        key=card.key if card else "",
        kind=kind,
        title=card.title if card else "",
        part=stand.part,
        parts=len(card.faces) if card else 0,
        groups=tuple(group for group in groups if group.items),
        says=card.faces[stand.part].says if card else (),
    )


def band_kind(kind: str, section: str) -> str:
    """Of which kind the band of a face is: a divider has that of the cards behind it."""
    return {"3": "emergency", "3A": "abnormal"}.get(section, kind) if kind == DIVIDER else kind


def printable(group: Group) -> Group:
    """A group of a draft, in which a box stands for each character that no font has; just as wide."""
    return replace(group, items=tuple(_printable(item) for item in group.items))


def _printable(item: Drawn) -> Drawn:
    match item:
        case Text():
            return replace(item, string=shown(item.string, item.font))
        case Group():
            return printable(item)
        case _:
            return item


def _group(role: str, items: Iterator[Drawn], at: Margins | None = None) -> Group:
    return Group(at.left if at else 0, at.down if at else 0, tuple(items), role=role)


def _tabs(slots: tuple[LabelSlot, ...], labels: Mapping[str, Label], size: int) -> Iterator[Drawn]:
    for slot in slots:
        label = labels.get(slot.target)
        if label is None and slot.target:
            yield from not_here(slot.x, slot.y, slot.height)
        else:
            said = str(label) if label else NO_LABEL
            yield from tab(_left(slot, said, size), slot.y, slot.height, said, size)


def _links(slots: tuple[LabelSlot, ...], labels: Mapping[str, Label], size: int) -> Iterator[Link]:
    for slot in slots:
        label = labels.get(slot.target)
        if label is not None:
            long = tab_width(str(label), size)
            yield Link(_left(slot, str(label), size), slot.y, long, slot.height, str(label))


def _left(slot: LabelSlot, label: str, size: int) -> int:
    """Where a tab begins in its room."""
    return slot.x + max(0, slot.room - tab_width(label, size))
