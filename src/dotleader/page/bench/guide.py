"""A paper guide for a punch whose stop has no scale, or that has no stop: a strip with circles where the holes come."""

from __future__ import annotations

from dotleader.page.bench.nearest import depth_for
from dotleader.page.bench.plan import Plan
from dotleader.page.bench.settings import pins
from dotleader.page.drawn import mm
from dotleader.source.record import record

TAIL = mm(10)
"""From the centre of the last circle to the far end of the strip."""

LEAST = mm(80)
"""A shorter strip is hard to hold, and its words find no room."""

BELOW = mm(12)
"""From the centres of the circles to the long edge that is not pushed home."""


@record
class Guide:
    """One end of it stands for the leaf's end; `centres` are counted from there and ascend.

    `inset` is how far they are from the long edge that is pushed home. `stop` is the setting that it is for.
    """

    stop: int
    length: int
    height: int
    centres: tuple[int, ...]
    diameter: int
    inset: int


def guides(plan: Plan) -> tuple[Guide, ...]:
    """A guide for each setting of the stop, in the order of the plan; none where a scale makes them needless."""
    if plan.punch.stop == "scale":
        return ()
    depth = depth_for(plan.pattern, plan.punch)
    inset = plan.pattern.inset if depth is None else depth
    made = []
    for stop in dict.fromkeys(stroke.stop for stroke in plan.strokes):
        centres = tuple(at for at in (stop + pin for pin in pins(plan.punch)) if at >= plan.punch.diameter // 2)
        made.append(Guide(stop, max(LEAST, centres[-1] + TAIL), inset + BELOW, centres, plan.punch.diameter, inset))
    return tuple(made)


def guide_name(number: int) -> str:
    """`A` for the first, counted from 0."""
    return "ABCD"[number]
