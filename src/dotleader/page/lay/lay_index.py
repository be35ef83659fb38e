"""Where to find a card: the emergency index by what is seen or heard, and the contents by the order of a flight.

Both name their cards by title and leave room for the label of the face on which each stands, like a go-to: so they are
laid out by themselves, and labels come with placement.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.handbook.cards import Card, Kind
from dotleader.handbook.model import Handbook
from dotleader.page.drawn import Drawn, Font, Line, mm
from dotleader.page.laid import Frame, LabelSlot, LaidCard
from dotleader.page.lay.flow import Strip, flowed, heading
from dotleader.page.lay.measures import HAIRLINE, HEADING, TAB_GAP, base_in_slot, grown, slot, smallest_in
from dotleader.page.type.breaking import Line as Words
from dotleader.page.type.breaking import balanced, room_of, set_line, without_orphan
from dotleader.page.type.words import plain_words

INDEX_KEY, INDEX_TITLE = "*emergency index", "Emergency index"
CONTENTS_KEY, CONTENTS_TITLE = "*contents", "Contents"

FEWEST_URGENT, FEWEST_CARDS = 3, 6
"""Of fewer cards an index would be a leaf more to turn, and none sooner found."""

_PAD = mm(1)
"""Above and below what stands in a row."""

_INDENT = mm(4)
_KINDS = {Kind.EMERGENCY: "Emergency", Kind.ABNORMAL: "Abnormal", Kind.NORMAL: "Normal"}


def lay_index(handbook: Handbook, frame: Frame) -> tuple[LaidCard, ...]:
    """The emergency index and the contents, each only where there are so many cards that one has to look for one.

    Kind ``index``: the emergency index opens on a front, to be the first leaf that is found.
    """
    cards = handbook.cards
    urgent = [card for card in cards if card.kind is not Kind.NORMAL]
    made = []
    if len(urgent) >= FEWEST_URGENT:
        strips = _listed(urgent, frame, triggers=True)
        made.append(_laid(INDEX_KEY, INDEX_TITLE, "index", tuple(strips), handbook, frame))
    if len(cards) >= FEWEST_CARDS:
        strips = _listed(cards, frame, triggers=False)
        made.append(_laid(CONTENTS_KEY, CONTENTS_TITLE, "contents", tuple(strips), handbook, frame))
    return tuple(made)


def _laid(key: str, title: str, kind: str, strips: tuple[Strip, ...], handbook: Handbook, frame: Frame) -> LaidCard:
    size = smallest_in(frame)
    return LaidCard(key, kind, "0", title, "", size, flowed(title, strips, frame), 0, handbook.spot)


def _listed(cards: Sequence[Card], frame: Frame, triggers: bool) -> Iterator[Strip]:
    """By kinds, emergency first, in each in the order of the book."""
    for kind, name in _KINDS.items():
        some = [card for card in cards if card.kind is kind]
        if some:
            yield from heading(name, frame.width, grown(HEADING, smallest_in(frame)))
        for number, card in enumerate(some):
            trigger = f"When {card.when.text}" if triggers and card.when is not None else ""
            yield listed_row(card.title, card.key, trigger, frame, ruled=number > 0)


def listed_row(title: str, key: str, trigger: str, frame: Frame, ruled: bool, pad: int = _PAD) -> Strip:
    """A card's title with room for its label at the right, and what calls for it below.

    `pad` is left free above and below.
    """
    size = smallest_in(frame)
    room = frame.width - frame.label_width - TAB_GAP
    titles: list[Words] = list(balanced(plain_words(title, Font.BOLD), room_of(room, size)))
    below: list[Words] = list(without_orphan(plain_words(trigger, Font.REGULAR), room_of(frame.width - _INDENT, size)))
    items: list[Drawn] = [Line(((0, 0), (frame.width, 0)), HAIRLINE)] if ruled else []
    top = pad
    for line in titles:
        items.extend(set_line(line, 0, top + base_in_slot(size), size))
        top += slot(size)
    top = max(top, pad + frame.label_height)  # what calls for the card runs on below the tab
    for line in below:
        items.extend(set_line(line, _INDENT, top + base_in_slot(size), size))
        top += slot(size)
    height = top + pad
    at = LabelSlot(frame.width - frame.label_width, pad, frame.label_height, key, frame.label_width)
    says = (title, *((trigger,) if trigger else ()))
    return Strip(height, tuple(items), says, slots=(at,))
