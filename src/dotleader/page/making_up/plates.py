"""What stands around every page of the making-up sheet, and the paper that it is printed on."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.sizes import INCH, SIZES
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Drawn, Font, Line, Text, mm, pt
from dotleader.page.extents import Rect
from dotleader.page.frames import CAUTION
from dotleader.page.tabs import tab, tab_width
from dotleader.page.type.metrics import shown, width
from dotleader.source.record import record

NAME = "MAKING-UP SHEET"
MAKERS = "What the makers of printer, film, laminator, punch and cutter say goes before this sheet."

_MARGIN = mm(16)
_HEAD_RULE = mm(17)
_TAB_HEIGHT = mm(7.4)
_TAB_SIZE = 13_000
_BESIDE = mm(4)
_FOOT_RULE = mm(16.5)
_FOOT_LINE = mm(3.5)
_HEAD_SIZE, _FOOT_SIZE = 9_500, 8_000
_UNDER_HEAD, _ABOVE_FOOT = mm(5), mm(3)


@record
class Plate:
    """A page and the area on it that is free for its matter."""

    name: str
    width: int
    height: int
    area: Rect


def plate_for(stock: Stock) -> Plate:
    """A4 or Letter, upright: the one of them that goes with the paper of the leaves."""
    american = stock.paper_name in ("Letter", "Legal") or any(side * 2 % INCH == 0 for side in stock.paper)
    name = "Letter" if american else "A4"
    across, down = SIZES[name]
    area = Rect(_MARGIN, _HEAD_RULE + _UNDER_HEAD, across - _MARGIN, down - _FOOT_RULE - _ABOVE_FOOT)
    return Plate(name, across, down, area)


def surround(plate: Plate, title: str, registration: str, number: int, count: int) -> Iterator[Drawn]:
    """Head and foot of page `number` of `count`, in the manner of a face."""
    left, right = plate.area.left, plate.area.right
    yield Line(((left, _HEAD_RULE), (right, _HEAD_RULE)), pt(0.6))
    base = _HEAD_RULE - mm(2.6)
    yield Text(left, base, NAME, _HEAD_SIZE, Font.BOLD)
    place = f"{number} of {count}"
    tab_left = right - tab_width(place, _TAB_SIZE)
    beside = left + width(NAME, Font.BOLD, _HEAD_SIZE) + _BESIDE
    of = ", ".join(part for part in (registration, title) if part)
    yield Text(beside, base, _cut(shown(of, Font.REGULAR), tab_left - _BESIDE - beside), _HEAD_SIZE)
    yield from tab(tab_left, _HEAD_RULE - _TAB_HEIGHT, _TAB_HEIGHT, place, _TAB_SIZE)
    rule = plate.height - _FOOT_RULE
    yield Line(((left, rule), (right, rule)), pt(0.6))
    base = rule + _FOOT_LINE
    for line in (CAUTION, MAKERS):
        yield Text(left, base, line, _FOOT_SIZE)
        base += _FOOT_LINE


def _cut(text: str, room: int) -> str:
    if width(text, Font.REGULAR, _HEAD_SIZE) <= room:
        return text
    while text and width(f"{text}…", Font.REGULAR, _HEAD_SIZE) > room:
        text = text[:-1]
    return f"{text.rstrip()}…"
