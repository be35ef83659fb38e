"""A card as a flat list of parts, before any size is chosen: what is printed, at which level, held to what.

Data only; `outlining` makes it.
"""

from __future__ import annotations

from enum import Enum, IntEnum
from typing import TypeAlias

from dotleader.page.type.words import Words
from dotleader.source.record import record


class Hold(IntEnum):
    """What it costs to turn the page before a part. Each level of a branch adds `LEVEL`; from `KEEP` on it is wrong."""

    GROUP = 0
    BRANCH = 1
    OPENED = 2
    STEP = 3
    LEVEL = 10
    KEEP = 1000
    MEMORY = 2000


@record
class ItemLine:
    """`number` is empty for an alternative, which has a mark of choice instead. `block` shares a response column."""

    number: str
    choice: bool
    fitted: Words
    challenge: Words
    response: Words
    details: tuple[Words, ...]
    critical: bool
    opened: bool
    block: int


@record
class Heading:
    words: Words
    choice: bool


@record
class Condition:
    words: Words
    number: str = ""
    choice: bool = False


@record
class NoticeLine:
    word: str
    words: Words


@record
class Leave:
    """A go-to; `inside` a branch, its arrow starts at the rail."""

    words: Words
    target: str
    inside: bool
    choice: bool


@record
class Gate:
    condition: Words
    words: Words
    target: str


@record
class Sign:
    """END, or where a repeated block turns back."""

    words: Words


@record
class Completion:
    words: Words


class MemoryEdge(Enum):
    TOP = "top"
    FOOT = "foot"


What: TypeAlias = ItemLine | Heading | Condition | NoticeLine | Leave | Gate | Sign | Completion | MemoryEdge


@record
class Part:
    """`says` is the part as lines of the meaning: indented by what it belongs to, leaders as they are typed.

    `boxed` parts stand in the box of the memory items.
    """

    what: What
    level: int
    hold: int
    boxed: bool
    says: tuple[str, ...]


class Ending(Enum):
    """How a reader sees a branch end: it rejoins, ends, leaves, turns back, or has ended in branches of its own."""

    OPEN = "open"
    END = "end"
    LEAVE = "leave"
    BACK = "back"
    CLOSED = "closed"


@record
class Rail:
    """The rule from the condition `head` down to the part `last`; `words` is the condition."""

    head: int
    last: int
    level: int
    ending: Ending
    words: Words


@record
class MemoryBox:
    first: int
    last: int
    level: int


@record
class Outline:
    """`numbers` is the last number; `depth` the deepest level."""

    parts: tuple[Part, ...]
    rails: tuple[Rail, ...]
    boxes: tuple[MemoryBox, ...]
    numbers: int
    depth: int


NO_OUTLINE = Outline((), (), (), 0, 0)
"""Of what is no card."""
