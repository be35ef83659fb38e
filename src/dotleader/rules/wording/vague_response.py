"""A response that anybody can say without looking."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from dotleader.handbook.cards import Item, Phrase
from dotleader.handbook.model import Control, Gauge, Handbook
from dotleader.handbook.positions import matched
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded

BAD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

equipment
  Fuel pump .... OFF, ON

normal Before takeoff
  when holding short of the runway
  Fuel pump .... SET
  Oil pressure .... CHECKED
  Doors .... AS REQUIRED
""",
    (("vague-response", "SET"), ("vague-response", "CHECKED"), ("vague-response", "AS REQUIRED")),
)

GOOD = Example(
    """\
gauge Oil pressure in psi from unverified
  green .... 55 to 95

equipment
  Fuel pump .... OFF, ON
  Static source .... NORMAL, ALTERNATE

normal Before takeoff
  when holding short of the runway
  Fuel pump .... ON
  Static source .... NORMAL
  Oil pressure .... {Oil pressure green}
  Doors .... LATCHED, BOTH
""",
)

_VAGUE = """
    adjust adjusted check checked checks complete completed confirm confirmed done normal ok okay satisfactory set
    verified verify
"""
_WORDS = frozenset(_VAGUE.split())
_PHRASES = frozenset(
    (
        *(f"as {word}" for word in ("appropriate", "desired", "needed", "necessary", "req", "reqd", "required")),
        *(f"if {word}" for word in ("needed", "necessary", "reqd", "required")),
        "in order",
    )
)
_BETWEEN = frozenset({"and", "or", "all", "both", "then"})
_APOSTROPHES = re.compile(r"['’.]")
_MARKS = re.compile(r"[^\w\s]+")


@lru_cache(4096)
def is_vague(text: str) -> bool:
    """Whether a response, as printed, is made of nothing but words that state nothing: `CHECKED AND SET`."""
    bare = folded(_MARKS.sub(" ", _APOSTROPHES.sub("", text)))
    if bare in _PHRASES:
        return True
    words = [word for word in bare.split() if word not in _BETWEEN]
    return bool(words) and all(word in _WORDS for word in words)


def check(subject: Subject) -> Iterator[Finding]:
    for _, item in subject.lines().printed:
        if item.response is not None and is_vague(item.response.text):
            controls, gauges = _named(item, subject.handbook)
            if not _is_position(item.response.text, controls, subject.handbook):
                yield _finding(item, item.response, controls, gauges)


def _named(item: Item, handbook: Handbook) -> tuple[list[Control], list[Gauge]]:
    controls = [handbook.controls[challenge.control] for challenge in item.challenges if challenge.control]
    return controls, [handbook.gauges[challenge.gauge] for challenge in item.challenges if challenge.gauge]


def _is_position(response: str, controls: Sequence[Control], handbook: Handbook) -> bool:
    """Whether the word is a position of each control that is named.

    Of another control is said elsewhere: two lines have been mixed up.
    """
    own = [_has(control, response) for control in controls]
    return bool(own) and (all(own) or any(_has(control, response) for control in handbook.controls.values()))


def _has(control: Control, position: str) -> bool:
    return matched(position) in {matched(name) for name in control.positions}


def _finding(item: Item, response: Phrase, controls: Sequence[Control], gauges: Sequence[Gauge]) -> Finding:
    return Finding(
        RULE.name,
        response.spot,
        f"`{response.text}` does not say what is wanted of `{item.challenge}`.",
        _control_help(controls[0]) if controls else _gauge_help(gauges[0]) if gauges else _FREE_HELP,
    )


_FREE_HELP = (
    "Say what is seen when it is right, so that it has to be looked at: `ON`, `LATCHED`, `FREE AND CORRECT`, "
    "`18 US gal`."
)


def _control_help(control: Control) -> str:
    if control.takes_any:
        unit = f" in {control.unit.symbol}" if control.unit is not None else ""
        return f"Say the value{unit} that it is set to, or where that value comes from."
    if not control.positions:
        return _FREE_HELP
    names = [f"`{position}`" for position in control.positions]
    said = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"
    return f"Say where it has to stand: {said}{', or between them' if control.lever else ''}."


def _gauge_help(gauge: Gauge) -> str:
    greens = [band for band in gauge.bands if folded(band.colour) == "green"]
    if greens:
        number = " 1" if len(greens) > 1 else ""
        return f"Say what it has to read: `{{{gauge.name} {greens[0].colour}{number}}}` prints as `{greens[0].shown}`."
    unit = f" in {gauge.unit.symbol}" if gauge.unit is not None else ""
    return f"Say what it has to read{unit}, a number or a range."


RULE = Rule(
    name="vague-response",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A response such as CHECKED, SET, AS REQUIRED, COMPLETE, DONE, OK, NORMAL, VERIFIED, ADJUSTED or AS "
        "DESIRED, alone or joined (`CHECKED AND SET`). A word that is a declared position of the control is "
        "none: `Static source .... NORMAL`."
    ),
    why="Such a word is said without a look at the thing; a position or a number has to be read off it.",
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990) appendix A(4), that a response states the wanted status or "
        "value and not just checked or set; FAA AC 120-71B (2017) 5.4 (read in a summary)"
    ),
    mend=(
        "Say what is seen when it is right: a position, a number, a range (`{Oil pressure green}`), or the "
        "state that can be seen or felt (`FREE AND CORRECT`)."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
