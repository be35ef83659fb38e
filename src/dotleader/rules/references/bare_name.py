"""A response that is the name of a declared value without the braces that would print its number."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Item
from dotleader.handbook.model import Declared, Handbook
from dotleader.handbook.positions import matched
from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity, swapped
from dotleader.syntax.plain import folded

BAD = Example(
    """\
speeds
  VG .... 82 KIAS  unverified

values
  takeoff flaps .... 10 deg  unverified

normal Before takeoff
  Flaps .... TAKEOFF FLAPS

normal Descent
  Airspeed .... VG
""",
    (("bare-name", "TAKEOFF FLAPS"), ("bare-name", "VG")),
)

GOOD = Example(
    """\
speeds
  VG .... 82 KIAS  unverified

values
  half .... 19 US gal  unverified

equipment
  Choke .... OFF, HALF, FULL

normal Engine start
  Choke .... HALF

normal Descent
  Airspeed .... {VG}
  Fuel .... {half}
  Speed bug .... AT VG
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    if not handbook.values:
        return
    positions = _positions(handbook)
    for _, item in subject.lines().printed:
        response = item.response
        if response is None or len(response.runs) != 1 or not isinstance(response.runs[0], str):
            continue
        value = handbook.values.get(folded(response.runs[0]))
        if value is not None and matched(response.text) not in positions and not _takes_positions(item, handbook):
            yield Finding(
                RULE.name,
                response.spot,
                f"`{response.text}` prints as it stands: the name of a declared value, not its number.",
                f"{_offer(value)} If the name itself is meant, say more than it.",
                (Related(value.spot, f"`{value.name}` is declared here."),),
                fix=swapped(response.spot, f"{{{value.name}}}", safe=False),
            )


def _offer(value: Declared) -> str:
    prints = f", which prints as `{value.shown}`" if value.shape is not None else ""
    return f"Write `{{{value.name}}}`{prints}."


def _positions(handbook: Handbook) -> set[str]:
    """Words that mean a position, of whatever control."""
    found = {matched(position) for control in handbook.controls.values() for position in control.positions}
    return found | {matched(meaning.word) for control in handbook.controls.values() for meaning in control.meanings}


def _takes_positions(item: Item, handbook: Handbook) -> bool:
    """Whether a response that is no position is said elsewhere."""
    controls = [handbook.controls[challenge.control] for challenge in item.challenges if challenge.control]
    return any(not control.lever and not control.takes_any for control in controls)


RULE = Rule(
    name="bare-name",
    severity=Severity.WARNING,
    family="references",
    what=(
        "A response that is exactly the name of a row of `speeds` or `values`, without braces. Not where the word is "
        "a declared position."
    ),
    why="Whoever follows the card reads a symbol and has to know, or to look up, the number that it stands for.",
    source=THE_LANGUAGE,
    mend="Put the name into braces: `Airspeed .... {VG}`. Where the name itself is meant, say more than it: `AT VG`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
    fix="unsafe",
)
