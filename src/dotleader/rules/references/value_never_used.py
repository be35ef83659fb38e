"""A value that is declared and used nowhere."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.amounts.speed_symbols import speed_symbol
from dotleader.handbook.model import Declared, Handbook
from dotleader.rules.numbers.typed import values_of
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
speeds
  VX .... 66 KIAS  unverified
  VY .... 80 KIAS  unverified

normal Climb
  Airspeed .... {VY}
""",
    (("value-never-used", "VX"),),
)

GOOD = Example(
    """\
speeds
  VX .... 66 KIAS  unverified
  VY .... 80 KIAS  unverified
  VNE .... 160 KIAS  unverified

normal Climb
  Airspeed .... {VY}
    Over obstacles {VX}.
""",
)


ALWAYS_USED = frozenset({"load factor"})
LIMITS = frozenset({"VS", "VS0", "VS1", "VFE", "VA", "VO", "VNO", "VNE", "VLE", "VLO"})
"""What the arcs of the airspeed indicator and the limitations are made of; see 14 CFR 23.1545 and 23.1563."""


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    if handbook.loose and not handbook.cards:
        return  # declarations to be included somewhere: who uses them is not at hand
    used = _used(handbook)
    if len(used) < len(handbook.values):
        # Where it is typed instead there is a finding already, and it says how to use the value.
        used |= {value.key for found in subject.typed() for value in values_of(found)}
    for key, value in handbook.values.items():
        if key not in used:
            yield Finding(
                RULE.name,
                value.spot,
                f"`{value.name}` is declared and used nowhere.",
                f"Write `{{{value.name}}}` where its number belongs, or take the row out.",
            )


def _used(handbook: Handbook) -> set[str]:
    """Keys of the values that are referred to outside of `speeds` and `values`, and of all that these rest on."""
    rows = {_line(value.spot) for value in handbook.values.values()}
    mentions = (mention for mention in handbook.mentions if mention.kind == "value")
    waiting = [mention.key for mention in mentions if _line(mention.spot) not in rows]
    waiting += [key for key, value in handbook.values.items() if key in ALWAYS_USED or _is_limit(value)]
    # What only an unused value rests on is told when that has found its use, or is gone.
    waiting += [part for value in handbook.values.values() for part in value.parts]
    used: set[str] = set()
    while waiting:
        key = waiting.pop()
        if key not in used:
            used.add(key)
            waiting.extend(handbook.values[key].parts if key in handbook.values else ())
    return used


def _line(spot: Spot) -> tuple[str, int]:
    return spot.source.name, spot.source.line_and_column(spot.start)[0]


def _is_limit(value: Declared) -> bool:
    symbol = speed_symbol(value.name) if value.speed else None
    return symbol is not None and symbol.symbol in LIMITS


RULE = Rule(
    name="value-never-used",
    severity=Severity.WARNING,
    family="references",
    what=(
        "A row of `speeds` or `values` that no card, text, gauge or property refers to. What another row is "
        "worked out from is not told beside that row. `load factor`, the limiting and the stalling speeds count as "
        "used wherever they are declared."
    ),
    why=(
        "A number that stands nowhere is either forgotten on the card it was meant for, or typed there by hand and no "
        "longer kept equal."
    ),
    source=NO_SOURCE,
    mend="Refer to it where its number belongs, `{fuel cap torque}`, or take the row out.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
