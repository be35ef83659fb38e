"""Cards and branches that no way leads to."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.cockpit.timeline import CardRun
from dotleader.cockpit.walking import Origin, Walk
from dotleader.handbook.cards import Arm, Branch, Item
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_PUMP = """\
equipment
  Fuel pump .... OFF, ON
    parked .... OFF

normal Before start
  when seated
  Fuel pump .... ON
  if Fuel pump {position}
    Fuel pressure .... RISES

normal Shutdown
  when parked
  Fuel pump .... OFF
"""

BAD_1 = Example(_PUMP.replace("{position}", "OFF"), (("never-reached", "Fuel pump OFF"),))
BAD_2 = Example(
    "normal On the water\n  after At the pier\n  when afloat\n  Anchor .... UP\n\n"
    "normal At the pier\n  after On the water\n  when tied up\n  Anchor .... DOWN\n",
    (("never-reached", "On the water"), ("never-reached", "At the pier")),
)
BAD_3 = Example(
    _PUMP.replace("{position}", "ON")
    + "\nemergency Engine stops\n  when the propeller stops\n  Fuel pump .... OFF then ON\n  if Fuel pump OFF\n"
    "    Fuel pump .... ON\n  end\n",
    (("never-reached", "Fuel pump OFF"),),
)
GOOD_1 = Example(_PUMP.replace("{position}", "ON"))
GOOD_2 = Example(
    _PUMP.replace("{position}", "ON")
    + "\nemergency Engine stops\n  when the propeller stops\n  if Fuel pump OFF\n    Fuel pump .... ON\n  end\n"
)


def check(subject: Subject) -> Iterator[Finding]:
    done = subject.run()
    reached = {ran.card.key for ran in done.cards}
    for card in subject.handbook.cards:
        if card.after and card.key not in reached:
            yield Finding(
                RULE.name,
                card.spot,
                f"`{card.title}` is never reached: it begins after `{subject.handbook.by_key[card.after].title}`, and "
                "nothing leads there.",
                "Let it begin after a card that a flight comes to.",
                (Related(subject.handbook.by_key[card.after].spot, "It begins after this card."),),
            )
    for ran in done.cards:
        if any(arm.over for step in every_step(ran.card.steps) if isinstance(step, Branch) for arm in step.arms):
            met = _met_from_anywhere(ran) if ran in done.called else {id(line.item) for line in ran.lines}
            yield from _branches(ran, met, subject)


def _met_from_anywhere(ran: CardRun) -> set[int]:
    """The items that are come to however a card begins.

    Who asks on a card off the main line where a switch stands reckons with a line of the normal cards not done.
    """
    met: set[int] = set()
    walk = Walk(ran.cockpit, lambda item, _state, _origin, _found: met.add(id(item)))
    walk.steps(ran.card.steps, {("",) * len(ran.cockpit.places): Origin()})
    return met


def _branches(ran: CardRun, met: set[int], subject: Subject) -> Iterator[Finding]:
    """Branches over a control's position in which it never stands when the line is reached."""
    for branch in every_step(ran.card.steps):
        if not isinstance(branch, Branch):
            continue
        arms = [arm for arm in branch.arms if any(isinstance(step, Item) for step in every_step(arm.steps))]
        if len(arms) == len(branch.arms) > 1 and not any(_met(arm, met) for arm in arms):
            continue  # the branch itself is not reached: what leads there is found
        for arm in arms:
            if arm.over is not None and arm.condition is not None and not _met(arm, met):
                control = subject.handbook.controls[arm.over.control]
                yield Finding(
                    RULE.name,
                    arm.condition.spot,
                    f"What stands below this is never done: `{control.name}` never stands so here.",
                    "Look at the lines before it: `dotleader run` shows where the control stands.",
                    (Related(control.spot, "It is declared here."),),
                )


def _met(arm: Arm, met: set[int]) -> bool:
    return any(id(step) in met for step in every_step(arm.steps))


RULE = Rule(
    name="never-reached",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A card that begins `after` a card to which nothing leads; and what stands under an `if` over a control's "
        "position in which the control never stands there. On a card off the main line that is so only where the card "
        "itself has moved the control: who asks there reckons with a line of the normal cards not done."
    ),
    why="What nobody can come to is not done, and whoever reads the card believes it is.",
    source=NO_SOURCE,
    mend="Put right what leads there, or take it out.",
    bad=(BAD_1, BAD_2, BAD_3),
    good=(GOOD_1, GOOD_2),
    check=check,
)
