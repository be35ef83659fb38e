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
class Finding:
    """`message` is one sentence about what is, with the user's own text in backquotes; `help` says what to do.

    Of findings at one place those of a lower `rank` come first. What a handbook lacks has ranks above 0: it stands
    after what is wrong there, and in an order of its own, such as that of a flight.
    """

    rule: str
    spot: Spot
    message: str
    help: str
    related: tuple[Related, ...] = ()
    rank: int = 0

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
