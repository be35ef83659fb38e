"""The phases of a flight in their order, and the titles that mean them.

The eleven lists of FAA-H-8083-3C (Airplane Flying Handbook) chapter 1, "Use of Checklists", each have a phase here;
run-up, takeoff, landing and parking are common practice, no source.
"""

from __future__ import annotations

from dotleader.syntax.plain import folded

PHASES: dict[str, tuple[str, ...]] = {
    "preflight": (
        "preflight inspection", "exterior inspection", "walk-round", "cockpit inspection", "walk around",
        "daily inspection", "daily check", "external inspection", "external check", "exterior check", "outside check",
        "cockpit check",
    ),
    "before start": ("before starting", "before engine start", "prestart"),
    "engine start": ("start", "starting", "starting engine"),
    "taxi": (
        "before taxi", "before taxiing", "taxiing", "after start", "taxying", "before taxying", "pre taxi",
        "after engine start", "after starting",
    ),
    "run-up": ("engine run-up", "ground check"),
    "before takeoff": ("pre-takeoff", "lineup", "holding point", "vital actions"),
    "takeoff": ("normal takeoff", "short-field takeoff", "soft-field takeoff"),
    "climb": ("after takeoff", "initial climb", "climb out", "after lift off"),
    "cruise": ("level-off", "en route"),
    "descent": ("top of descent", "before descent", "let down"),
    "approach": (
        "before landing", "final", "final approach", "circuit", "pre landing", "downwind", "arrival", "joining",
    ),
    "landing": ("normal landing", "short-field landing"),
    "after landing": ("post landing", "clear of runway"),
    "shutdown": ("engine shutdown", "stopping engine", "shutting down", "stopping"),
    "parking": ("securing", "leaving the aircraft", "after flight", "post flight", "putting away"),
}  # fmt: skip
"""Each phase with the titles that mean it besides its own name."""

ORDER = {name: place for place, name in enumerate(PHASES)}
AIRBORNE = tuple(PHASES)[ORDER["takeoff"] : ORDER["landing"] + 1]
"""The phases in which an emergency or abnormal card can come unless it says otherwise: takeoff to landing."""


_BETWEEN = str.maketrans(dict.fromkeys("-/,:;()\u2013\u2014", " "))


def _words(title: str) -> list[str]:
    """The words of a title, marks between them as spaces, without `the` and `checklist`."""
    return [word for word in folded(title).translate(_BETWEEN).split() if word not in ("the", "checklist")]


# Written together, so that `take-off`, `take off` and `takeoff` are one word.
_BY_TITLE = {"".join(_words(title)): phase for phase, titles in PHASES.items() for title in (phase, *titles)}


def phase_named(name: str) -> str:
    """The phase of that name, or `""`; also by the other titles that mean it."""
    return _BY_TITLE.get("".join(_words(name)), "")


def phase_of_title(title: str) -> str:
    """The phase that a card's title means: the title is a known one or begins with it; the longest wins."""
    words = _words(title)
    for count in range(len(words), 0, -1):
        phase = _BY_TITLE.get("".join(words[:count]))
        if phase:
            return phase
    return ""
