"""The punch on the desk. Data only; lengths in whole micrometres."""

from __future__ import annotations

from typing import Literal, TypeAlias

from dotleader.source.record import record
from dotleader.source.text import Spot

Stop: TypeAlias = Literal["scale", "plain", "none"]
"""What the end of a leaf is laid against: a stop with a scale in millimetres, one without, or nothing at all."""


@record
class Punch:
    """Seen by somebody who pushes a leaf into it, away from himself.

    `holes` are the centres from left to right, counted from the leftmost, which is 0. `depth` is the least and the
    greatest distance of the centres from the leaf's edge; both are the same where it cannot be set. `from_middle`
    says where the scale counts from: the middle of the outer holes, or the hole nearest to the stop. `reach` is the
    least and the greatest setting of the stop, so counted; None where it is not known.
    """

    name: str
    holes: tuple[int, ...]
    diameter: int
    depth: tuple[int, int]
    stop: Stop
    stop_on_right: bool
    from_middle: bool
    reach: tuple[int, int] | None
    spot: Spot
