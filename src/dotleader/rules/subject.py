"""What rules are asked with: the handbook, and for some of them its cards as laid out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from dotleader.handbook.model import Handbook

if TYPE_CHECKING:  # laying out is paid for only where it is asked for
    from dotleader.page.laid import LaidCard


@dataclass(frozen=True, slots=True)
class Subject:
    """`laid` lays out the checklists that may not stay on one face; None where the stock is none to stand on."""

    handbook: Handbook
    laid: Callable[[], Sequence[LaidCard]] | None = None
