"""What a stage or a rule has to say about a place in the source.

A finding names its rule and nothing of the layers above: severity, reason and source of a rule stand in the rule's
own module and are joined to the finding where it is shown (`RuleFacts`).
"""

from __future__ import annotations

from enum import IntEnum

from dotleader.source.record import record
from dotleader.source.text import Spot


class Severity(IntEnum):
    """Ordered by weight: an error keeps `print` from printing anything but a draft."""

    NOTE = 1
    WARNING = 2
    ERROR = 3

    @property
    def word(self) -> str:
        return self.name.lower()


@record
class Related:
    """A further place that a finding speaks of."""

    spot: Spot
    message: str


@record
class Edit:
    """`text` in the place of what stands at `spot`; a line feed in it is written as the file ends its lines."""

    spot: Spot
    text: str


@record
class Fix:
    """What mends a finding, all edits or none; they do not overlap.

    `safe` where it cannot change what is meant: spacing, the spelling of a declared name. Words, order, number and
    unit of an instruction are the pilot's.
    """

    edits: tuple[Edit, ...]
    safe: bool


def swapped(spot: Spot, text: str, *, safe: bool) -> Fix:
    """The fix that puts one text in the place of another."""
    return Fix((Edit(spot, text),), safe)


def without(spot: Spot, *, safe: bool) -> Fix:
    """The fix that takes something out: its whole line where nothing else stands there, else with the spaces before."""
    text = spot.source.text
    start, end = spot.start, spot.end
    while start and text[start - 1] in " \t\u00a0":
        start -= 1
    if (start == 0 or text[start - 1] == "\n") and text[end : end + 2].lstrip("\r")[:1] in ("", "\n"):
        end = text.find("\n", end) + 1 or len(text)
    return Fix((Edit(Spot(spot.source, start, end), ""),), safe)


@record(uncompared=("fix",))
class Finding:
    """`message` is one sentence about what is, with the user's own text in backquotes; `help` says what to do.

    `fix` is given where one exact text mends it.
    Of findings at one place those of a lower `rank` come first. What a handbook lacks has ranks above 0: it stands
    after what is wrong there, and in an order of its own, such as that of a flight.
    """

    rule: str
    spot: Spot
    message: str
    help: str
    related: tuple[Related, ...] = ()
    rank: int = 0
    fix: Fix | None = None

    @property
    def order(self) -> tuple[object, ...]:
        """The one total order in which findings are shown."""
        return (*self.spot.order, self.rank, self.rule, self.message)


@record
class RuleFacts:
    """What is known of a rule when a finding of it is shown."""

    name: str
    severity: Severity
    reason: str  # why it matters, one sentence
    source: str  # the published guidance, with its section, or "common practice, no source"
    what: str = ""  # what it finds, Markdown
    mend: str = ""  # how to mend it, Markdown
    family: str = ""
    confidence: str = "high"  # one of "high", "medium", "low"
    fix: str = ""  # "safe", "unsafe", or "" where no finding of it can have a fix
