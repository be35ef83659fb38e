"""A punch plan drawn to scale, one row for each stroke, as it looks to whoever pushes the leaf into the punch.

The edge that is bound is at the top, in the throat of the punch. Every row has the same scale and the same place for
the stop, so that one can be compared with the next.
"""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.fault import millimetres
from dotleader.page.bench.guide import Guide, guide_name
from dotleader.page.bench.plan import Plan, Stroke
from dotleader.page.bench.plan_words import end_name
from dotleader.page.bench.punching import struck
from dotleader.page.bench.settings import counted_from, middle, pins
from dotleader.page.drawn import Box, Drawn, Font, Group, Ink, Line, Text, mm, pt
from dotleader.page.type.metrics import ascent, cap_height
from dotleader.page.type.metrics import width as text_width
from dotleader.source.record import record

SCALES = (1, 2, 4, 5, 10, 20, 50)
_HAIR, _THIN, _LEAF, _END = pt(0.4), pt(0.6), pt(1.2), pt(2.4)
_TITLE, _SIZE = 9_000, 7_500
_TITLE_ROOM = mm(6)
_STOP = mm(3)
_BODY_ABOVE = mm(3)
_BODY_BESIDE = mm(14)  # of the punch, beyond its outer holes; to scale
_LEAF_BELOW = mm(16)  # of the leaf, below its holes; to scale
_NAMES_ROOM = mm(5)
_MEASURE_ROOM = mm(6.5)
_GAP = mm(4)
_TICK = mm(1)
_KEY_ROOM = mm(5)


def draw_plan(plan: Plan, width: int) -> Group:
    """The rows, `width` wide at most, at the largest scale of `SCALES` that fits; `drawn_height` is their height."""
    view = _view(plan, width)
    items: list[Drawn] = []
    made: tuple[int, ...] = ()
    for number, stroke in enumerate(plan.strokes):
        items.append(Group(0, number * _row_height(view), tuple(_row(view, number, stroke, made))))
        made += struck(plan.pattern, plan.punch, stroke)
    items += _key(view, len(plan.strokes) * _row_height(view))
    return Group(0, 0, tuple(items))


def drawn_height(plan: Plan, width: int) -> int:
    return len(plan.strokes) * _row_height(_view(plan, width)) + _KEY_ROOM


def plan_scale(plan: Plan, width: int) -> int:
    """How many times smaller than it is everything is drawn."""
    return _view(plan, width).scale


def draw_guide(guide: Guide, number: int, end_on_right: bool) -> Group:
    """A guide as large as it is; the end that stands for the leaf's is the one at the stop."""
    items: list[Drawn] = [Box(0, 0, guide.length, guide.height, stroke=_HAIR)]
    radius, arm = guide.diameter // 2, guide.diameter // 2 + mm(1.5)
    for at in guide.centres:
        x, y = guide.length - at if end_on_right else at, guide.inset
        items.append(Box(x - radius, y - radius, 2 * radius, 2 * radius, stroke=_HAIR, radius=radius))
        items += [Line(((x - arm, y), (x + arm, y)), _HAIR), Line(((x, y - arm), (x, y + arm)), _HAIR)]
    base = guide.height - mm(2)
    end = guide.length - _END // 2 if end_on_right else _END // 2
    items.append(Line(((end, 0), (end, guide.height)), _END))
    name, said = f"Guide {guide_name(number)}", f"the leaf ends here; {millimetres(guide.length)} long"
    far, near = (name, said) if end_on_right else (said, name)
    for word, right in ((far, False), (near, True)):
        font, size = (Font.BOLD, _TITLE) if word == name else (Font.REGULAR, _SIZE)
        x = guide.length - mm(3) - text_width(word, font, size) if right else mm(3)
        items.append(Text(x, base, word, size, font))
    return Group(0, 0, tuple(items))


