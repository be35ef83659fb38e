"""Many items in a row without a heading."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.form.blocks import long_blocks
from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_HEAD = "normal Before takeoff\n  when holding short of the runway\n"
_ITEMS = """\
  Flight controls .... FREE AND CORRECT [critical]
  Fuel selector .... FULLEST TANK [critical]
  Canopy .... LATCHED [critical]
  Seat belts .... FASTENED, BOTH
  Magnetos .... BOTH
  Propeller .... HIGH RPM
"""
_MORE = """\
  Mixture .... RICH
  Fuel pump .... ON
  Strobe lights .... ON
  Transponder .... ALT
  Parking brake .... OFF
"""

BAD = Example(_HEAD + _ITEMS + _MORE, (("long-block", "Parking brake .... OFF"),))
GOOD_1 = Example(f"{_HEAD}{_ITEMS}  group Engine and lights\n{_MORE.replace('  ', '    ')}")
GOOD_2 = Example(_HEAD + _ITEMS + _MORE.partition("  Parking")[0])
GOOD_3 = Example(
    f"abnormal Smell of fuel\n  when fuel is smelt in flight\n{_ITEMS}  if it is still smelt\n"
    f"{_MORE.replace('  ', '    ')}  end\n"
)


def check(subject: Subject) -> Iterator[Finding]:
    most, too_many = subject.limits["long-block"], subject.limits["very-long-block"]
    for card, run in long_blocks(subject, most):
        if len(run) <= max(most, too_many):
            yield Finding(
                RULE.name,
                run[most].spot,
                f"This is item {most + 1} of {len(run)} in a row on `{short(card.title)}`.",
                "Put a `group` with a heading over what belongs together, such as one system or one place in the "
                "cockpit. Leave nothing out for it.",
                (Related(run[0].spot, "The row begins here."),),
            )


RULE = Rule(
    name="long-block",
    severity=Severity.NOTE,
    family="form",
    what=(
        "More than ten items that follow one another without a heading, a condition or a memory box between them. "
        "The first one too many is marked. Above fifteen it is `very-long-block`."
    ),
    why="After an interruption the place is found by what is near it, and in a long row everything looks alike.",
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990) appendix A(7), that a long list is divided into chunks (read); the "
        "number is our own"
    ),
    mend=(
        "Divide it with `group` lines by system or by place. Shortening never means leaving out a critical item "
        "(appendix A(15))."
    ),
    bad=(BAD,),
    good=(GOOD_1, GOOD_2, GOOD_3),
    check=check,
)
