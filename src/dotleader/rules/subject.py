"""What rules are asked with: the handbook, and for some of them its cards as laid out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from dotleader.cockpit.running import run
from dotleader.handbook.model import Handbook
from dotleader.source.record import record

if TYPE_CHECKING:  # laying out is paid for only where it is asked for
    from dotleader.cockpit.timeline import Run
    from dotleader.page.laid import LaidCard


@record
class Subject:
    """`continued` lays out the checklists that do not stay on one face; None where the stock is none to stand on.

    `run` works the cards through, once for all rules that ask.
    """

    handbook: Handbook
    run: Callable[[], Run]
    continued: Callable[[], Sequence[LaidCard]] | None = None


def subject_of(handbook: Handbook, continued: Callable[[], Sequence[LaidCard]] | None = None) -> Subject:
    """What rules are asked with; the cards are worked through when the first rule wants it."""
    done: list[Run] = []

    def once() -> Run:
        if not done:
            done.append(run(handbook))
        return done[0]

    return Subject(handbook, once, continued)
