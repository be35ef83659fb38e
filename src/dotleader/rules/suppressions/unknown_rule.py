"""A row of a `rules` block whose rule does not exist."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.handbook.mending import respelt
from dotleader.handbook.model import Setting
from dotleader.handbook.names import offered
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.source.finding import Finding, Severity
from dotleader.source.record import replace

BAD = Example(
    """\
rules
  many-memory-item .... 3 items

normal Preflight
  when before the first flight of the day
  Fuel caps .... TIGHT
""",
    (("unknown-rule", "many-memory-item"),),
)

GOOD = Example(
    """\
rules
  many-memory-items .... 3 items

normal Preflight
  when before the first flight of the day
  Fuel caps .... TIGHT
""",
)


def finding(setting: Setting, known: Iterable[str]) -> Finding:
    """`known` are the names that can stand there."""
    names = list(known)
    fix = respelt(setting.spot, setting.name, names)
    return Finding(
        RULE.name,
        setting.spot,
        f"There is no rule `{setting.name}`.",
        offered(setting.name, names, "Write the name as findings show it; `dotleader explain` lists all rules."),
        fix=None if fix is None else replace(fix, safe=False),  # it would begin to have an effect
    )


RULE = Rule(
    name="unknown-rule",
    severity=Severity.WARNING,
    family="suppressions",
    what="A row of the `rules` block that does not begin with the name of a rule.",
    why="It changes nothing, though it looks as if somebody had decided something.",
    source=NO_SOURCE,
    mend="Write the name as findings show it; `dotleader explain` lists all rules.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="settling",
    fix="unsafe",
)
