"""What rules are asked with: the handbook, and for some of them its cards as laid out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from dotleader.handbook.model import Handbook
from dotleader.source.record import record

if TYPE_CHECKING:  # laying out is paid for only where it is asked for
    from dotleader.page.laid import LaidCard


@record
class Subject:
    """`continued` lays out the checklists that do not stay on one face; None where the stock is none to stand on."""

    handbook: Handbook
    continued: Callable[[], Sequence[LaidCard]] | None = None
