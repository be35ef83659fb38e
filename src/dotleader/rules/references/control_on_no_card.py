"""A control that is declared and on no card."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Branch, Card, Repeat
from dotleader.handbook.model import Handbook
from dotleader.handbook.names import split_prefix
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded

BAD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
  Pitot heat .... OFF, ON

normal Before takeoff
  Fuel pump .... ON
""",
    (("control-on-no-card", "Pitot heat"),),
)

GOOD = Example(
    """\
equipment
  Fuel pump .... OFF, ON
  Pitot heat .... OFF, ON

normal Before takeoff
  Fuel pump .... ON
  Pitot heat .... ON if in visible moisture, otherwise OFF
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    if handbook.loose and not handbook.cards:
        return  # declarations to be included somewhere: their cards are not at hand
    named = {mention.key for mention in handbook.mentions if mention.kind == "control"}
    named |= _in_conditions(handbook)
    for key, control in handbook.controls.items():
        if key not in named:
            yield Finding(
                RULE.name,
                control.spot,
                f"`{control.name}` is declared and on no card.",
                "Write an item for it where it is looked at or moved, or take it out of `equipment`.",
            )


def _in_conditions(handbook: Handbook) -> set[str]:
    """Keys of the controls that conditions begin with: `if Wheels UP`."""
    names = [control.name for control in handbook.controls.values()]
    found = (split_prefix(text, names) for card in handbook.cards for text in _conditions(card))
    return {folded(split[0]) for split in found if split is not None}


def _conditions(card: Card) -> Iterator[str]:
    for step in every_step(card.steps):
        if isinstance(step, Branch):
            yield from (arm.condition.text for arm in step.arms if arm.condition is not None)
        elif isinstance(step, Repeat):
            yield step.until.text


RULE = Rule(
    name="control-on-no-card",
    severity=Severity.WARNING,
    family="references",
    what=(
        "A control of the `equipment` block that no item, condition or property of another control names. What `needs` "
        "and `turned` name counts as used."
    ),
    why=(
        "A lever that is on no list is set by nobody: on one report the whole crew missed a lever in a wrong position "
        "because the list did not have it."
    ),
    source="NASA CR-177549 (Degani and Wiener, 1990), on ASRS report 90128 (read in a summary)",
    mend="Write an item for it where it is looked at or moved, or take it out of `equipment`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
