"""The measures of a card's body: sizes in thousandths of a point, lengths in micrometres, with their reasons."""

from __future__ import annotations

from dotleader.page.drawn import Font, mm, pt
from dotleader.page.laid import Frame
from dotleader.page.type.breaking import length, room_of
from dotleader.page.type.metrics import SMALLEST_IN_FLIGHT, cap_height
from dotleader.source.record import record

# Sizes where 12 is the smallest; where it is larger, all are (`grown`).
TITLE = 20_000
TRIGGER = 13_000
NOTICE = 13_000
SMALL = SMALLEST_IN_FLIGHT

HEADING = 14_000
"""Of group headings (CAP 676, ch. 7: about 14 pt, 12 at least)."""

PROSE_STEPS_UP = (1_000, 0)
"""Points over the smallest size in which prose and tables are set."""

STEPS_UP = (3_000, 2_000, 1_000, 0)
"""The ladder: points over the smallest size, from 15 down to 12 where 12 is the smallest."""

PITCHES = (1600, 1550, 1500, 1450, 1400)
"""From one item's baseline to the next, in thousandths of the size; the wider is tried first."""

SLOT = 1250
"""Height of a line in thousandths of its size: a gap of a quarter of the size (CR-177605, section 6 no. 9: 25 to 33
per cent). Ascent and descent together are 1.24, so lines that stand in slots can never touch."""

OPENING = 400
"""How far a run is opened where its sense changes, and what stands apart is set apart, in thousandths of a pitch."""

RUN = 5
"""Items in a row before a run is opened (CR-177605, 3.7: a gap after every few lines; the number is our default)."""

BODY_GAP = mm(0.8)
"""Between what stands above the body and the body."""

GUTTER = mm(9)
NUMBER_GAP = mm(2.8)
LEVEL = mm(6)
LEVELS_SHARE = (30, 100)
"""The part of the width that the levels may take; deeper ones stand closer."""
DETAIL = mm(4)

DOT = mm(0.6)
DOT_PITCH = mm(2)
LEADER_GAP = mm(2.2)
SHORTEST_DOTS = 4
NARROW_DOTS = 2
LONGEST_LEADER = mm(40)
"""A wide gap makes the eye slip to the next line (CR-177605, 3.7; the number is our default)."""

CRITICAL = pt(1.6)

COLUMN_STEP = mm(4)
NARROW_STEP = mm(2)
NARROW = mm(90)
"""Where text is narrower than this, columns stand closer and leaders may be shorter: what they take is what breaks a
short challenge into two lines. On A6 that spares one line in twenty."""

COLUMN_FIRST = mm(38)
COLUMN_SHARE = (55, 100)
"""The rightmost column is at this part of the width: 62 of 114 mm."""
COLUMN_FAR_SHARE = (65, 100)
"""And at this one where it spares a challenge its second line and all responses are short: 74 of 114 mm."""
COLUMNS_JOIN = mm(16)

RAIL = pt(1.4)
RAIL_INDENT = mm(1.5)
RETURN = mm(2.2)
"""How far left of its rail the line of a repeated block goes back up."""
HEAD_LENGTH = mm(3)
HEAD_HALF = mm(1.15)
FOOT = mm(1)

MEMORY_RULE = pt(2.2)
MEMORY_PAD = mm(2.5)
"""Free of text inside the right edge of the box, and beside a box that stands inside a branch."""

HAIRLINE = pt(0.6)
COMPLETE_RULE = pt(1.2)

ITEM_GAP = 700
"""Over an item that prose explains, in thousandths of the size."""

TAB_GAP = mm(2.5)
ARROW = mm(8)
ARROW_GAP = mm(1.9)

CHOICE_HALF = mm(1.15)
CHOICE_RULE = pt(1.1)


@record
class Setting:
    """One trial of a card: what the frame and the card fix (`width`, `label`, `gutter`, `step`), and the type size.

    `label` and `tab` are width and height of the room for a label. `small` is the size of numbers, details and signs.
    """

    width: int
    label: int
    tab: int
    gutter: int
    step: int
    size: int
    small: int

    @property
    def notice(self) -> int:
        return min(grown(NOTICE, self.small), self.size)

    @property
    def heading(self) -> int:
        return min(grown(HEADING, self.small), self.size)

    def left(self, level: int) -> int:
        """Where the text of a level begins."""
        return self.gutter + level * self.step

    def rail(self, level: int) -> int:
        """Where the rule stands that leads down from a condition at that level."""
        return self.left(level) + RAIL_INDENT * self.step // LEVEL

    def choice(self, left: int) -> int:
        """Where the mark of an alternative is centred whose text begins at `left`."""
        return left - 3 * self.step // 5

    def room(self, left: int, right: int, size: int) -> int:
        return room_of(right - left, size)


def grown(size: int, small: int) -> int:
    """A size of its own, where the smallest is `small` and not 12: as many points over it."""
    return size + small - SMALL


def smallest_in(frame: Frame) -> int:
    """The smallest size that is used in a frame."""
    return max(SMALL, frame.smallest)


def ladder(frame: Frame) -> tuple[int, ...]:
    """The sizes to try, largest first."""
    return tuple(smallest_in(frame) + up for up in STEPS_UP)


def prose_sizes(frame: Frame) -> tuple[int, ...]:
    """The sizes of prose and tables, largest first."""
    return tuple(smallest_in(frame) + up for up in PROSE_STEPS_UP)


def prose_setting(frame: Frame, size: int) -> Setting:
    """One size, and no gutter."""
    return Setting(frame.width, frame.label_width, frame.label_height, 0, LEVEL, size, size)


def slot(size: int) -> int:
    return length(SLOT, size)


def base_in_slot(size: int) -> int:
    """The baseline in a slot from its top, so that capitals stand in its middle."""
    return (slot(size) + cap_height(Font.REGULAR, size)) // 2


def air(size: int, pitch: int) -> int:
    """What a pitch leaves between two slots."""
    return length(pitch - SLOT, size)
