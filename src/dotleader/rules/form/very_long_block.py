"""So many items in a row that one of them is lost."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.form.blocks import long_blocks
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_HEAD = "normal Before takeoff\n  when holding short of the runway\n"
_FIRST = [f"Breaker {number} .... IN" for number in range(1, 9)]
_SECOND = [f"Lamp {number} .... OUT" for number in range(1, 9)]


def _lines(items: list[str], indent: str = "  ") -> str:
    return "".join(f"{indent}{item}\n" for item in items)


BAD = Example(_HEAD + _lines(_FIRST + _SECOND), (("very-long-block", "Lamp 8 .... OUT"),))
GOOD_1 = Example(f"{_HEAD}{_lines(_FIRST)}  group Lamps\n{_lines(_SECOND, '    ')}")
GOOD_2 = Example(_HEAD + "  group Breakers\n" + _lines(_FIRST, "    ") + "  group Lamps\n" + _lines(_SECOND, "    "))


def check(subject: Subject) -> Iterator[Finding]:
    most = subject.limits["very-long-block"]
    for card, run in long_blocks(subject, max(most, subject.limits["long-block"])):
        yield Finding(
            RULE.name,
            run[most].spot,
            f"This is item {most + 1} of {len(run)} in a row on `{short(card.title)}`.",
            "Put a `group` with a heading over what belongs together, such as one system or one place in the cockpit. "
            "Leave nothing out for it.",
            (Related(run[0].spot, "The row begins here."),),
        )


RULE = Rule(
    name="very-long-block",
    severity=Severity.WARNING,
    family="form",
    what=(
        "More than fifteen items that follow one another without a heading, a condition or a memory box between "
        "them. The first one too many is marked."
    ),
    why=(
        "A list of 81 items from start to takeoff was found in use, and it was not kept to; the longer a list, the "
        "likelier one of its items is missed."
    ),
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990) on the length of lists (read in a summary); appendix A(7) (read); "
        "the number is our own"
    ),
    mend=(
        "Divide it with `group` lines by system or by place, or into two cards with a cue of their own. Shortening "
        "never means leaving out a critical item (appendix A(15))."
    ),
    bad=(BAD,),
    good=(GOOD_1, GOOD_2),
    check=check,
)