@record
class _View:
    """From places along the leaf's edge, counted from the stop, to places on the drawing."""

    plan: Plan
    scale: int
    zero: int  # where the stop's face is drawn
    towards: int  # 1 where the leaf lies to the right of the stop, -1 where it lies to its left

    def x(self, at: int) -> int:
        return self.zero + self.towards * (at // self.scale)

    def down(self, length: int) -> int:
        return length // self.scale


def _view(plan: Plan, width: int) -> _View:
    stops = [stroke.stop for stroke in plan.strokes]
    low = min(0, min(stops) - _BODY_BESIDE)
    high = max(plan.pattern.edge, max(stops) + pins(plan.punch)[-1] + _BODY_BESIDE)
    edge = _STOP + _LEAF
    scale = next((one for one in SCALES if (high - low) // one + 2 * edge <= width), SCALES[-1])
    if plan.punch.stop_on_right:
        return _View(plan, scale, edge + high // scale, -1)
    return _View(plan, scale, edge - low // scale, 1)


def _leaf_depth(view: _View) -> int:
    return view.down(view.plan.pattern.inset + _LEAF_BELOW)


def _row_height(view: _View) -> int:
    return _TITLE_ROOM + _BODY_ABOVE + max(_leaf_depth(view), mm(8)) + _NAMES_ROOM + _MEASURE_ROOM + _GAP


def _row(view: _View, number: int, stroke: Stroke, made: tuple[int, ...]) -> Iterator[Drawn]:
    plan = view.plan
    face = "front" if stroke.front_up else "back"
    end = end_name(plan.pattern, stroke.start_at_stop)
    at = "mark" if plan.punch.stop == "none" else "stop"
    yield Text(0, ascent(Font.BOLD, _TITLE), f"Stroke {number + 1}: {face} up, {end} at the {at}", _TITLE, Font.BOLD)
    throat = _TITLE_ROOM + _BODY_ABOVE
    yield from _body(view, stroke, throat)
    yield from _leaf(view, throat)
    yield from _holes(view, stroke, made, throat)
    lower = throat + max(_leaf_depth(view), mm(8))
    yield from _stop(view, throat, lower)
    base = lower + _NAMES_ROOM - mm(1)
    here, there = (end, end_name(plan.pattern, not stroke.start_at_stop))
    left, right = (there, here) if view.towards < 0 else (here, there)
    ends = sorted((view.x(0), view.x(plan.pattern.edge)))
    yield Text(ends[0] + mm(1), base, left, _SIZE)
    yield Text(ends[1] - mm(1) - text_width(right, Font.REGULAR, _SIZE), base, right, _SIZE)
    yield Text((sum(ends) - text_width(f"{face} up", Font.REGULAR, _SIZE)) // 2, base, f"{face} up", _SIZE)
    yield from _measure(view, stroke, lower + _NAMES_ROOM + mm(1.5))


def _body(view: _View, stroke: Stroke, throat: int) -> Iterator[Drawn]:
    """The punch: an outline around its holes, the throat a line across it."""
    ends = sorted((view.x(stroke.stop - _BODY_BESIDE), view.x(stroke.stop + pins(view.plan.punch)[-1] + _BODY_BESIDE)))
    inset = view.down(view.plan.pattern.inset + view.plan.punch.diameter)
    yield Box(ends[0], throat - _BODY_ABOVE, ends[1] - ends[0], _BODY_ABOVE + inset, Ink.NONE, _HAIR, mm(1))
    if view.plan.punch.stop == "scale" and counted_from(view.plan.punch):
        centre = view.x(stroke.stop + middle(view.plan.punch))
        yield Line(((centre, throat - _BODY_ABOVE), (centre, throat - mm(1))), _LEAF)


def _leaf(view: _View, throat: int) -> Iterator[Drawn]:
    """Three sides of the leaf; it goes on below."""
    depth = max(_leaf_depth(view), mm(8))
    near, far = view.x(0), view.x(view.plan.pattern.edge)
    yield Line(((near, throat + depth), (near, throat), (far, throat), (far, throat + depth)), _LEAF)
    yield Line(((near, throat + depth), (far, throat + depth)), pt(0.8), dots=mm(1.2))


def _holes(view: _View, stroke: Stroke, made: tuple[int, ...], throat: int) -> Iterator[Drawn]:
    pattern, punch = view.plan.pattern, view.plan.punch
    y = throat + view.down(pattern.inset)
    now = struck(pattern, punch, stroke)
    for at in made:
        if at not in now:
            yield _circle(view, at if stroke.start_at_stop else pattern.edge - at, y, _THIN, Ink.WHITE)
    for pin in pins(punch):
        at = stroke.stop + pin
        meets = (at if stroke.start_at_stop else pattern.edge - at) in now
        yield _circle(view, at, y, _THIN if meets else _HAIR, Ink.BLACK if meets else Ink.NONE)


def _circle(view: _View, at: int, y: int, stroke: int, fill: Ink) -> Box:
    radius = max(view.down(view.plan.punch.diameter) // 2, mm(0.6))
    return Box(view.x(at) - radius, y - radius, 2 * radius, 2 * radius, fill, stroke, radius)


def _stop(view: _View, throat: int, lower: int) -> Iterator[Drawn]:
    """A black block against the leaf's end; a line through it where a mark stands for the stop."""
    x = view.x(0)
    if view.plan.punch.stop == "none":
        yield Line(((x, throat - _BODY_ABOVE), (x, lower)), _END)
        return
    left = x if view.towards < 0 else x - _STOP
    yield Box(left, throat - _BODY_ABOVE // 2, _STOP, lower - throat, Ink.BLACK)


def _measure(view: _View, stroke: Stroke, y: int) -> Iterator[Drawn]:
    """From the stop to what its setting counts to."""
    punch = view.plan.punch
    length, to = stroke.stop + counted_from(punch), "middle of the punch"
    if punch.stop != "scale" or length == stroke.stop:  # of the holes that do not lie beyond the leaf's end
        length = min(at for at in (stroke.stop + pin for pin in pins(punch)) if at > 0)
        to = "nearest hole"
    ends = sorted((view.x(0), view.x(length)))
    yield Line(((ends[0], y), (ends[1], y)), _HAIR)
    for x in ends:
        yield Line(((x, y - _TICK), (x, y + _TICK)), _HAIR)
    said = f"{millimetres(length)} to the {to}"
    long = text_width(said, Font.REGULAR, _SIZE)
    leaf = sorted((view.x(0), view.x(view.plan.pattern.edge)))
    left = max(leaf[0], min(sum(ends) // 2 - long // 2, leaf[1] - long))
    yield Text(left, y + mm(1.8) + cap_height(Font.REGULAR, _SIZE), said, _SIZE)


def _key(view: _View, top: int) -> Iterator[Drawn]:
    """What the circles mean, and the scale."""
    base, radius = top + mm(3), mm(1)
    level = base - cap_height(Font.REGULAR, _SIZE) // 2
    x = _THIN
    for fill, said in ((Ink.BLACK, "punched by this stroke"), (Ink.WHITE, "there already")):
        yield Box(x, level - radius, 2 * radius, 2 * radius, fill, _THIN, radius)
        yield Text(x + mm(3), base, said, _SIZE)
        x += mm(7) + text_width(said, Font.REGULAR, _SIZE)
    yield Text(x, base, f"Drawn 1 : {view.scale}, seen from where you stand.", _SIZE)
