"""A part of a book: leaves chosen by what stands on them, with the labels that they have in the whole book."""

from __future__ import annotations

import re
from collections.abc import Iterable

from dotleader.handbook.stocks.measures import leaves_together
from dotleader.page.drawn import Group, Link
from dotleader.page.face.book import Book
from dotleader.page.face.faces import Face
from dotleader.page.labels import SECTIONS, Label
from dotleader.page.lay.lay_dividers import DIVIDER
from dotleader.source.record import record, replace

_LABEL = re.compile(r"(\d+A?)-(\d+)(?:\.(\d+))?")


@record
class Wanted:
    """What is asked for; a leaf is taken if one of its faces is meant by any of these.

    `kinds` of cards (``emergency`` ...), `keys` of cards, `spans` of labels from first to last. A card brings its
    amplified text with it, a kind does not. A kind brings the dividers of the sections that it is in.
    """

    kinds: frozenset[str] = frozenset()
    keys: frozenset[str] = frozenset()
    spans: tuple[tuple[Label, Label], ...] = ()

    def means(self, face: Face) -> bool:
        if face.blank and not self.spans:
            return False
        card = face.key.removesuffix(", amplified")
        return (
            face.kind in self.kinds
            or (bool(face.key) and card in self.keys)
            or any(first.order <= face.label.order <= last.order for first, last in self.spans)
        )


def read_label(text: str) -> Label | None:
    """The label that a text is: `3-12`, `3A-5.1`; None where it is none."""
    found = _LABEL.fullmatch(text.strip())
    if found is None or found[1] not in SECTIONS or len(found[2]) > 6:
        return None
    return Label(found[1], int(found[2]), int(found[3] or 0))


def read_span(text: str) -> tuple[Label, Label] | None:
    """One label, or two joined by `..`; None where that is not what the text is, or the first comes after the last."""
    first, dots, last = text.partition("..")
    labels = read_label(first), read_label(last if dots else first)
    if labels[0] is None or labels[1] is None or labels[0].order > labels[1].order:
        return None
    return labels[0], labels[1]


def selected(book: Book, wanted: Wanted) -> Book:
    """The book with only the leaves that are wanted, front and back; links to other leaves are taken away.

    A folded card is kept whole.
    """
    each = 2 * leaves_together(book.stock)
    leaves = [book.faces[at : at + each] for at in range(0, len(book.faces), each)]
    opened = {face.label.section for face in book.faces if face.kind in wanted.kinds}
    kept = [leaf for leaf in leaves if any(wanted.means(face) or _divides(face, opened) for face in leaf)]
    labels = {str(face.label) for leaf in kept for face in leaf}
    return replace(book, faces=tuple(_unlinked(face, labels) for leaf in kept for face in leaf))


def _divides(face: Face, sections: set[str]) -> bool:
    return face.kind == DIVIDER and face.label.section in sections


def _unlinked(face: Face, labels: set[str]) -> Face:
    groups = (_without(group, labels) if group.role == "links" else group for group in face.groups)
    return replace(face, groups=tuple(group for group in groups if group.items))


def _without(group: Group, labels: Iterable[str]) -> Group:
    items = (item for item in group.items if not isinstance(item, Link) or item.label in labels)
    return replace(group, items=tuple(items))
