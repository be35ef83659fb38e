"""A choice that leaves none."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Notice, Unread
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
abnormal Radio failure
  when nobody answers
  one of
    note Try the spare headset first.
    Radio call .... ON THE LAST FREQUENCY
  end
""",
    (("one-option", "one of"),),
)

GOOD = Example(
    """\
abnormal Radio failure
  when nobody answers
  one of
    Headset .... THE PASSENGER'S
    group By telephone
      Telephone .... TOWER NUMBER
      Landing .... AS THE TOWER SAYS
  end
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for _, choice in subject.lines().choices:
        options = [step for step in choice.steps if not isinstance(step, Notice)]
        if len(options) == 1 and not isinstance(options[0], Unread):
            yield Finding(
                RULE.name,
                choice.spot,
                "`one of` leaves one option only.",
                "Write the other options below it, or take `one of` out and leave the line.",
            )


RULE = Rule(
    name="one-option",
    severity=Severity.WARNING,
    family="form",
    what="A `one of` with a single line below it that can be done. A group counts as one option, a notice as none.",
    why="Whoever reads that one thing out of several is to be done looks for the others, which may have been lost.",
    source="DOE-STD-1029-92, that alternatives stand in one step, as a list after `one of the following` (read)",
    mend="Write the other options, or take `one of` out.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
