"""Labels of faces and the sections that they count in."""

from __future__ import annotations

from dotleader.handbook.sections import SECTIONS as SECTIONS  # noqa: PLC0414  # who knows labels knows their sections
from dotleader.source.record import record

_ORDER = {section: place for place, section in enumerate(SECTIONS)}


@record
class Label:
    """Section and serial, ``3-12``; `point` counts the leaves put in after a release, ``3-12.1``, 0 is none."""

    section: str
    serial: int
    point: int = 0

    def __str__(self) -> str:
        return f"{self.section}-{self.serial}" + (f".{self.point}" if self.point else "")

    @property
    def order(self) -> tuple[int, int, int]:
        """Labels sort by section, serial, point, each counted: 3-12, 3-12.1, 3-12.10, 3-13."""
        return _ORDER[self.section], self.serial, self.point


WIDEST = Label("3A", 88, 8)
"""As wide as any label: what room is kept for after a go-to."""


def section_order(section: str) -> int:
    return _ORDER[section]
