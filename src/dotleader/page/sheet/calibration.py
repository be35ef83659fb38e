"""The calibration sheet: how far a printer's back is out of register, read by eye to a twentieth of a millimetre.

Two arms cross in the middle of the paper. On each half of an arm stands a scale of lines, every 2 mm on the front and
every 1.9 mm on the back, so that the n-th lines make one line where the back is out by n tenths of a millimetre: a
vernier whose figure is the reading. The scales stand on the middle lines of the paper, because there a back that is
printed askew moves nothing along them. In the middle, a cross on the back tells whole millimetres against the front.
Where a pin is pushed through a ring of the front, the back has a scale to read the hole on.
"""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.measures import PRINTABLE_MARGIN
from dotleader.page.drawn import Box, Drawn, Font, Group, Ink, Line, Text, mm
from dotleader.page.sheet import calibration_words
from dotleader.page.sheet.alignment import Moved, millionths
from dotleader.page.sheet.duplex import Turning, behind
from dotleader.page.type.metrics import cap_height, width
from dotleader.source.record import record

FRONT_STEP = mm(2)
BACK_STEP = mm(1.9)
_TENTH = FRONT_STEP - BACK_STEP

MOST_LINES = 20
"""To each side of zero, where the paper has room for them: 2.0 mm."""

_PIN = mm(15)
"""From an arm to where a pin goes through, on the side of the back's lines."""

_PIN_SCALE = 5
_PIN_RING = mm(1.5)
_STROKE = mm(0.13)
_FINE = mm(0.09)
_THICK = mm(0.3)
_LINE, _FIFTH, _ZERO = mm(6), mm(7.5), mm(9)
_OVERLAP = mm(2)
"""How far the lines of the back reach over the arm, so that they meet the front's however they are moved across."""

_WEDGE = (mm(0.5), mm(2.6), mm(0.9))
_MIDDLE = mm(13)
"""Half of what the middle of the cross takes."""

_END = mm(3)
_FIGURES = 7_000
_LETTER = 20_000
_COARSE = 8
_CROSS = mm(10)


@record
class Arm:
    """Half an arm: its letter, where its zero is on the front, whether it runs down the paper or across it, and how
    many lines it has to each side of zero."""

    letter: str
    x: int
    y: int
    down: bool
    lines: int


