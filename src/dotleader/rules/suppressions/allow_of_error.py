"""A suppression of an error."""

from __future__ import annotations

from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.source.finding import Finding, Severity, without
from dotleader.source.text import Spot

BAD = Example(
    """\
normal Preflight
  Fuel caps  # allow missing-response: everybody knows
""",
    (("allow-of-error", "# allow missing-response: everybody knows"), ("missing-response", "Fuel caps")),
)

OFF = Example(
    """\
rules
  missing-response .... off because everybody knows

normal Preflight
  Fuel caps
""",
    (("allow-of-error", "missing-response"), ("missing-response", "Fuel caps")),
)

GOOD = Example(
    """\
normal Preflight
  Fuel caps .... TIGHT
""",
)


def finding(spot: Spot, rule: str) -> Finding:
    """`spot` is the suppression, `rule` the name it gives."""
    return Finding(
        RULE.name,
        spot,
        f"`{rule}` is an error, and an error cannot be allowed.",
        "Mend what it says and take this comment out; with errors the handbook prints as a draft only.",
        fix=without(spot, safe=False),
    )


def finding_off(spot: Spot, rule: str) -> Finding:
    """`spot` is the row of a `rules` block that turns an error off."""
    return Finding(
        RULE.name,
        spot,
        f"`{rule}` is an error, and an error cannot be turned off.",
        "Mend what it says and take this row out; with errors the handbook prints as a draft only.",
    )


RULE = Rule(
    name="allow-of-error",
    severity=Severity.WARNING,
    family="suppressions",
    what=(
        "A comment `# allow RULE: reason` that names a rule whose findings are errors, or a row of `rules` that "
        "turns it off."
    ),
    why=("An error means that the printed face would be wrong, incomplete or illegible, and no reason changes that."),
    source=NO_SOURCE,
    mend=("Mend what the error says and take the comment out. A handbook with errors can still be printed as a draft."),
    bad=(BAD, OFF),
    good=(GOOD,),
    found_by="settling",
    fix="unsafe",
)
