"""A completion line typed by hand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from dotleader.handbook.cards import Card, End, Group, Item, Kind, Memory, Notice, Step, Unread
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity, without
from dotleader.syntax.plain import folded

BAD_1 = Example(
    """\
normal Before takeoff
  when holding short of the runway
  Fuel pump .... ON
  Before takeoff checklist .... COMPLETE
""",
    (("typed-completion", "Before takeoff checklist .... COMPLETE"),),
)

BAD_2 = Example(
    """\
normal Descent
  when ten minutes from the airfield
  Landing light .... ON
  note Descent checklist complete
""",
    (("typed-completion", "note Descent checklist complete"),),
)

GOOD = Example(
    """\
normal Before takeoff
  when holding short of the runway
  Fuel pump .... ON
""",
)

_DONE = frozenset({"complete", "completed", "done", "finished"})
_LIST = r"(?:check ?lists?|checks?|lists?|procedure|drill|items)"
_SAID = re.compile(
    rf"(?:.* )?{_LIST} (?:is |are |now )*(?:complete|completed|done|finished)|(?:the )?end of (?:.* )?{_LIST}"
)
_ENDS_IN_LIST = re.compile(rf"(?:.* )?{_LIST}")
_MARKS = re.compile(r"[^\w\s]+")


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        last = _last(card.steps)
        if last is not None and _completes(last, card):
            yield Finding(
                RULE.name,
                last.spot,
                f"`{short(last.spot.text)}` is a completion line typed by hand.",
                "Take it out: the printer adds the line to every normal card."
                if card.kind is Kind.NORMAL
                else "Take it out: `end` says that the procedure is over.",
                fix=without(last.spot, safe=False) if _stands_alone(last, card) else None,
            )


def _stands_alone(last: Step, card: Card) -> bool:
    """Whether nothing is below it, and something is left where it stood."""
    among = [step for step in card.steps if not isinstance(step, End | Unread)]
    return isinstance(last, Item) and not last.detail and len(among) > 1 and among[-1] is last


def _last(steps: Sequence[Step]) -> Step | None:
    """The last line that is read before the end."""
    while steps and isinstance(steps[-1], End | Unread):
        steps = steps[:-1]
    if not steps:
        return None
    last = steps[-1]
    if isinstance(last, Group | Memory):
        return _last(last.steps) or last
    return last


def _completes(step: Step, card: Card) -> bool:
    match step:
        case Item(response=response):
            challenge = _bare(step.challenge)
            if response is not None and _bare(response.text) in _DONE:
                return challenge == _bare(card.title) or _ENDS_IN_LIST.fullmatch(challenge) is not None
            return _SAID.fullmatch(challenge) is not None
        case Notice(phrase=phrase) | Group(title=phrase):
            text = _bare(phrase.text)
            title, _, done = text.rpartition(" ")
            return _SAID.fullmatch(text) is not None or (title == _bare(card.title) and done in _DONE)
        case _:
            return False


def _bare(text: str) -> str:
    """A text folded, without marks between its words."""
    return folded(_MARKS.sub(" ", text))


RULE = Rule(
    name="typed-completion",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A last line that says that the checklist is complete: an item, a notice or a heading. A normal card "
        "is printed with such a line by itself."
    ),
    why="The printed card would say twice that it is complete, and the second time in other words.",
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990) appendix A(6), that the completion call is the last item of "
        "a list (read in a summary)"
    ),
    mend="Take the line out; the printer adds it. An emergency or abnormal card ends with `end` or `go to`.",
    bad=(BAD_1, BAD_2),
    good=(GOOD,),
    check=check,
    confidence="medium",
    fix="unsafe",
)
