"""A suppression that gives no reason."""

from __future__ import annotations

from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
values
  fuel cap torque .... 12 N m  unverified  # allow value-never-used

normal Preflight
  Fuel caps .... TIGHT
""",
    (("allow-without-reason", "# allow value-never-used"),),
)

OFF = Example(
    """\
rules
  value-never-used .... off

values
  fuel cap torque .... 12 N m  unverified

normal Preflight
  Fuel caps .... TIGHT
""",
    (("allow-without-reason", "off"),),
)

GOOD = Example(
    """\
values
  fuel cap torque .... 12 N m  unverified  # allow value-never-used: for the placard

normal Preflight
  Fuel caps .... TIGHT
""",
)


def finding(spot: Spot, rule: str) -> Finding:
    """`spot` is the suppression, `rule` the name it gives."""
    return Finding(
        RULE.name,
        spot,
        f"`# allow {rule}` gives no reason.",
        f"Write the reason after a colon: `# allow {rule}: the maker's own wording`.",
    )


def finding_off(spot: Spot, rule: str) -> Finding:
    """`spot` is what the row of a `rules` block says of the rule."""
    return Finding(
        RULE.name,
        spot,
        f"`{rule}` is off, and nothing says why.",
        f"Write the reason after `because`: `{rule} .... off because the maker's own wording is kept`.",
    )


RULE = Rule(
    name="allow-without-reason",
    severity=Severity.WARNING,
    family="suppressions",
    what="A comment `# allow RULE`, or a row of `rules` that turns a rule off, without saying why.",
    why=("Whoever reads the handbook next year, or signs the aircraft off, cannot tell a decision from an oversight."),
    source=NO_SOURCE,
    mend="Write the reason after a colon: `# allow value-never-used: for the placard`.",
    bad=(BAD, OFF),
    good=(GOOD,),
    found_by="settling",
)
