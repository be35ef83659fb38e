"""Conditions that speak of a control's position: `if Fuel pump ON`, `if the fuel pump is not ON`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from dotleader.handbook.cards import Phrase, Standing
from dotleader.handbook.model import Control
from dotleader.handbook.positions import matched
from dotleader.syntax.plain import folded

_SAID = re.compile(r"(?:(?:is|are|stands?|has been|have been)\s+)?(not\s+)?(?:(?:in|at|to)\s+)?(\S.*)", re.IGNORECASE)


def standing(condition: Phrase, controls: Mapping[str, Control]) -> Standing | None:
    """What a condition says of a control; None where it is about something else, or about more."""
    words = condition.text.split()
    if words and words[0].casefold() == "the":
        del words[0]
    for count in range(len(words) - 1, 0, -1):
        control = controls.get(folded(" ".join(words[:count])))
        if control is not None:
            return _said_of(control, " ".join(words[count:]))
    return None


def _said_of(control: Control, text: str) -> Standing | None:
    said = _SAID.fullmatch(text)
    for position in control.positions:
        if matched(position) == matched(text):  # it may begin with `IN` or `NOT` itself
            return Standing(control.key, position)
        if said is not None and matched(position) == matched(said[2]):
            return Standing(control.key, position, negated=said[1] is not None)
    return None
