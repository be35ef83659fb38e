"""A suppression of a rule that there is not."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.handbook.mending import respelt
from dotleader.handbook.names import offered
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.source.finding import Finding, Fix, Severity
from dotleader.source.record import replace
from dotleader.source.text import Spot

BAD = Example(
    """\
values
  fuel cap torque .... 12 N m  unverified

normal Preflight
  # allow vage-response: the maker's own wording
  Fuel caps .... TIGHT AND {fuel cap torque}
""",
    (("allow-unknown-rule", "# allow vage-response: the maker's own wording"),),
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


def finding(spot: Spot, rule: str, known: Iterable[str]) -> Finding:
    """`spot` is the suppression, `rule` the name it gives, `known` the names of all rules."""
    help_ = "Write the name as the finding shows it; `dotleader explain` lists all rules."
    return Finding(
        RULE.name,
        spot,
        f"There is no rule `{rule}`." if rule else "This suppression names no rule.",
        offered(rule, known, help_),
        fix=_respelt(spot, rule, known),
    )


def _respelt(spot: Spot, rule: str, known: Iterable[str]) -> Fix | None:
    """The one rule that is near; it would begin to suppress, and so it is asked."""
    fix = respelt(spot, rule, known) if rule else None
    return None if fix is None else replace(fix, safe=False)


RULE = Rule(
    name="allow-unknown-rule",
    severity=Severity.WARNING,
    family="suppressions",
    what="A comment `# allow RULE: reason` whose rule does not exist, or that names none.",
    why="It suppresses nothing, though it looks as if somebody had decided something.",
    source=NO_SOURCE,
    mend="Write the name as the finding shows it; `dotleader explain` lists all rules.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="settling",
    fix="unsafe",
)
