"""A critical control is moved away again before takeoff, after it was looked at for the last time."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.moving import Change
from dotleader.cockpit.timeline import LineRun
from dotleader.handbook.cards import Card, Item
from dotleader.handbook.phases import ORDER
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_FLAPS = """\
equipment
  Flaps .... UP, 10 deg
    parked .... UP

normal Before start
  when seated
  Flaps .... 10 deg [critical]

normal Before takeoff
  when holding short of the runway
  Flaps .... 10 deg [critical]

normal Before landing
  when joining
  Flaps .... 10 deg

"""

BAD = Example(
    _FLAPS + "normal Line-up\n  phase before takeoff\n  when cleared\n  Flaps .... UP\n  Flaps .... 10 deg if wet\n",
    (("critical-undone", "Flaps .... UP"),),
)

GOOD = Example(_FLAPS + "normal Line-up\n  phase before takeoff\n  when cleared\n  Flaps .... 10 deg\n")


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    lines = [
        (ran.card, line) for ran in subject.run().main if ORDER[ran.phase] < ORDER["takeoff"] for line in ran.lines
    ]
    last: dict[str, tuple[Card, Item]] = {}
    undone: dict[str, tuple[LineRun, Change]] = {}
    for card, line in lines:
        moved = {move.control for move in line.item.moves}
        for met in line.met:
            key = met.what.control
            if isinstance(met.what, Change) and key in last and key in moved and last[key][1] is not line.item:
                undone.setdefault(key, (line, met.what))
        if line.item.critical and ORDER[card.phase] == ORDER["before takeoff"]:
            for challenge in line.item.challenges:
                if challenge.control:
                    last[challenge.control] = card, line.item
                    undone.pop(challenge.control, None)
    for key, (line, change) in undone.items():
        card, item = last[key]
        yield Finding(
            RULE.name,
            line.item.spot,
            f"`{handbook.controls[key].name}` goes from `{change.before}` to `{change.after}` here, after it "
            f"was looked at as critical on `{card.title}`.",
            "Move this line above the critical one, or look at it again after this.",
            (Related(item.spot, f"`{short(item.challenge)}` is critical here, for the last time before takeoff."),),
        )


RULE = Rule(
    name="critical-undone",
    severity=Severity.WARNING,
    family="safety",
    what=(
        "A line before takeoff that moves a control away from where the last critical item for it, on a card before "
        "takeoff, has put it."
    ),
    why="The check of an item that kills is worth nothing when the item is changed after it.",
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990), appendix A, guideline 11, as read in a summary: critical items that "
        "may be changed later are repeated later"
    ),
    mend="Let the critical item come last of all lines before takeoff that touch its control.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