@record
class _Axes:
    """From along and across a scale, as seen from the front, to a page. Across is below a scale or right of it."""

    down: bool
    turned: Turning | None
    """About which edge the sheet is turned to this page; None on the front."""

    def point(self, along: int, across: int) -> tuple[int, int]:
        seen = (across, along) if self.down else (along, across)
        return behind(seen, (0, 0), self.turned) if self.turned else seen

    def line(self, along: int, start: int, end: int, stroke: int) -> Line:
        return Line((self.point(along, start), self.point(along, end)), stroke)

    def figure(self, along: int, across: int, string: str, size: int = _FIGURES, font: Font = Font.REGULAR) -> Text:
        """Beside the scale, centred on a place of it and off the arm by `across`."""
        x, y = self.point(along, across)
        wide, high = width(string, font, size), cap_height(font, size)
        if self.down:
            return Text(x - wide if x < 0 else x, y + high // 2, string, size, font)
        return Text(x - wide // 2, y if y < 0 else y + high, string, size, font)


def arms(paper: tuple[int, int]) -> tuple[Arm, Arm, Arm, Arm]:
    """A and B are on the left and on the right, C and D above and below."""
    x, y = paper[0] // 2, paper[1] // 2
    (across, few), (along, many) = _reach(paper[0]), _reach(paper[1])
    return (
        Arm("A", x - across, y, False, few),
        Arm("B", x + across, y, False, few),
        Arm("C", x, y - along, True, many),
        Arm("D", x, y + along, True, many),
    )


def apart(paper: tuple[int, int]) -> tuple[int, int]:
    """How far from each other the zeros of A and B are, and those of C and D."""
    return 2 * _reach(paper[0])[0], 2 * _reach(paper[1])[0]


def measured(right: tuple[int, int], down: tuple[int, int], paper: tuple[int, int]) -> Moved:
    """What scales A and B, and C and D, say together; readings in micrometres."""
    moved_right, wider = _settled(*right, _reach(paper[0])[0])
    moved_down, longer = _settled(*down, _reach(paper[1])[0])
    return Moved(moved_right, moved_down, wider, longer)


def _settled(first: int, second: int, reach: int) -> tuple[int, int]:
    """Shift in the middle, in whole hundredths of a millimetre, and stretch.

    A reading is exact where its line stands, which need not be where the scale has its zero.
    """
    start, end = -reach + first * BACK_STEP // _TENTH, reach + second * BACK_STEP // _TENTH
    stretch = (second - first) / (end - start)
    return round((first - stretch * start) / 10) * 10, millionths(stretch)


def _reach(length: int) -> tuple[int, int]:
    """How far from the middle of the paper a scale has its zero, and its lines to each side of that."""
    last = length // 2 - PRINTABLE_MARGIN - _END
    lines = min(MOST_LINES, (last - _MIDDLE) // (2 * FRONT_STEP))
    return (last - lines * FRONT_STEP) // mm(1) * mm(1), lines


def calibration(
    paper: tuple[int, int], name: str, corrected: str = "", turning: Turning = "long-edge"
) -> tuple[tuple[Drawn, ...], tuple[Drawn, ...]]:
    """Front and back on a paper of that name; `corrected` says for which printer the back is righted, '' for none.

    About whichever edge the sheet is turned, its lines meet alike, seen from the front; its back is upright.
    """
    middle = paper[0] // 2, paper[1] // 2
    least = min(arm.lines for arm in arms(paper))
    front = (
        *(Group(arm.x, arm.y, tuple(_front_scale(arm)), role="scale") for arm in arms(paper)),
        Group(*middle, tuple(_millimetres()), role="middle"),
        *calibration_words.front(paper, name, apart(paper), least, turning),
    )
    back = (
        *(
            Group(*behind((arm.x, arm.y), paper, turning), tuple(_back_scale(arm, turning)), role="scale")
            for arm in arms(paper)
        ),
        Group(*middle, (Line(((-_CROSS, 0), (_CROSS, 0)), _THICK), Line(((0, -_CROSS), (0, _CROSS)), _THICK))),
        *calibration_words.back(paper, corrected, turning),
    )
    return front, back


def _front_scale(arm: Arm) -> Iterator[Drawn]:
    """Lines down to the arm, figures at every fifth, the letter, and the ring for a pin."""
    axes = _Axes(arm.down, None)
    for n in range(-arm.lines, arm.lines + 1):
        yield axes.line(n * FRONT_STEP, -_length(n), 0, _STROKE)
        if n % 5 == 0:
            yield axes.figure(n * FRONT_STEP, -_length(n) - mm(1), signed(n))
    off = _ZERO + mm(9 if arm.down else 6)
    yield axes.figure(0, -off, arm.letter, _LETTER, Font.BOLD)
    x, y = axes.point(0, _PIN)
    yield Box(x - _PIN_RING, y - _PIN_RING, 2 * _PIN_RING, 2 * _PIN_RING, stroke=_STROKE, radius=_PIN_RING)
    for along in ((1, 0), (0, 1)):
        arm_x, arm_y = along[0] * mm(0.8), along[1] * mm(0.8)
        yield Line(((x - arm_x, y - arm_y), (x + arm_x, y + arm_y)), _FINE)


def _back_scale(arm: Arm, turning: Turning) -> Iterator[Drawn]:
    """Lines from the arm, a wedge that points at zero, and the scale for a pin."""
    axes = _Axes(arm.down, turning)
    for n in range(-arm.lines, arm.lines + 1):
        yield axes.line(n * BACK_STEP, -_OVERLAP, _length(n), _STROKE)
    tip, end, half = _WEDGE
    corners = ((0, _ZERO + tip), (-half, _ZERO + end), (half, _ZERO + end))
    yield Line(tuple(axes.point(*corner) for corner in corners), 0, closed=True, fill=Ink.BLACK)
    for half_millimetres in range(-2 * _PIN_SCALE, 2 * _PIN_SCALE + 1):
        along = -half_millimetres * mm(0.5)  # a back that has moved to the right has its hole on the left of zero
        long = mm(2.8) if half_millimetres % 10 == 0 else mm(1.8) if half_millimetres % 2 == 0 else mm(1)
        yield axes.line(along, _PIN, _PIN + long, _FINE)
        if half_millimetres % 10 == 0:
            yield axes.figure(along, _PIN + mm(3.6), signed(5 * half_millimetres))
    yield axes.figure(-mm(_PIN_SCALE + 4), _PIN + mm(0.4), arm.letter, 9_000, Font.BOLD)
    ends = (-mm(_PIN_SCALE), mm(_PIN_SCALE))
    yield Line(tuple(axes.point(along, _PIN) for along in ends), _FINE)


def _millimetres() -> Iterator[Drawn]:
    """In the middle of the front: millimetres to the right and down."""
    for down in (False, True):
        axes = _Axes(down, None)
        yield Line((axes.point(-mm(_COARSE), 0), axes.point(mm(_COARSE), 0)), _FINE)
        for at in range(-_COARSE, _COARSE + 1):
            half = mm(1.5) if at % 5 == 0 else mm(0.8)
            yield axes.line(mm(at), -half, half, _FINE)
            if at and at % 5 == 0:
                yield axes.figure(mm(at), mm(2.2), signed(10 * at))


def _length(n: int) -> int:
    return _ZERO if n == 0 else _FIFTH if n % 5 == 0 else _LINE


def signed(tenths: int) -> str:
    """Tenths of a millimetre as a scale shows them: `-1.5` with a real minus, `0.5`, `2`, `0`."""
    whole, rest = divmod(abs(tenths), 10)
    return f"{'−' if tenths < 0 else ''}{whole}{f'.{rest}' if rest else ''}"
