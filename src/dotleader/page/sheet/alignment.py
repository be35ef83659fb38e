"""How a printer's back lands on its front, and what rights it. Whole micrometres and parts per million.

Everything is told as it is seen from the front of the sheet, through the paper: there a back moved to the right is
to the right of where it should be, however the sheet was turned. The middle of the paper is what a back stretches
about. How far a back may be out: a copier's service standard has 1 mm either way (magnification 1 mm), home
printers are said to have 1 to 2 mm; five times that is no shift but a fault.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from dotleader.page.sheet.duplex import Turning
from dotleader.source.record import record

MOST_MOVED = 5_000
MOST_STRETCHED = 10_000
MUCH_MOVED = 1_000
"""Beyond this, marks that stand at the printable margin may be drawn outside of it."""

_MILLION = 1_000_000


@record
class Moved:
    """Where a back lands: moved by micrometres, stretched by parts per million across and along the paper."""

    right: int = 0
    down: int = 0
    wider: int = 0
    longer: int = 0


class Righting(NamedTuple):
    """What is done to a page: x and y times a factor, then a shift in micrometres, y down from the upper edge."""

    across: float
    along: float
    right: float
    down: float


def further(before: Moved, rest: Moved) -> Moved:
    """Both together: `rest` is what was still read when `before` had been righted."""
    across, along = _factor(rest.wider), _factor(rest.longer)
    return Moved(
        round(before.right * across) + rest.right,
        round(before.down * along) + rest.down,
        millionths(_factor(before.wider) * across - 1),
        millionths(_factor(before.longer) * along - 1),
    )


def righting(moved: Moved, paper: tuple[int, int], turning: Turning = "long-edge") -> Righting:
    """What a back is to be drawn with, so that a printer that moves it so puts it where it belongs.

    The back is upright. Turned about the long edge, its right is the front's left; about the short edge, its lower
    edge is the front's upper one. `moved` is taken to be the same for both: the paper goes the same way, and the
    printer's program turns the picture (common practice, no source).
    """
    mirrored = 1 if turning == "long-edge" else -1
    across, along = 1 / _factor(moved.wider), 1 / _factor(moved.longer)
    middle_x, middle_y = paper[0] / 2, paper[1] / 2
    return Righting(
        across,
        along,
        middle_x * (1 - across) + mirrored * moved.right * across,
        middle_y * (1 - along) - mirrored * moved.down * along,
    )


def beyond(moved: Moved) -> Iterator[str]:
    """What of it is more than is righted, a sentence each."""
    if max(abs(moved.right), abs(moved.down)) > MOST_MOVED:
        yield f"The back is moved {said_moved(moved)}, and more than 5 mm is not righted."
    if max(abs(moved.wider), abs(moved.longer)) > MOST_STRETCHED:
        yield f"The back is {said_stretched(moved)}, and more than 1 % is not righted."


def said(moved: Moved) -> str:
    """All of it in words; a stretch only where there is one."""
    return ", ".join(part for part in (said_moved(moved), said_stretched(moved)) if part)


def said_moved(moved: Moved) -> str:
    """`0.8 mm right, 0.3 mm down`."""
    return f"{_side(moved.right, 1_000, 'mm right', 'mm left')}, {_side(moved.down, 1_000, 'mm down', 'mm up')}"


def said_stretched(moved: Moved) -> str:
    """`0.12 % wider, 0.05 % shorter`, or nothing."""
    parts = []
    if moved.wider:
        parts.append(_side(moved.wider, 10_000, "% wider", "% narrower"))
    if moved.longer:
        parts.append(_side(moved.longer, 10_000, "% longer", "% shorter"))
    return ", ".join(parts)


def _side(value: int, unit: int, more: str, less: str) -> str:
    whole, rest = divmod(abs(value), unit)
    digits = f"{whole}.{rest:0{len(str(unit)) - 1}d}".rstrip("0").rstrip(".")
    return f"{digits} {less if value < 0 else more}"


def millionths(part: float) -> int:
    """A part of one in millionths, whole tens of them: a thousandth of a per cent is 3 micrometres of a long side."""
    return round(part * _MILLION / 10) * 10


def _factor(millionths: int) -> float:
    return 1 + millionths / _MILLION
