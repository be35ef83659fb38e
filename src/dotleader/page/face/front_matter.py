"""The control leaf: title, cautions and record of issues on its front, the list of effective faces on its back.

The list is the only place where a total stands: on any other face it would change with every leaf.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.handbook.model import Handbook
from dotleader.page.drawn import mm
from dotleader.page.face.furniture import NOT_ISSUED
from dotleader.page.face.placement import Placement, Stand, place
from dotleader.page.laid import Frame, LaidCard, LaidFace
from dotleader.page.lay.flow import Strip, flowed, heading, prose
from dotleader.page.lay.measures import HEADING, NARROW, SMALL, grown, slot, smallest_in
from dotleader.page.lay.tables import cells, row_strips, table
from dotleader.source.text import Spot

CAUTIONS = (
    "This is the handbook of an amateur-built aircraft. Its builder and the pilot in command are responsible for "
    "what it says and for what is done with it.",
    "The values come from the makers’ current documents and from the aircraft’s own tests. Where such a document "
    "says otherwise, the document goes first.",
    "The aircraft’s operating limitations and local rules go before anything that is printed here.",
    "Have this book reviewed by somebody who is licensed to do it before anybody flies by it.",
    "Nothing in it says that the aircraft or the book is approved or certified.",
)
"""The usual cautions, in full; every other face bears a line that points to them."""

TITLE_KEY = "*title"
NOT_ISSUED_SHORT = "none"
LIST_KEY = "*effective faces"
LIST_TITLE = "Effective faces"
LIST_SIZE = 11_000
"""Read on the ground, never in flight. Where type is large, it is larger."""

LIST_AIR = mm(0.3)
LEAST_LIST_SIZE = 9_000
"""On narrow leaves."""

STEP = 1_000
FEWEST_ROWS = 20

_NOT_PRINTED = ("paper", "airspeed in")
_MOST_FACES = 99


def lay_title(handbook: Handbook, frame: Frame, book: str = "") -> LaidCard:
    """Title, cautions and record of issues. `book` is the name of the book, `""` where no book is declared.

    They are read on the ground: large type gives way where that keeps them on one face.
    """
    title = handbook.title or "Checklists"
    sizes = range(smallest_in(frame), SMALL - 1, -STEP)
    made = (flowed(title, tuple(_title(handbook, book, frame.width, size)), frame) for size in sizes)
    tried = list(zip(sizes, made, strict=True))
    size, faces = next((one for one in tried if len(one[1]) == 1), tried[0])
    return _control(TITLE_KEY, title, size, faces, handbook.spot)


def _title(handbook: Handbook, book: str, width: int, size: int) -> Iterator[Strip]:
    yield from _facts(handbook, book, width, size)
    yield from heading("Cautions", width, grown(HEADING, size))
    for text in CAUTIONS:
        yield from prose(text, width, size)
    yield from heading("Record of issues", width, grown(HEADING, size))
    yield from row_strips(table(("Issue", "Date", "What changed"), [cells(NOT_ISSUED, "", "")], width, size))


def with_control_leaf(title: LaidCard, cards: Sequence[LaidCard], frame: Frame) -> Placement:
    """The placement of a whole book. The list counts its own faces, so it is made until it is as long as it says."""
    listed = _control(LIST_KEY, LIST_TITLE, LIST_SIZE, (LaidFace((), (), ()),), title.spot)
    for _ in range(_MOST_FACES):
        placement = place((title, listed, *cards))
        made = lay_list(placement, frame, title.spot)
        if len(made.faces) == len(listed.faces):
            return place((title, made, *cards))
        listed = made
    raise AssertionError("a longer list has room for its own faces")


def lay_list(placement: Placement, frame: Frame, spot: Spot) -> LaidCard:
    """Every face of the book, this one too, with its title and the issue that it belongs to.

    In short words and smaller type where that takes fewer faces, on narrow leaves: else most rows would have two lines,
    and half of the list would be about its own faces.
    """
    largest = list_size(frame)
    tried = [(largest, _listed(placement, frame, largest, short=False))]
    if frame.width < NARROW:
        sizes = range(largest, LEAST_LIST_SIZE - 1, -STEP)
        tried += [(size, _listed(placement, frame, size, short=True)) for size in sizes]
    size, faces = min(tried, key=lambda one: len(one[1]))
    return _control(LIST_KEY, LIST_TITLE, size, faces, spot)


def _listed(placement: Placement, frame: Frame, size: int, short: bool) -> tuple[LaidFace, ...]:
    stands = placement.stands
    title, issue = (_short_title, NOT_ISSUED_SHORT) if short else (listed_title, NOT_ISSUED)
    rows = [cells(str(stand.label), title(stand), issue, bold=(0,)) for stand in stands]
    made = table(("Face", "Title", "Issue"), rows, frame.width, size, LIST_AIR)
    total = f"{len(stands)} faces on {len(placement.leaves)} leaves, all of which are listed here."
    return flowed(LIST_TITLE, (*made.rows, *prose(total, frame.width, size)), frame, (made.head,))


def list_size(frame: Frame) -> int:
    """Larger where type is large, as long as a face holds so many rows that the list does not grow by its own faces."""
    size = grown(LIST_SIZE, smallest_in(frame))
    while size > LIST_SIZE and FEWEST_ROWS * slot(size) > frame.bottom - frame.top:
        size -= STEP
    return max(size, LIST_SIZE)


def listed_title(stand: Stand) -> str:
    """What the list calls a face."""
    if stand.card is None:
        return "left blank"
    return stand.card.title + (", continued" if stand.part else "")


def _short_title(stand: Stand) -> str:
    """The same on a line, where it can be: what goes on has its title above it."""
    if stand.card is not None and stand.part:
        return "continued"
    return listed_title(stand)


def _facts(handbook: Handbook, book: str, width: int, size: int) -> Iterator[Strip]:
    rows = [cells("Book", book, bold=(1,))] if book else []
    rows += [
        cells(fact.name[:1].upper() + fact.name[1:], fact.text, bold=(1,))
        for key, fact in handbook.facts.items()
        if key not in _NOT_PRINTED
    ]
    if rows:
        yield from table(("", ""), rows, width, size).rows


def _control(key: str, title: str, size: int, faces: tuple[LaidFace, ...], spot: Spot) -> LaidCard:
    return LaidCard(key, "control", "0", title, "", size, faces, 0, spot)
