"""Findings that somebody has decided about."""

from __future__ import annotations

from enum import IntEnum

from dotleader.source.finding import Finding
from dotleader.source.record import record


class Held(IntEnum):
    """What keeps a finding from being shown."""

    COMMENT = 1
    RULES = 2
    BASELINE = 3

    @property
    def word(self) -> str:
        return ("comment", "rules block", "baseline")[self - 1]


@record
class Suppressed:
    """A finding that somebody has decided about; `reason` in their own words, "" where they gave none."""

    finding: Finding
    by: Held
    reason: str
