"""A suppression that suppresses nothing."""

from __future__ import annotations

from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.source.finding import Finding, Severity, without
from dotleader.source.text import Spot

BAD = Example(
    """\
values
  # allow value-never-used: for the placard
  fuel cap torque .... 12 N m  unverified

normal Preflight
  Fuel caps .... {fuel cap torque}
""",
    (("allow-unused", "# allow value-never-used: for the placard"),),
)

OFF = Example(
    """\
rules
  value-never-used .... off because rows are kept for the placards

normal Preflight
  Fuel caps .... TIGHT
""",
    (("allow-unused", "value-never-used"),),
)

GOOD = Example(
    """\
values
  # allow value-never-used: for the placard
  fuel cap torque .... 12 N m  unverified

normal Preflight
  Fuel caps .... TIGHT
""",
)


def finding(spot: Spot, rule: str) -> Finding:
    """`spot` is the suppression, `rule` the name it gives."""
    return Finding(
        RULE.name,
        spot,
        f"`{rule}` has nothing to say here.",
        "Take this comment out, or move it to the line that it is about.",
        fix=without(spot, safe=False),
    )


def finding_off(spot: Spot, rule: str) -> Finding:
    """`spot` is the row of a `rules` block that turns the rule off."""
    return Finding(RULE.name, spot, f"`{rule}` is off and has nothing to say in this handbook.", "Take this row out.")


RULE = Rule(
    name="allow-unused",
    severity=Severity.WARNING,
    family="suppressions",
    what=(
        "A comment `# allow RULE: reason` where the rule has nothing to say of the line it stands on or above, or a "
        "row of `rules` that turns off a rule that has nothing to say."
    ),
    why="A suppression that has outlived its cause would hide the next fault in the same place.",
    source=NO_SOURCE,
    mend=(
        "Take the comment out. If it stands in the wrong place, move it to the end of the line, after two "
        "spaces, or to the line above."
    ),
    bad=(BAD, OFF),
    good=(GOOD,),
    found_by="settling",
    fix="unsafe",
)
