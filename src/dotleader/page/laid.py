"""A card laid out by itself, on faces of its own, in a frame that knows no left and right. Data only.

Coordinates of a laid face: x from the left edge of the text frame, y down from the top edge of the leaf. Whole
micrometres. A laid card depends on the card, the frame and the width of the widest label, and on nothing else, so that
a card that grows changes no other laid-out card.
"""

from __future__ import annotations

from dotleader.page.drawn import Drawn
from dotleader.source.record import record
from dotleader.source.text import Spot


@record
class Frame:
    """Where text may stand on a leaf, whichever side it is.

    `width` of the text column; `top` and `bottom` of the body (below the head rule, above the foot rule);
    `label_width` is kept free after every go-to for the tab with the widest label, which is `label_height` high and
    set in `label_size`; `gutter` and the edge band lie outside `width`. `smallest` is the smallest type size
    (thousandths of a point) that is legible at the stock's reading distance, and where type is large the smallest that
    is used.
    """

    width: int
    height: int
    top: int
    bottom: int
    label_width: int
    label_height: int
    label_size: int
    smallest: int


@record
class LabelSlot:
    """Room kept for the tab with the label of the face on which a target stands: its upper left corner.

    The tab stands at the left end of it, or at the right end where it is said how wide the `room` is.
    """

    x: int
    y: int
    height: int
    target: str  # key of the card
    room: int = 0


@record
class LaidFace:
    """One face's worth of a card: drawn things, the slots for labels, and what it says (for the meaning digest).

    `says` are the texts in reading order, with the titles of go-to targets and no labels.
    """

    items: tuple[Drawn, ...]
    slots: tuple[LabelSlot, ...]
    says: tuple[str, ...]


@record
class LaidCard:
    """A card's faces. `kind` is ``emergency``, ``abnormal``, ``normal``, ``amplified`` or ``text``.

    `section` is the GAMA Specification 1 section id (``"3"``, ``"3A"``, ``"4"`` ...). `size` is the type size taken.
    `over` is by how many lines the card is too long for one face at the smallest size, 0 if it fits.
    """

    key: str
    kind: str
    section: str
    title: str
    thumb: str
    size: int
    faces: tuple[LaidFace, ...]
    over: int
    spot: Spot
