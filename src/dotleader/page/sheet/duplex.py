"""About which edge of the paper a sheet is turned to print its back.

The two are IPP's `two-sided-long-edge` and `two-sided-short-edge`. A sheet stands upright, its origin at the upper left
of either side. Turned about the long edge, what is at (x, y) on the front lies behind (W - x, y) on the back; about the
short edge, behind (x, H - y). One back is the other one turned by 180 degrees.
"""

from __future__ import annotations

from typing import Literal

Turning = Literal["long-edge", "short-edge"]

TURNINGS: tuple[Turning, ...] = ("long-edge", "short-edge")


def edge_said(turning: Turning) -> str:
    """`long edge`, as print dialogues have it."""
    return turning.replace("-", " ")
