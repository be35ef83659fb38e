"""The phases of a flight that the title of a normal card speaks of, generously read.

A card is found in its phase by the titles in `handbook.phases` alone. Here it is asked whether a handbook has any card
for a phase, and a usual title that is not one of those, or the second half of `Descent and approach`, must raise no
false alarm.
"""

from __future__ import annotations

from dotleader.handbook.phases import PHASES
from dotleader.syntax.plain import folded

_ALSO: dict[str, tuple[str, ...]] = {
    "preflight": (
        "external checks", "exterior checks", "internal inspection", "internal check", "internal checks",
        "interior inspection", "cabin inspection", "cabin check", "cockpit checks", "pre-flight check",
        "first flight of the day",
    ),
    "before start": ("before engine starting", "before starting engine", "pre-start", "before the start"),
    "engine start": ("engine starting", "cold start", "normal start", "starting the engine", "start-up"),
    "taxi": ("after starting engine", "taxi out", "while taxiing"),
    "before takeoff": ("line-up", "takeoff check", "takeoff checks"),
    "climb": ("post takeoff", "normal climb", "cruise climb"),
    "cruise": ("level flight",),
    "approach": ("base leg",),
    "after landing": ("runway vacated", "vacating"),
    "shutdown": ("engine stop", "stop engine", "engine off"),
    "parking": ("secure", "end of flight", "hangar"),
}  # fmt: skip
_BETWEEN = str.maketrans(dict.fromkeys("-/,:;()&+.\u2013\u2014", " "))


def _words(title: str) -> list[str]:
    words = folded(title).translate(_BETWEEN).split()
    return [word for word in words if word not in ("the", "a", "an", "checklist", "check", "checks")] or words


_BY_LETTERS = {
    "".join(_words(title)): phase
    for phase, titles in PHASES.items()
    for title in (phase, *titles, *_ALSO.get(phase, ()))
}


def phases_in_title(title: str) -> set[str]:
    """All phases that a title speaks of. What belongs to a longer phrase counts for nothing else.

    So `Before engine start` is not for the start itself, nor `After landing` for the landing.
    """
    words = _words(title)
    found: set[str] = set()
    at = 0
    while at < len(words):
        for end in range(len(words), at, -1):
            phase = _BY_LETTERS.get("".join(words[at:end]))
            if phase is not None:
                found.add(phase)
                at = end - 1
                break
        at += 1
    return found
