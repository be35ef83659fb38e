"""A condition with a second one inside it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Phrase
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD_1 = Example(
    """\
abnormal Low fuel pressure
  when the fuel pressure is in the red
  if the engine runs rough unless the pump is on
    Land .... AT ONCE
  end
""",
    (("nested-condition", "the engine runs rough unless the pump is on"),),
)

BAD_2 = Example(
    """\
equipment
  Pitot heat .... OFF, ON

abnormal Icing
  when ice is seen
  Pitot heat .... ON if in cloud if the battery allows it
  end
""",
    (("nested-condition", "ON if in cloud if the battery allows it"),),
)

GOOD = Example(
    """\
equipment
  Pitot heat .... OFF, ON

abnormal Icing
  when ice is seen
  if the wings carry ice even if it is thin
    Land .... AT ONCE
    end
  if the pitot heat failed when it was needed
    if the airspeed is lost
      Pitch .... AS FOR LEVEL FLIGHT
  if nobody can see if the tail carries ice
    Flaps .... UP
  Pitot heat .... ON if in cloud, otherwise OFF if the battery is low
  end
""",
)

_CONDITION = re.compile(r"\b(?<!\beven )(?<!\bas )(?<!\bsee )(?<!\btell )(?<!\bknow )(?:if|unless)\s", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    lines = subject.lines()
    for phrase in (
        *(arm.condition for _, arm in lines.arms if arm.condition is not None),
        *(repeat.until for _, repeat in lines.repeats),
    ):
        if _CONDITION.search(phrase.spot.text):
            yield _finding(phrase)
    for _, item in lines.items:
        if item.response is not None and " if " in item.response.spot.text:
            clauses = item.response.spot.text.split("otherwise")
            if any(len(_CONDITION.findall(clause)) > 1 for clause in clauses):
                yield _finding(item.response)


def _finding(phrase: Phrase) -> Finding:
    return Finding(
        RULE.name,
        phrase.spot,
        f"`{short(phrase.text)}` holds a condition inside a condition.",
        "Ask one thing in each line: put the second `if` below the first one, or name the case that both make.",
    )


RULE = Rule(
    name="nested-condition",
    severity=Severity.WARNING,
    family="form",
    what=(
        "The text of an `if`, an `or if` or a `repeat until`, or a clause of a response, that itself has an `if` or "
        "an `unless` in it. A branch below a branch is none: its place shows what belongs to what."
    ),
    why="Which of two conditions in one sentence rules the other is a puzzle, and it is solved under stress.",
    source=(
        "Writing guides for technical procedures have no `if` inside an `if` in one step (NUREG-0899, "
        "DOE-STD-1029-92; from memory)"
    ),
    mend="Write two branches, one below the other, or find one condition that says it.",
    bad=(BAD_1, BAD_2),
    good=(GOOD,),
    check=check,
    confidence="medium",
)
