"""A step that nothing reaches."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Branch, Step
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.showing import name_of, place_of
from dotleader.rules.subject import Subject
from dotleader.rules.ways import unreached
from dotleader.source.finding import Finding, Related, Severity

BAD_1 = Example(
    """\
abnormal Low fuel pressure
  when the fuel pressure is below the green
  Fuel pump .... ON
  end
  Land .... NEAREST AIRFIELD
""",
    (("after-the-end", "Land .... NEAREST AIRFIELD"),),
)

BAD_2 = Example(
    """\
abnormal Radio failure
  when nobody answers
  if the telephone works
    Tower .... CALLED
    end
  otherwise
    Light signals .... WATCHED
    end
  Transponder .... 7600
""",
    (("after-the-end", "Transponder .... 7600"),),
)

GOOD = Example(
    """\
abnormal Low fuel pressure
  when the fuel pressure is below the green
  Fuel pump .... ON
  Land .... NEAREST AIRFIELD
  end
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        for step, ending in unreached(card.steps):
            yield Finding(
                RULE.name,
                place_of(step),
                f"Nothing reaches `{name_of(step)}`: {_because(ending)}.",
                "Move it above the ending, or take the ending out. What explains the card stands under `amplified`.",
                (Related(place_of(ending), "All ways have ended here."),),
            )


def _because(ending: Step) -> str:
    if isinstance(ending, Branch):
        return f"every way through `{name_of(ending)}` has ended before it"
    return f"`{name_of(ending)}` stands before it"


RULE = Rule(
    name="after-the-end",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A line that stands after `end` or `go to`, or after a branch of which every way has ended. The first "
        "of several is marked."
    ),
    why="Whoever follows the card stops above it, so what it asks for is never done.",
    source=NO_SOURCE,
    mend=(
        "Move the line above the ending or into the branch that it belongs to; take an ending out that is one too many."
    ),
    bad=(BAD_1, BAD_2),
    good=(GOOD,),
    check=check,
)
