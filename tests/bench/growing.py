"""Books of any length, made of the example: clean ones, and ones with a fault at every tenth line."""

from __future__ import annotations

import re
from pathlib import Path

TOP = Path(__file__).parents[2]
EXAMPLE = TOP / "examples" / "ostrel-two"
_NAMES = ("handbook", "numbers", "cockpit", "words", "normal", "emergency", "abnormal")
_KINDS = ("normal ", "abnormal ", "emergency ")
_HEAD = re.compile(r"^(?:normal|abnormal|emergency) (.*)$", re.MULTILINE)
_AGAIN = re.compile(r"^((?:normal|abnormal|emergency) .*|\s+(?:go to|when) .*)$", re.MULTILINE)
_PROSE = re.compile(r"^(    +[A-Z](?:(?!\.\.).)+?|  (?:note|caution|warning) .+?)([.:,;]?)$", re.MULTILINE)
_GO_TO = re.compile(r"^(\s+)go to (.*)$", re.MULTILINE)
_FAULTS = (
    "  Widget {n} .... CHECKED",
    "  Widget {n} .... {{no such value {n}}}",
    "  go to Nowhere {n}",
    "  this line {n} says nothing",
    "   Odd {n} .... LATCHED",
    "  Master switch .... FLOATING {n}",
    "  Fuel selektor .... LEFT",
    "  Thing {n} and knob or dial .... NOT UNLOCKED",
    "  Fuel pump .... STAYS ON",
    "  .... ON {n}",
    "  Pressure {n} .... 1,5 bar WITHIN 30 s",
)


def grown(lines: int) -> str:
    """The example in one file, its cards again and again under other titles and triggers, `lines` long or little more.

    Items repeat, as they do in any book; the prose of each copy has its number in it, so that it does not. It ends with
    a whole card; a `go to` a card that is not there is an `end`.
    """
    texts = [(EXAMPLE / f"{name}.cards").read_text(encoding="utf-8") for name in _NAMES]
    whole = re.sub(r"^include .*\n", "", "\n".join(texts), flags=re.MULTILINE)
    cards = "\n".join(texts[4:])
    parts, have, copy = [whole], whole.count("\n"), 1
    while have < lines:
        copy += 1
        again = _AGAIN.sub(rf"\1, copy {copy}", cards)
        again = _PROSE.sub(rf"\1 ({copy})\2", again)
        parts.append(again)
        have += again.count("\n")
    kept = "\n".join(parts).split("\n")
    while len(kept) > lines and not kept[lines].startswith(_KINDS):
        lines += 1
    text = "\n".join(kept[:lines]) + "\n"
    titles = set(_HEAD.findall(text))
    return _GO_TO.sub(lambda found: found[0] if found[2] in titles else f"{found[1]}end", text)


def faulty(text: str) -> str:
    """The same book with a line that something is wrong with after every tenth line of its cards, or the next that it
    can stand behind."""
    out: list[str] = []
    last, number, begun = 0, 0, False
    for at, line in enumerate(text.splitlines()):
        out.append(line)
        begun = begun or line.startswith(_KINDS)
        if begun and at - last >= 10 and line.startswith("  ") and not line.startswith("   "):
            out.append(_FAULTS[number % len(_FAULTS)].format(n=number))
            last, number = at, number + 1
    return "\n".join(out) + "\n"
