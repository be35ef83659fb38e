"""What a line has to say besides a number, so that the number is the declared one."""

from __future__ import annotations

import re
from fractions import Fraction

from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.speed_symbols import safe_side, speed_symbol
from dotleader.handbook.cards import Item
from dotleader.handbook.model import Declared
from dotleader.rules.numbers.typed_lines import TypedLine
from dotleader.syntax.plain import folded

_WORD = re.compile(r"[a-z]+[a-z0-9]*")
_AIRSPEED = frozenset({"airspeed", "air speed", "indicated airspeed", "ias", "speed", "approach speed", "climb speed"})
GENERAL = frozenset(
    """
    a an all and any at best by each every for from full half high in least less limit limits low lowest max maximum
    mean min minimum more most no normal number of off on one or out over rate speed per than the time to total two
    under up usual value with within height altitude level pressure temperature weight angle distance
    """.split()  # noqa: SIM905
)
"""Words that many things share; a name of nothing else counts where the number is no round one."""
_OF_SPEEDS = frozenset("greatest stated reference airspeed speed configuration".split())  # noqa: SIM905
_FLOWN_AT = {
    "VG": frozenset({"engine", "forced", "power", "glide", "ditching"}),
    "VR": frozenset({"takeoff", "rotate", "rotation"}),
    "VREF": frozenset({"approach", "final", "landing"}),
    "VX": frozenset({"climb", "obstacle", "short"}),
    "VY": frozenset({"climb", "takeoff"}),
}
"""What a card is about on which a speed is flown."""
_AT_LEAST = re.compile(r"\b(?:at least|or more|or above|or higher|or faster|above|min|minimum|not below)\b")
_AT_MOST = re.compile(r"\b(?:at most|or less|or below|or lower|or slower|below|max|maximum|not above)\b")


def words_of(text: str) -> set[str]:
    """The words of a folded text, plurals as one with their singular."""
    return {word[:-1] if len(word) > 3 and word.endswith("s") else word for word in _WORD.findall(text)}


def same_speed(line: TypedLine, value: Declared, number: Fraction, words: set[str]) -> bool:
    """Whether an airspeed is the declared one: a round one, such as 80 KIAS, may stand for several things.

    What is given as the least is no limit that must not be passed, and the other way round.
    """
    side = safe_side(value.name)
    if (side is Side.DOWN and _AT_LEAST.search(line.about)) or (side is Side.UP and _AT_MOST.search(line.about)):
        return False
    if number % 10:
        return True
    telling = (words_of(folded(value.name)) | words_of(folded(value.meaning))) - GENERAL - _OF_SPEEDS
    symbol = speed_symbol(value.name)
    telling |= _FLOWN_AT.get(symbol.symbol, frozenset()) if symbol is not None else frozenset()
    return bool(telling & (words | words_of(folded(f"{line.card.title} {line.card.phase}"))))


def is_airspeed(item: Item) -> bool:
    return any(folded(challenge.phrase.text) in _AIRSPEED for challenge in item.challenges)
