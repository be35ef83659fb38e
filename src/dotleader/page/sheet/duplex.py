"""About which edge of the paper a sheet is turned to print its back.

The two are IPP's `two-sided-long-edge` and `two-sided-short-edge`. A sheet stands upright, its origin at the upper left
of either side. Turned about the long edge, what is at (x, y) on the front lies behind (W - x, y) on the back; about the
short edge, behind (x, H - y). One back is the other one turned by 180 degrees.
"""

from __future__ import annotations

from typing import Literal, assert_never

Turning = Literal["long-edge", "short-edge"]

TURNINGS: tuple[Turning, ...] = ("long-edge", "short-edge")


def behind(point: tuple[int, int], paper: tuple[int, int], turning: Turning) -> tuple[int, int]:
    """Where on the back's page lies what is at a point of the front, and the other way round."""
    x, y = point
    match turning:
        case "long-edge":
            return paper[0] - x, y
        case "short-edge":
            return x, paper[1] - y
        case _:
            assert_never(turning)


def edge_said(turning: Turning) -> str:
    """`long edge`, as print dialogues have it."""
    return turning.replace("-", " ")
