"""Where text may stand on a leaf, and what stands around it: margins, head, foot. From the leaf's edges.

A leaf that is bound at the left has its text moved sideways between front and back; one that is bound at the top,
whose back is printed head to foot, up and down. A frame is the same on both sides; `margins` say where it stands.
"""

from __future__ import annotations

from functools import lru_cache

from dotleader.handbook.stocks.measures import FREE_EDGE, OUTER_MARGIN, binding_margin
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Font, mm
from dotleader.page.imposition import lost_at_outer_edge
from dotleader.page.labels import WIDEST
from dotleader.page.laid import Frame
from dotleader.page.tabs import GOTO_HEIGHT, GOTO_SIZE, HEAD_SIZE, tab_width
from dotleader.page.type.breaking import broken, room_of
from dotleader.page.type.metrics import SMALLEST_IN_FLIGHT, smallest_legible
from dotleader.page.type.words import plain_words

TALLEST = mm(222.25)
"""The leaf for which the measures were tried; on lower leaves the head moves up a little."""

HEAD_RULE = mm(16)
HIGHEST_HEAD_RULE = mm(14)
TAB_HEIGHT = mm(7.4)
"""Of the label's tab, which stands on the head rule."""

HEAD_HEIGHT = mm(9)
"""From the upper line of the head, which only some faces have, to the head rule."""

UNDER_HEAD = mm(1)
ABOVE_FOOT = mm(3.5)
FOOT_RULE = mm(14.25)
"""From the lower edge of the leaf up to the foot rule, where the caution takes one line."""

FOOT_LINE = mm(3.5)
FOOT_SIZE = 8_500
CAUTION_SIZE = 8_000
FOOT_MARGIN = FREE_EDGE
"""Free below the last line of the foot."""

NARROW = mm(85)

CAUTION = "Builder’s own handbook. The pilot in command is responsible."

BAND = mm(6)
"""How wide the edge band is printed."""

LARGEST_OWN_LABEL = 24_000
"""So that it stays within its tab, which ends at the free edge."""

_STEP = 500
_GOTO_SHARE = (2, 5)
"""The part of the width that the widest label after a go-to may take."""


@lru_cache(maxsize=64)
def frame_of(stock: Stock) -> Frame:
    """The frame of a stock's leaves. `top` is just below the head rule: the title stands inside the frame."""
    return Frame(
        width=frame_width(stock),
        height=stock.leaf[1],
        top=head_rule(stock) + UNDER_HEAD,
        bottom=foot_rule(stock) - ABOVE_FOOT,
        label_width=tab_width(str(WIDEST), goto_size(stock)),
        label_height=GOTO_HEIGHT * goto_size(stock) // GOTO_SIZE,
        label_size=goto_size(stock),
        smallest=smallest(stock),
    )


def smallest(stock: Stock) -> int:
    """The smallest legible type; of a book in large type the smallest in use, which is so much larger."""
    legible = smallest_legible(stock.reading_distance / 1000)
    if stock.type_percent == 100:
        return legible
    return -(-max(SMALLEST_IN_FLIGHT, legible) * stock.type_percent // (100 * _STEP)) * _STEP


def larger(stock: Stock) -> int:
    """How much larger than usual all type is that is read in flight."""
    return max(0, smallest(stock) - SMALLEST_IN_FLIGHT)


@lru_cache(maxsize=64)
def goto_size(stock: Stock) -> int:
    """Of the label after a go-to: it grows with the type, as long as a title has room beside it."""
    share, whole = _GOTO_SHARE
    size = GOTO_SIZE + larger(stock)
    while size > GOTO_SIZE and tab_width(str(WIDEST), size) > frame_width(stock) * share // whole:
        size -= _STEP
    return size


def own_label_size(stock: Stock) -> int:
    """Of the label in the head of its own face."""
    return min(HEAD_SIZE + larger(stock), LARGEST_OWN_LABEL)


def own_label_height(stock: Stock) -> int:
    """Of its tab, which grows with it where the head has room."""
    room = head_rule(stock) - FREE_EDGE if stock.bound_at == "left" else HEAD_HEIGHT
    return max(TAB_HEIGHT, min(room, TAB_HEIGHT * own_label_size(stock) // HEAD_SIZE))


def head_rule(stock: Stock) -> int:
    """The height of the head rule on a front."""
    usual = max(HIGHEST_HEAD_RULE, min(HEAD_RULE, HEAD_RULE * stock.leaf[1] // TALLEST))
    return usual if stock.bound_at == "left" else binding_margin(stock) + HEAD_HEIGHT


def foot_rule(stock: Stock) -> int:
    """The height of the foot rule on a front."""
    more = len(caution_lines(stock)) - 1 + narrow(stock)
    return stock.leaf[1] - FOOT_RULE - more * FOOT_LINE


def narrow(stock: Stock) -> bool:
    """Whether registration and issue have a line of their own in the foot: beside other words they would be cut."""
    return frame_width(stock) < NARROW


@lru_cache(maxsize=64)
def caution_lines(stock: Stock) -> tuple[str, ...]:
    """The foot's line of caution, on as many lines as a narrow leaf needs."""
    lines = broken(plain_words(CAUTION, Font.REGULAR), room_of(frame_width(stock), CAUTION_SIZE))
    return tuple(" ".join(word.text for word in line) for line in lines)


def band_width(stock: Stock) -> int:
    """From the leaf's edge inwards, or from where it is cut back; wider where a printer does not reach that edge."""
    return BAND + max(0, lost_at_outer_edge(stock) - stock.recess)


def frame_width(stock: Stock) -> int:
    """Of the text column: what binding and outer margin leave of the leaf."""
    outer = OUTER_MARGIN + max(stock.recess, lost_at_outer_edge(stock))
    return stock.leaf[0] - outer - (binding_margin(stock) if stock.bound_at == "left" else OUTER_MARGIN)
