"""The black tab with a face's label: in the head of its own face, and after every go-to that leads there."""

from __future__ import annotations

from dotleader.page.drawn import Box, Drawn, Font, Ink, Text, mm
from dotleader.page.type.metrics import cap_height, width

HEAD_SIZE = 16_000
GOTO_SIZE = 14_000
PAD = mm(2.2)


def tab_width(label: str, size: int) -> int:
    return width(label, Font.BOLD, size) + 2 * PAD


def tab(x: int, y: int, height: int, label: str, size: int) -> tuple[Drawn, ...]:
    """A tab from its upper left corner, the label in its middle by its capitals."""
    base = y + (height + cap_height(Font.BOLD, size)) // 2
    return (
        Box(x, y, tab_width(label, size), height, fill=Ink.BLACK),
        Text(x + PAD, base, label, size, Font.BOLD, Ink.WHITE),
    )
