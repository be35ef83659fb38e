"""What the calibration sheet says: between the arms of its cross, in the largest type that finds room there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.drawn import Box, Drawn, Font, Group, Text, mm
from dotleader.page.extents import Rect
from dotleader.page.sheet.duplex import Turning, behind, edge_said
from dotleader.page.type.breaking import broken, length, room_of, set_line
from dotleader.page.type.metrics import cap_height, shown
from dotleader.page.type.words import plain_words

_SIZES = range(11_000, 5_500, -500)
_EDGE = mm(12)
_ABOVE, _BELOW = mm(24), mm(26)
_LEFT_OF, _RIGHT_OF = mm(26), mm(26)
_SLOT, _SLOT_HEIGHT, _SLOT_GAP = mm(16), mm(8), mm(2.5)
_OPTION = 4_600  # what `--right` takes, in thousandths of the em
_FRAME = mm(0.2)

_LEADING = 1_300  # thousandths of the size
_TITLE = 1_400


def front(paper: tuple[int, int], name: str, apart: tuple[int, int], lines: int, turning: Turning) -> Iterator[Drawn]:
    """Three of the four corners; behind the fourth stand the words of the back."""
    upper_left, upper_right, lower_left, _ = _corners(paper)
    most = f"{lines / 10:.1f} mm"
    first = (
        f"Print both sides of this sheet at 100 % (actual size) on {name}, turned on the {edge_said(turning)}: on "
        "plain paper, from the tray that the cards will come from.",
        f"The zeros of A and B are {apart[0] // 1000} mm apart, those of C and D {apart[1] // 1000} mm. If a ruler "
        "finds more or less, the printer changes the size: mend that first.",
    )
    second = (
        "Hold this side towards you and a bright window or a lamp behind it. The lines of the other side shine "
        "through.",
        "On each scale find the line that goes straight on in a line of the other side. The figure there is the "
        "reading, in millimetres. From line to line it is 0.1 mm; to the left and upwards it has a minus. Where two "
        "lines are equally good, take the middle: 0.25.",
        "Two places on one scale may look good. The right one agrees with the line that has a wedge: that is as far "
        "from 0 as the reading says, and from line to line of this side it is 2 mm.",
        "If no light comes through, the other side says how it is done with a pin.",
    )
    third = (
        "Write the readings down, and type this with a name for the printer:",
        "dotleader printer set NAME",
    )
    last = (
        f"If the thick cross in the middle is out by more than {most}, type only by how much (--right and --down, a "
        "number each), print this sheet again with --printer NAME, and type the new readings with --further.",
    )
    for size in _SIZES:
        one = _set(upper_left, "Calibration sheet", first, size)
        two = _set(upper_right, "To read it", second, size)
        three = list(_readings(lower_left, third, last, _options(name, turning), size))
        if all(_fits(items, area) for items, area in ((one, upper_left), (two, upper_right), (three, lower_left))):
            break
    yield Group(0, 0, (*one, *two, *three), role="words")


def _options(name: str, turning: Turning) -> str:
    """What is typed beside the readings."""
    return f"--paper {name}" + (f" --turn {turning}" if turning != "long-edge" else "")


def back(paper: tuple[int, int], corrected: str, turning: Turning) -> Iterator[Drawn]:
    """The fourth corner, as it lies behind."""
    *_, free = _corners(paper)
    ends = behind((free.left, free.top), paper, turning), behind((free.right, free.bottom), paper, turning)
    (left, right), (top, bottom) = (sorted(both) for both in zip(*ends, strict=True))
    area = Rect(left, top, right, bottom)
    status = (
        f"This side is corrected for {shown(corrected, Font.REGULAR)}: every scale should read 0. What it still reads "
        "is typed with --further."
        if corrected
        else "This side is printed without a correction."
    )
    texts = (
        status,
        "It is read from the other side, against the light.",
        "With a pin: lay the sheet on something soft, the other side up. Push a pin upright through the middle of each "
        "of the four rings. On this side the holes are on four small scales of half millimetres, or beside them. The "
        "figure where the hole is, is the reading.",
    )
    for size in _SIZES:
        items = _set(area, "Calibration sheet, back", texts, size)
        if _fits(items, area):
            break
    yield Group(0, 0, tuple(items), role="words")


def _corners(paper: tuple[int, int]) -> tuple[Rect, Rect, Rect, Rect]:
    x, y = paper[0] // 2, paper[1] // 2
    left, right = (_EDGE, x - _LEFT_OF), (x + _RIGHT_OF, paper[0] - _EDGE)
    upper, lower = (_EDGE, y - _ABOVE), (y + _BELOW, paper[1] - _EDGE)
    return tuple(Rect(a, c, b, d) for c, d in (upper, lower) for a, b in (left, right))  # type: ignore[return-value]  # four


def _set(area: Rect, title: str, texts: Sequence[str], size: int) -> list[Drawn]:
    items: list[Drawn] = []
    base = _paragraph(items, area, area.top, title, size * _TITLE // 1000, Font.BOLD)
    for text in texts:
        base = _paragraph(items, area, base, text, size)
    return items


def _paragraph(items: list[Drawn], area: Rect, top: int, text: str, size: int, font: Font = Font.REGULAR) -> int:
    """Lines of text from `top` down; where the next paragraph begins."""
    step = length(_LEADING, size)
    base = top + cap_height(font, size)
    for line in broken(plain_words(text, font), room_of(area.right - area.left, size)):
        items.extend(set_line(line, area.left, base, size))
        base += step
    return base - cap_height(font, size) + step // 2


def _readings(area: Rect, before: Sequence[str], after: Sequence[str], options: str, size: int) -> Iterator[Drawn]:
    """The command, with a field to write each reading into."""
    items = _set(area, "To store it", before, size)
    top = _bottom(items) + mm(2)
    first = area.left + length(_OPTION, size)
    slot = min(_SLOT, (area.right - first - _SLOT_GAP) // 2)
    for option, letters in (("--right", "AB"), ("--down", "CD")):
        base = top + (_SLOT_HEIGHT + cap_height(Font.REGULAR, size)) // 2
        items.append(Text(area.left, base, option, size))
        x = first
        for letter in letters:
            items.append(Box(x, top, slot, _SLOT_HEIGHT, stroke=_FRAME, radius=mm(1)))
            items.append(Text(x + mm(1), top + mm(1) + cap_height(Font.BOLD, 7_000), letter, 7_000, Font.BOLD))
            x += slot + _SLOT_GAP
        top += _SLOT_HEIGHT + mm(2)
    top = _paragraph(items, area, top + mm(1), options, size)
    for text in after:
        top = _paragraph(items, area, top, text, size)
    yield from items


def _bottom(items: Sequence[Drawn]) -> int:
    return max(item.y for item in items if isinstance(item, Text))


def _fits(items: Sequence[Drawn], area: Rect) -> bool:
    return _bottom(items) <= area.bottom
