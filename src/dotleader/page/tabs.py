"""The black tab with a face's label: in the head of its own face, and after every go-to that leads there."""

from __future__ import annotations

from dotleader.page.drawn import Box, Drawn, Font, Ink, Text, mm, pt
from dotleader.page.type.metrics import cap_height, width

HEAD_SIZE = 16_000
GOTO_SIZE = 14_000
GOTO_HEIGHT = mm(6.2)
"""Where the smallest type is 12; where it is larger, tabs are (`Frame`)."""

PAD = mm(2.2)
FRAME_RULE = pt(0.6)


def tab_width(label: str, size: int) -> int:
    return width(label, Font.BOLD, size) + 2 * PAD


NOT_HERE = ("not in", "this book")
"""Stands in the place of the label where a go-to leads to a card that is not in the book; only a draft can have it."""


def not_here(x: int, y: int, height: int) -> tuple[Drawn, ...]:
    """A tab without a label: framed, no black one that could be looked for."""
    size = height * 72_000 // 25_400 * 2 // 5
    long = max(width(line, Font.BOLD, size) for line in NOT_HERE)
    high = cap_height(Font.BOLD, size)
    middle, apart = y + height // 2, high // 3
    return (
        Box(x, y, long + 2 * PAD, height, stroke=FRAME_RULE),
        Text(x + PAD, middle - apart, NOT_HERE[0], size, Font.BOLD),
        Text(x + PAD, middle + apart + high, NOT_HERE[1], size, Font.BOLD),
    )


def tab(x: int, y: int, height: int, label: str, size: int) -> tuple[Drawn, ...]:
    """A tab from its upper left corner, the label in its middle by its capitals."""
    base = y + (height + cap_height(Font.BOLD, size)) // 2
    return (
        Box(x, y, tab_width(label, size), height, fill=Ink.BLACK),
        Text(x + PAD, base, label, size, Font.BOLD, Ink.WHITE),
    )
