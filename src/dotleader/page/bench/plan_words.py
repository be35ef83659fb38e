"""A punch plan in words: sentences that somebody at a bench can do, one after another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import assert_never

from dotleader.handbook.punch import Punch
from dotleader.handbook.stocks.fault import millimetres
from dotleader.page.bench.guide import Guide, guide_name, guides
from dotleader.page.bench.nearest import change, depth_for
from dotleader.page.bench.plan import NoPlan, Pattern, Plan, Punching, Stroke
from dotleader.page.bench.settings import counted_from

_NOTICED = 100
"""A hole that is farther from its place than this is spoken of."""

_STROKES = ("", "one stroke", "two strokes", "three strokes", "four strokes")


def plan_title(plan: Punching) -> str:
    """What is punched with what: `Desk punch: 4 holes 40 mm apart, in two strokes.`"""
    name = punch_name(plan.punch)
    match plan:
        case Plan(pattern, _, strokes):
            return f"{name}: {pattern_words(pattern)}, in {_STROKES[len(strokes)]}."
        case NoPlan(pattern):
            if not pattern.centres:
                return f"{name}: the leaf has no holes."
            return f"{name} cannot make {pattern_words(pattern)} on an edge of {millimetres(pattern.edge)}."
        case _ as never:
            assert_never(never)


def plan_text(plan: Punching) -> tuple[str, ...]:
    """Numbered sentences; of a pattern that cannot be made, why not and what can be made instead."""
    match plan:
        case Plan():
            return tuple(f"{number}. {step}" for number, step in enumerate(_steps(plan), 1))
        case NoPlan(pattern, _, reasons, nearest):
            return (*reasons, *_instead(pattern, nearest))
        case _ as never:
            assert_never(never)


def punch_name(punch: Punch) -> str:
    return punch.name or "The punch"


def pattern_words(pattern: Pattern) -> str:
    count, gaps = len(pattern.centres), set(pattern.gaps)
    if count < 2:
        return f"{count} hole" if count else "no holes"
    if len(gaps) == 1:
        return f"{count} holes {millimetres(gaps.pop())} apart"
    return f"{count} holes at {_listed([millimetres(at)[: -len(' mm')] for at in pattern.centres])} mm"


def end_name(pattern: Pattern, start: bool) -> str:
    """An end of the bound edge, as it is called by whoever reads the front."""
    if pattern.bound_at == "left":
        return "head" if start else "foot"
    return "left edge" if start else "right edge"


def _steps(plan: Plan) -> Iterator[str]:
    pattern, punch = plan.pattern, plan.punch
    if pattern.filmed:
        yield "Laminate the leaves first, and let them cool: the film is punched, and the edges named here are its own."
    yield _trial(plan)
    depth = depth_for(pattern, punch)
    if depth is not None and punch.depth[0] != punch.depth[1]:
        yield f"Set the depth of the punch to {millimetres(depth)}."
    strips = {guide.stop: (guide_name(number), guide) for number, guide in enumerate(guides(plan))}
    before: Stroke | None = None
    made: set[int] = set()
    for stroke in plan.strokes:
        if before is None or stroke.stop != before.stop:
            after = "" if before is None else "When every leaf has had this: "
            step = _setting(punch, stroke.stop, strips.get(stroke.stop))
            yield after + (step[0].lower() + step[1:] if after else step)
            yield _first(plan, stroke, made)
        else:
            yield _again(plan, before, stroke, made)
        made.update(stroke.makes)
        before = stroke


def _trial(plan: Plan) -> str:
    pattern = plan.pattern
    at = _listed([millimetres(at)[: -len(" mm")] for at in pattern.centres])
    comes = "hole comes" if len(pattern.centres) == 1 else "holes come"
    near = f", within {millimetres(plan.off, up=True)}" if plan.off >= _NOTICED else ""
    return (
        f"Do what follows on a piece of paper first: along an edge of {millimetres(pattern.edge)}, the {comes} {at} mm "
        f"from the {end_name(pattern, True)}{near}, and {millimetres(pattern.inset)} from the edge that is bound."
    )


def _setting(punch: Punch, stop: int, strip: tuple[str, Guide] | None) -> str:
    side = "right" if punch.stop_on_right else "left"
    if strip is None:
        shown, near = millimetres(stop + counted_from(punch)), millimetres(stop)
        if not counted_from(punch):
            return f"Set the stop on the {side} to {shown}, counted from the hole of the punch that is next to it."
        return (
            f"Set the stop on the {side} to {shown}, counted from the middle of the punch; it then stands {near} from "
            f"the middle of the hole next to it."
        )
    name, guide = strip
    at = _listed([millimetres(at)[: -len(" mm")] for at in guide.centres])
    other = "left" if punch.stop_on_right else "right"
    one, few = len(guide.centres) == 1, len(guide.centres) < len(punch.holes)
    lays = (
        f"Take guide {name}, a strip of stiff paper {millimetres(guide.length)} long with "
        f"{'a circle' if one else 'circles'} of {millimetres(guide.diameter)}, {at} mm from its {side} end and "
        f"{millimetres(guide.inset)} from its upper edge. Take the tray off the punch, push the upper edge home, and "
        f"move the strip until, from below, the {'circle' if one else 'circles'} can be seen in the "
        f"{'hole' if one else 'holes'} of the punch{f' farthest to the {other}' if few else ''}. "
    )
    if punch.stop == "plain":
        return f"{lays}Bring the stop up to the {side} end of the strip, and take the strip out."
    return f"{lays}Mark where its {side} end is, on the punch or on what it stands on, and take the strip out."


def _against(plan: Plan, stroke: Stroke) -> str:
    end = f"its {end_name(plan.pattern, stroke.start_at_stop)}"
    if plan.pattern.bound_at == "top" and not stroke.front_up:  # the front's left is seen on the right then
        end = f"the{end.removeprefix('its')} of its front"
    return f"{end} {'at the mark' if plan.punch.stop == 'none' else 'against the stop'}"


def _first(plan: Plan, stroke: Stroke, made: set[int]) -> str:
    face = "front" if stroke.front_up else "back"
    taken = "Take each leaf once more." if made else "Take one leaf at a time."
    return (
        f"{taken} Lay it with its {face} up and {_against(plan, stroke)}, push the edge that is bound "
        f"home, and punch: {_made(plan, stroke, made)}."
    )


def _again(plan: Plan, before: Stroke, stroke: Stroke, made: set[int]) -> str:
    kept = "mark" if plan.punch.stop == "none" else "stop"
    if before.front_up == stroke.front_up:  # pins of which other ones meet the leaf: never at one setting, but said
        return f"Leave the {kept} where it is, and punch once more: {_made(plan, stroke, made)}."
    face = "front" if stroke.front_up else "back"
    return (
        f"Leave the {kept} where it is. Turn the leaf over, so that its {face} is up and {_against(plan, stroke)}, and "
        f"punch: {_made(plan, stroke, made)}."
    )


def _made(plan: Plan, stroke: Stroke, made: set[int]) -> str:
    numbers = [str(hole + 1) for hole in stroke.makes]
    counted = f"{'hole' if len(numbers) == 1 else 'holes'} {_listed(numbers)}"
    if not made:
        counted += f", counted from the {end_name(plan.pattern, True)}"
    twice = [str(hole + 1) for hole in stroke.makes if hole in made]
    if not twice:
        return counted
    holes, are = ("hole", "is") if len(twice) == 1 else ("holes", "are")
    return f"{counted}; {holes} {_listed(twice)} {are} there already, and the punch has to go through without cutting"


def _instead(pattern: Pattern, nearest: Sequence[Plan]) -> Iterator[str]:
    if not nearest and pattern.centres:
        yield "No equal spacing of as many holes can be made with it either."
    for number, plan in enumerate(nearest):
        begins = "With fewer strokes, the nearest" if number else "The nearest that it makes"
        yield (
            f"{begins} is {pattern_words(plan.pattern)}{_changed(pattern, plan.pattern)}, in "
            f"{_STROKES[len(plan.strokes)]}. In the stock, write `holes .... {_row(plan.pattern)}`."
        )


def _changed(pattern: Pattern, other: Pattern) -> str:
    by = change(pattern, other)
    if not by:
        return ""
    if len(set(pattern.gaps)) == 1:
        return f" ({millimetres(by)} {'less' if other.gaps < pattern.gaps else 'more'})"
    return f" (a change of {millimetres(by)} at most)"


def _row(pattern: Pattern) -> str:
    """The pattern as the `holes` row of a stock."""
    count, gaps = len(pattern.centres), sorted(set(pattern.gaps))
    apart = ""
    if gaps and gaps[-1] - gaps[0] <= 1:  # what rounding to micrometres leaves of equal spacings
        apart = f", {_exact(gaps[-1])} apart"
    elif gaps:
        apart = ", " + " + ".join(_exact(gap)[: -len(" mm")] for gap in pattern.gaps) + " mm apart"
    return f"{count}{apart}, {_exact(pattern.diameter)} wide, {_exact(pattern.inset)} from edge"


def _exact(length: int) -> str:
    return f"{length // 1000}.{length % 1000:03d}".rstrip("0").rstrip(".") + " mm"


def _listed(words: Sequence[str]) -> str:
    return " and ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else words[0]
